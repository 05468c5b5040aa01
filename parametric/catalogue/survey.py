"""The body survey as shipped: number, range, means and covariances of each sex."""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from parametric.catalogue.dimensions import dimension, dimensions
from parametric.core.errors import CatalogueError

SurveySex = Literal["male", "female"]
Array = NDArray[np.float64]

SEXES: tuple[SurveySex, ...] = ("male", "female")
_STATED_RANGES = {"stature": (1200.0, 2300.0), "body_mass": (30.0, 250.0)}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Moments:
    """First and second moments of one sex of the survey; lengths mm, mass kg.

    Attributes:
        names: The k dimensions, in the order of every array.
        n: People measured.
        mean: (k,) means.
        cov: (k, k) covariances (divisor n - 1).
        least: (k,) least values surveyed.
        greatest: (k,) greatest values surveyed.
    """

    names: tuple[str, ...]
    n: int
    mean: Array
    cov: Array
    least: Array
    greatest: Array

    def surveyed_range(self, name: str) -> tuple[float, float]:
        """Least and greatest value met in the survey, mm or kg."""
        at = self.names.index(name)
        return float(self.least[at]), float(self.greatest[at])


@cache
def moments(sex: SurveySex) -> Moments:
    """Moments of one sex of ANSUR II (Natick/TR-15/007), from ``survey_moments.csv``.

    Raises:
        CatalogueError: The table does not have the dimensions of ``dimensions.csv``, or no such sex.
    """
    text = files("parametric.catalogue").joinpath("survey_moments.csv").read_text(encoding="utf-8")
    return parse_moments(text, sex)


def parse_moments(text: str, sex: SurveySex) -> Moments:
    """Moments of one sex from the text of a table written by `survey_moments`.

    Raises:
        CatalogueError: A column or a row is missing.
    """
    names = tuple(dimensions())
    reader = csv.DictReader(text.splitlines())
    if tuple(reader.fieldnames or ())[-len(names) :] != names:
        raise CatalogueError(
            "survey_moments.csv: columns differ from dimensions.csv; make it again with survey_moments"
        )
    rows = {row["statistic"]: row for row in reader if row["sex"] == sex}
    wanted = ["least", "greatest", "mean", *(f"cov {name}" for name in names)]
    missing = [key for key in wanted if key not in rows]
    if missing:
        raise CatalogueError(f"survey_moments.csv: no row {missing[0]!r} for {sex}; make it again with survey_moments")
    table = np.array([[float(rows[key][name]) for name in names] for key in wanted])
    table.flags.writeable = False
    return Moments(
        names=names, n=int(rows["mean"]["n"]), least=table[0], greatest=table[1], mean=table[2], cov=table[3:]
    )


@cache
def allowed_range(name: str) -> tuple[float, float]:
    """Values accepted as input for a dimension, mm or kg.

    Stature 1200 to 2300 mm and mass 30 to 250 kg; any other from half the least to one and a half times the greatest
    value surveyed in either sex. Outside lies a slip of pen or unit, not a person (own judgement, no source).

    Raises:
        CatalogueError: No dimension has this name.
    """
    dimension(name)
    if name in _STATED_RANGES:
        return _STATED_RANGES[name]
    ranges = [moments(sex).surveyed_range(name) for sex in SEXES]
    low, high = min(low for low, _ in ranges), max(high for _, high in ranges)
    return float(math.floor(0.5 * low)), float(math.ceil(1.5 * high))
