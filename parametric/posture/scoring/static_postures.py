"""Postures held for more than 4 seconds, after ISO 11226:2000. All its figures here are from memory."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from importlib.resources import files
from typing import Final, Literal

import numpy as np

from parametric.posture.scoring.number import ANGLE_EPS, Flag, Score, score
from parametric.posture.workplace import Number

SOURCE: Final = "ISO 11226:2000 (from memory)"

Part = Literal["trunk", "head", "neck", "upper_arm", "knee"]


class Zone(IntEnum):
    """What the standard says of a static posture."""

    ACCEPTABLE = 0
    LIMITED = 1
    NOT_RECOMMENDED = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """Judgement of one angle, or of an array of them.

    Attributes:
        zone: Value of `Zone`.
        minutes: Longest time to hold it: infinite if acceptable, 0 if not recommended.
    """

    zone: Score
    minutes: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Limits of one part, degrees and minutes; the time falls in a straight line from `ok_high` to `limited_high`.

    Attributes:
        part: Which part.
        ok_low: Least angle that needs no limit of time.
        ok_high: Greatest such angle.
        supported_low: Least such angle if the part is fully supported.
        supported_high: Greatest such angle if the part is fully supported.
        limited_high: Greatest angle that may be held at all.
        minutes_first: Longest time just over `ok_high`.
        minutes_last: Longest time at `limited_high`.
        source: Where the row comes from.
    """

    part: str
    ok_low: float
    ok_high: float
    supported_low: float
    supported_high: float
    limited_high: float
    minutes_first: float
    minutes_last: float
    source: str


def hold(part: Part, angle: Number, *, supported: Flag = False) -> Hold:
    """Judge one angle. An angle on a limit belongs to the milder side; one that is not a number is not recommended.

    Args:
        part: ``trunk`` and ``head`` are inclined from upright, ``neck`` is head less trunk, forward positive;
            ``upper_arm`` is its elevation whichever way, never negative; ``knee`` is the inner angle of a sitter.
        angle: Degrees.
        supported: Back rest for the trunk, head rest for the head, arm rest for the upper arm; of no use to the others.
    """
    row = limits()[part]
    x = np.asarray(angle, dtype=np.float64)
    low, high = np.where(supported, row.supported_low, row.ok_low), np.where(supported, row.supported_high, row.ok_high)
    free = (x >= low - ANGLE_EPS) & (x <= high + ANGLE_EPS)
    limited = ~free & (x > row.ok_high) & (x <= row.limited_high + ANGLE_EPS)
    falling = np.interp(x, (row.ok_high, row.limited_high), (row.minutes_first, row.minutes_last))
    minutes = np.where(free, np.inf, np.where(limited, falling, 0.0))
    zone = np.where(free, Zone.ACCEPTABLE, np.where(limited, Zone.LIMITED, Zone.NOT_RECOMMENDED))
    return Hold(zone=score(zone), minutes=float(minutes) if minutes.ndim == 0 else minutes)


def hold_lumbar(convex: Flag) -> Hold:
    """Judge the lumbar spine of a sitter: rounded backwards (convex) is not recommended, however short."""
    minutes = np.where(convex, 0.0, np.inf)
    zone = score(np.where(convex, Zone.NOT_RECOMMENDED, Zone.ACCEPTABLE))
    return Hold(zone=zone, minutes=float(minutes) if minutes.ndim == 0 else minutes)


@cache
def limits() -> dict[str, Limits]:
    """The limits by part."""
    text = files("parametric.posture.scoring").joinpath("iso_11226.csv").read_text(encoding="utf-8")
    return {
        row["part"]: Limits(
            part=row["part"],
            source=row["source"],
            **{name: float(value) for name, value in row.items() if name not in ("part", "source")},
        )
        for row in csv.DictReader(text.splitlines())
    }
