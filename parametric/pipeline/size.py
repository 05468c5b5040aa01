"""Use case `size`: heights, lengths and clashes from a brief. Numbers only, no meshes, no CAD."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.body import estimate
from parametric.brief.model import Brief
from parametric.checks.access import access_checks
from parametric.checks.bodies import body_checks
from parametric.checks.chance import Worth, worth_measuring
from parametric.checks.clashes import clash_checks
from parametric.checks.comfort import comfort_checks, questions
from parametric.checks.sleep import sleep_checks
from parametric.core.check import Check
from parametric.sizing.clash import Clash
from parametric.sizing.demands import clashes
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.solve import People, people, solve


@dataclass(frozen=True, slots=True, kw_only=True)
class Sized:
    """What the numbers say.

    Attributes:
        brief: As read.
        people: The bodies it is for.
        dimensions: Every height, length and width.
        clashes: Wishes that cannot all hold.
        checks: Comfort, sleep and access, judged on the numbers.
        worth: The measurements that buy the most certainty, best first.
    """

    brief: Brief
    people: People
    dimensions: Dimensions
    clashes: tuple[Clash, ...]
    checks: tuple[Check, ...]
    worth: tuple[Worth, ...]


def size(brief: Brief) -> Sized:
    """Work out and judge the numbers of a brief.

    Raises:
        RefusedError: The kinds asked for are not built by this version, or cannot stand.
        BodyError: A body is outside what can be estimated.
    """
    bodies = [estimate(sex=s.sex, stature=s.stature, mass=s.mass, measured=dict(s.measured)) for s in brief.sleeper]
    who = people(brief, bodies)
    dims = solve(brief, who)
    checks = (
        *body_checks(brief, who),
        *comfort_checks(brief, who, dims),
        *sleep_checks(brief, who, dims),
        *access_checks(brief, dims),
    )
    found = clashes(brief, who, dims)
    return Sized(
        brief=brief,
        people=who,
        dimensions=dims,
        clashes=found,
        checks=(*clash_checks(found), *checks),
        worth=worth_measuring(who.at_desk, questions(brief, who, dims)),
    )
