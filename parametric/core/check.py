"""One question with a value, a limit, a verdict and the source of the limit."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from parametric.core.pose import Vec3


class Verdict(StrEnum):
    """How a check came out. None of these says that anything is safe."""

    PASS = "pass"
    CAUTION = "caution"
    FAIL = "fail"


_EPS = 1e-6  # a value on its limit keeps it, whatever the last bit says
_ORDER = {Verdict.PASS: 0, Verdict.CAUTION: 1, Verdict.FAIL: 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """The answer to one question.

    Attributes:
        id: Stable code, ``family.question``.
        says: One sentence for a person.
        verdict: Pass, caution or fail.
        source: Where the limit comes from.
        mode: Mode it was asked in; None if it concerns the whole design.
        variant: Adjustment or state within the mode.
        parts: Names of the parts concerned.
        at: Place in the van frame, mm.
        step: Change-over step.
        chance: Probability that this person fails it, 0..1, where the body is uncertain.
        proposal: What would mend it.
        value: What was found.
        unit: Unit of `value`, `min`, `max`, `margin`.
        min: Least value that is not a fail (or a caution).
        max: Greatest value that is not a fail (or a caution).
        margin: Distance to the nearer limit; negative when the limit is broken.
    """

    id: str
    says: str
    verdict: Verdict
    source: str
    mode: str | None = None
    variant: str | None = None
    parts: tuple[str, ...] = ()
    at: Vec3 | None = None
    step: int | None = None
    chance: float | None = None
    proposal: str | None = None
    value: float | None = None
    unit: str | None = None
    min: float | None = None
    max: float | None = None
    margin: float | None = None


def judge(
    id: str,
    value: float,
    *,
    says: str,
    source: str,
    unit: str = "mm",
    low: float | None = None,
    high: float | None = None,
    good_low: float | None = None,
    good_high: float | None = None,
    mode: str | None = None,
    parts: tuple[str, ...] = (),
    at: Vec3 | None = None,
    chance: float | None = None,
    proposal: str | None = None,
) -> Check:
    """Judge a value against limits: outside low..high fails, outside good_low..good_high is a caution.

    The limit printed is the one that decided: the hard one on a fail, else the good one where there is one.

    Args:
        id: Stable code, ``family.question``.
        value: What was found; a value that is not a number fails.
        says: One sentence for a person.
        source: Where the limits come from.
        unit: Unit of all figures.
        low: Least value that does not fail.
        high: Greatest value that does not fail.
        good_low: Least value that passes, if stricter than `low`.
        good_high: Greatest value that passes, if stricter than `high`.
        mode: Mode it was asked in; what follows a ``/`` is kept as the variant too.
        parts: Names of the parts concerned.
        at: Place, mm.
        chance: Probability that this person fails it.
        proposal: What would mend it; kept only when the check does not pass.
    """
    hard = _margin(value, low, high)
    good = _margin(value, low if good_low is None else good_low, high if good_high is None else good_high)
    if math.isnan(value) or hard < -_EPS:
        verdict, lo, hi, margin = Verdict.FAIL, low, high, hard
    else:
        verdict = Verdict.CAUTION if good < -_EPS else Verdict.PASS
        lo = low if good_low is None else good_low
        hi = high if good_high is None else good_high
        margin = good
    return Check(
        id=id,
        says=says,
        verdict=verdict,
        source=source,
        mode=mode,
        variant=variant_of(mode),
        parts=parts,
        at=at,
        chance=chance,
        proposal=None if verdict is Verdict.PASS else proposal,
        value=value,
        unit=unit,
        min=lo,
        max=hi,
        margin=None if math.isinf(margin) else margin,
    )


def variant_of(mode: str | None) -> str | None:
    """What follows the slash of a mode's id, if anything does."""
    return mode.split("/", 1)[1] if mode and "/" in mode else None


def by_mode(checks: Iterable[Check]) -> list[tuple[Check, tuple[str, ...]]]:
    """Checks that say the same in several modes as one, with the modes; in the order of their first."""
    modes: dict[tuple[str, str, Verdict], list[str]] = {}
    first: dict[tuple[str, str, Verdict], Check] = {}
    for check in checks:
        key = (check.id, check.says, check.verdict)
        first.setdefault(key, check)
        modes.setdefault(key, []).extend([check.mode] if check.mode else [])
    return [(check, tuple(modes[key])) for key, check in first.items()]


def worst(checks: Iterable[Check]) -> Verdict:
    """The worst verdict among some checks; pass if there are none."""
    return max((c.verdict for c in checks), key=_ORDER.__getitem__, default=Verdict.PASS)


def _margin(value: float, low: float | None, high: float | None) -> float:
    return min(
        math.inf if low is None else value - low,
        math.inf if high is None else high - value,
    )
