from __future__ import annotations

import importlib.resources

import numpy as np
import pytest

from parametric.catalogue.dimensions import dimensions
from parametric.catalogue.survey import SEXES, SurveySex, allowed_range, moments, parse_moments
from parametric.core.errors import CatalogueError


def shipped() -> str:
    return importlib.resources.files("parametric.catalogue").joinpath("survey_moments.csv").read_text(encoding="utf-8")


@pytest.mark.parametrize("sex", SEXES)
def test_covariances_are_those_of_a_real_sample(sex: SurveySex) -> None:
    table = moments(sex)
    assert table.names == tuple(dimensions())
    np.testing.assert_array_equal(table.cov, table.cov.T)
    assert np.linalg.eigvalsh(table.cov).min() > 0
    assert np.all(table.least < table.mean)
    assert np.all(table.mean < table.greatest)


def test_read_once_and_not_writable() -> None:
    assert moments("male") is moments("male")
    with pytest.raises(ValueError, match="read-only"):
        moments("male").mean[0] = 1.0


def test_surveyed_range_of_stature() -> None:
    assert moments("male").surveyed_range("stature") == (1528.0, 1993.0)


def test_table_of_other_dimensions_is_refused() -> None:
    with pytest.raises(CatalogueError, match=r"columns differ from dimensions\.csv; make it again"):
        parse_moments(shipped().replace("knee_height", "knee"), "male")


def test_table_without_a_row_is_refused() -> None:
    text = "\n".join(line for line in shipped().splitlines() if not line.startswith("female,cov span,"))
    with pytest.raises(CatalogueError, match=r"no row 'cov span' for female"):
        parse_moments(text, "female")


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("stature", 1200.0, 2300.0), ("body_mass", 30.0, 250.0), ("popliteal_height", 152.0, 788.0)],
)
def test_allowed_range(name: str, low: float, high: float) -> None:
    assert allowed_range(name) == (low, high)


def test_allowed_range_of_an_unknown_name() -> None:
    with pytest.raises(CatalogueError, match="did you mean stature"):
        allowed_range("statur")
