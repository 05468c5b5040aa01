"""Are the people what the brief says they are: measurements that do not fit the rest, statures past the survey."""

from __future__ import annotations

from parametric.brief.model import Brief
from parametric.core import sources
from parametric.core.check import Check, Verdict
from parametric.sizing.solve import People


def body_checks(brief: Brief, who: People) -> list[Check]:
    """A caution for everything doubtful in the bodies the design rests on."""
    return [
        Check(
            id="body.estimate",
            says=f"{sleeper.label}: {text}",
            verdict=Verdict.CAUTION,
            source=sources.ANSUR,
            proposal="measure again, twice, with somebody's help",
        )
        for sleeper, body in zip(brief.sleeper, who.bodies, strict=True)
        for text in body.cautions
    ]
