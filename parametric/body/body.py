"""What is known of one person: a mean and a spread for every dimension."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from statistics import NormalDist
from typing import Literal

from parametric.catalogue.dimensions import dimension
from parametric.catalogue.survey import Array
from parametric.core.errors import BodyError

Sex = Literal["male", "female", "unspecified"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """Normal distribution over all dimensions of one person; lengths mm, mass kg.

    Attributes:
        sex: As given.
        mean: Mean of every dimension by name; a known one is what was given.
        sd: Standard deviation of every dimension by name; 0 for a known one.
        known: Names of the dimensions that were given.
        notes: What the reader should know about how this came about.
        cautions: Where the estimate should be doubted.
        covariance: (k, k) in the order of `mean`; use `cov`.
    """

    sex: Sex
    mean: Mapping[str, float]
    sd: Mapping[str, float]
    known: frozenset[str]
    notes: tuple[str, ...]
    cautions: tuple[str, ...]
    covariance: Array = field(repr=False, compare=False)

    def quantile(self, name: str, p: float) -> float:
        """Value that a share `p` of such people does not exceed, mm or kg.

        Raises:
            BodyError: `p` is not between 0 and 1.
            CatalogueError: No dimension has this name.
        """
        if not 0.0 < p < 1.0:
            raise BodyError(f"quantile of {name}: p is {p}; more than 0 and less than 1 is needed")
        dimension(name)
        return self.mean[name] + self.sd[name] * NormalDist().inv_cdf(p)

    def cov(self, a: str, b: str) -> float:
        """Covariance of two dimensions, in the product of their units.

        Raises:
            CatalogueError: No dimension has this name.
        """
        return float(self.covariance[self.position(a), self.position(b)])

    def position(self, name: str) -> int:
        """Row of a dimension in `covariance`.

        Raises:
            CatalogueError: No dimension has this name.
        """
        dimension(name)
        return list(self.mean).index(name)

    def combined_sd(self, weights: Mapping[str, float]) -> float:
        """Standard deviation of a weighted sum of dimensions.

        Raises:
            CatalogueError: No dimension has this name.
        """
        variance = sum(u * v * self.cov(a, b) for a, u in weights.items() for b, v in weights.items())
        return math.sqrt(max(variance, 0.0))
