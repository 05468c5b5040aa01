"""The rules by which demands compete, each with the values of the brief that may give way."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from parametric.brief.model import Brief
from parametric.sizing.clash import SLIGHT, Clash, State, Way, clash_of, shortfall, solved
from parametric.sizing.demands import body, floor, room
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.solve import People

RULES: Final = (*body.RULES, *floor.RULES, *room.RULES)


def clashes(brief: Brief, who: People, dims: Dimensions) -> tuple[Clash, ...]:
    """Every clash of a brief, in a fixed order; of the ways out, those that open no other clash come first."""
    state = State(brief=brief, who=who, dims=dims)
    found = [c for c in (clash_of(rule, state) for rule in RULES) if c is not None]
    known = {c.about for c in found}
    return tuple(replace(c, ways=_weighed(state, c.ways, known)) for c in found)


def _weighed(state: State, ways: tuple[Way, ...], known: Collection[str]) -> tuple[Way, ...]:
    told = [replace(way, opens=_opens(state, way, known)) for way in ways]
    return tuple(sorted(told, key=lambda way: len(way.opens)))


def _opens(state: State, way: Way, known: Collection[str]) -> tuple[str, ...]:
    after = solved(state, way.changes) if way.changes else None
    if after is None:
        return ()
    missed = ((rule.about, shortfall(rule, after)) for rule in RULES if rule.about not in known)
    return tuple(f"{about} {short:.0f} short" for about, short in missed if short > SLIGHT)
