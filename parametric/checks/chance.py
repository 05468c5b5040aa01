"""How likely a person fails a check, given what has not been measured, and what to measure next."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import NormalDist

from parametric.body import Body, estimate, narrowing
from parametric.catalogue.survey import allowed_range

SURE = 1e-9
LEAST_GAIN = 0.002  # a measurement that takes away less chance than this is not worth the tape


def chance_outside(
    body: Body, weights: Mapping[str, float], value: float, low: float | None, high: float | None
) -> float:
    """Probability that a figure that hangs on the body misses its limits.

    Args:
        body: The person, as far as known.
        weights: How much the figure grows with each dimension, by name.
        value: The figure for the likeliest body.
        low: Least value that does not fail.
        high: Greatest value that does not fail.
    """
    sd = body.combined_sd(weights)
    if sd < SURE:
        return float((low is not None and value < low) or (high is not None and value > high))
    spread = NormalDist(value, sd)
    under = 0.0 if low is None else spread.cdf(low)
    over = 0.0 if high is None else 1.0 - spread.cdf(high)
    return min(1.0, under + over)


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A figure that hangs on the body, with the room it has.

    Attributes:
        about: What it is about, such as ``desk height``.
        weights: How much it grows with each dimension.
        room: Distance from the likeliest value to the nearer limit, mm.
    """

    about: str
    weights: Mapping[str, float]
    room: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """What one measurement would buy.

    Attributes:
        name: Dimension to measure.
        about: The question it helps most.
        before: Half-width of that figure's 90 % interval now, mm.
        after: The same once measured, mm.
    """

    name: str
    about: str
    before: float
    after: float


def worth_measuring(body: Body, questions: Sequence[Question], count: int = 2) -> tuple[Worth, ...]:
    """The measurements that buy the most certainty, best first, each as if those before it had been taken.

    A measurement's worth is the chance of missing a limit that it takes away, summed over all questions.
    """
    out: list[Worth] = []
    for _ in range(count):
        found = _best(body, questions)
        if found is None:
            break
        out.append(found)
        body = _measured(body, found.name)
    return tuple(out)


def _best(body: Body, questions: Sequence[Question]) -> Worth | None:
    total: dict[str, float] = {}
    most: dict[str, tuple[float, Worth]] = {}
    for question in questions:
        for row in narrowing(body, question.weights):
            gain = _missed(row.before, question.room) - _missed(row.after, question.room)
            total[row.name] = total.get(row.name, 0.0) + gain
            if row.name not in most or gain > most[row.name][0]:
                worth = Worth(name=row.name, about=question.about, before=row.before, after=row.after)
                most[row.name] = (gain, worth)
    name = min(total, key=lambda n: (-total[n], n), default=None)
    return None if name is None or total[name] < LEAST_GAIN else most[name][1]


def _measured(body: Body, name: str) -> Body:
    """The body as it would be known after one more measurement that comes out as expected."""
    known = {k: body.mean[k] for k in sorted(body.known) if k != "stature"}
    low, high = allowed_range(name)
    known[name] = min(max(body.mean[name], low), high)
    return estimate(sex=body.sex, stature=body.mean["stature"], measured=known)


def _missed(half_width: float, room: float) -> float:
    """Chance that a figure with a 90 % half-width strays further than its room."""
    sd = half_width / NormalDist().inv_cdf(0.95)
    if sd < SURE:
        return 0.0 if room >= 0.0 else 1.0
    return 1.0 - math.erf(max(room, 0.0) / sd / math.sqrt(2.0))
