"""How far joints go, and where they like to be."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True, kw_only=True)
class JointLimit:
    """Comfort and limits of one angle or distance of a posture; conventions as in `Angles`.

    Attributes:
        name: Which one.
        unit: ``deg`` or ``mm``.
        neutral: Where it costs nothing.
        low: Low end of the comfortable range; costs `weight`.
        high: High end of the comfortable range; costs `weight`.
        limit_low: No posture is planned below.
        limit_high: No posture is planned above.
        weight: Cost at the ends of the comfortable range (own estimate).
        source: Where the row comes from.
    """

    name: str
    unit: str
    neutral: float
    low: float
    high: float
    limit_low: float
    limit_high: float
    weight: float
    source: str


@cache
def joint_limits() -> dict[str, JointLimit]:
    """Every row of the table by name."""
    text = files("parametric.posture").joinpath("joint_limits.csv").read_text(encoding="utf-8")
    return {row["name"]: _read(row) for row in csv.DictReader(text.splitlines())}


def _read(row: dict[str, str]) -> JointLimit:
    numbers = {key: float(value) for key, value in row.items() if key not in ("name", "unit", "source")}
    return JointLimit(name=row["name"], unit=row["unit"], source=row["source"], **numbers)
