"""The rules by which demands compete, each with the values of the brief that may give way."""

from __future__ import annotations

from typing import Final

from parametric.brief.model import Brief
from parametric.sizing.clash import Clash, State, clash_of
from parametric.sizing.demands import body, floor, room
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.solve import People

RULES: Final = (*body.RULES, *floor.RULES, *room.RULES)


def clashes(brief: Brief, who: People, dims: Dimensions) -> tuple[Clash, ...]:
    """Every clash of a brief, in a fixed order."""
    state = State(brief=brief, who=who, dims=dims)
    found = (clash_of(rule, state) for rule in RULES)
    return tuple(c for c in found if c is not None)
