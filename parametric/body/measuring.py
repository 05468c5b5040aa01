"""Which measurement would tell most about what the furniture needs."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from statistics import NormalDist

from parametric.body.body import Body
from parametric.catalogue.dimensions import dimensions

_ERROR_SD = {"mm": 5.0, "kg": 1.0}  # of one measurement at home with a tape or a scale; own judgement, no source
_HALF_WIDTHS = NormalDist().inv_cdf(0.95)


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrowing:
    """What measuring one dimension would do to a target.

    Attributes:
        name: Dimension to measure.
        before: Half-width of the target's 90 % interval now, mm.
        after: The same once the dimension is measured with an error of 5 mm (mass 1 kg) standard deviation, mm.
    """

    name: str
    before: float
    after: float


def narrowing(body: Body, target: Mapping[str, float]) -> list[Narrowing]:
    """How much each dimension not yet known would narrow a weighted sum of dimensions, best first.

    Args:
        body: What is known so far.
        target: Weight by dimension name; ``{"popliteal_height": 1, "elbow_height_sitting": 1}`` for a desk height.

    Raises:
        CatalogueError: No dimension has a name in `target`.
    """
    before = body.combined_sd(target)
    rows = []
    for name, item in dimensions().items():
        if name in body.known:
            continue
        shared = sum(weight * body.cov(part, name) for part, weight in target.items())
        told = shared**2 / (body.sd[name] ** 2 + _ERROR_SD[item.unit] ** 2)
        after = math.sqrt(max(before**2 - told, 0.0))
        rows.append(Narrowing(name=name, before=_HALF_WIDTHS * before, after=_HALF_WIDTHS * after))
    return sorted(rows, key=lambda row: (row.after, row.name))
