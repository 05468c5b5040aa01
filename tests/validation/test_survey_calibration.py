"""The estimate against people it has not seen.

Source: rows of ANSUR II 2012 (Natick/TR-15/007), `tests/data/ansur2_rows.csv`. The moments are made again from a part
of the rows, the public function `estimate` is run on them, and it is judged on the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from parametric.body import Sex, estimate, survey_estimate
from parametric.catalogue.dimensions import dimensions
from parametric.catalogue.survey import Moments, SurveySex, parse_moments
from parametric.catalogue.survey_moments import read_rows, table_text

Z90 = 1.644854
NAMES = list(dimensions())
UNITS = np.array([10.0 if name == "body_mass" else 1.0 for name in NAMES])
Samples = Mapping[SurveySex, NDArray[np.int64]]
Refit = Callable[[Samples], None]


@pytest.fixture(scope="module")
def rows() -> Samples:
    return read_rows([Path(__file__).parents[1] / "data" / "ansur2_rows.csv"])


@pytest.fixture
def refit(monkeypatch: pytest.MonkeyPatch) -> Refit:
    """Lets `estimate` use moments made from other rows."""

    def use(samples: Samples) -> None:
        text = table_text(samples)
        tables: dict[SurveySex, Moments] = {sex: parse_moments(text, sex) for sex in samples}
        monkeypatch.setattr(survey_estimate, "moments", tables.__getitem__)

    return use


def held_back(rows: Samples) -> tuple[Samples, Samples]:
    """Two thirds to fit and every third row to test."""
    fit = {sex: np.delete(values, np.s_[::3], axis=0) for sex, values in rows.items()}
    return fit, {sex: values[::3] for sex, values in rows.items()}


def inside(sex: Sex, people: NDArray[np.int64], known: list[str]) -> NDArray[np.float64]:
    """Share of people within their 90 % interval, for each dimension not known."""
    free = [i for i, name in enumerate(NAMES) if name not in ("stature", "body_mass", *known)]
    hits = np.zeros(len(free))
    for person in people / UNITS:
        given: dict[str, Any] = {name: person[NAMES.index(name)] for name in known if name != "body_mass"}
        mass = person[1] if "body_mass" in known else None
        body = estimate(sex=sex, stature=person[0], mass=mass, measured=given)
        mean, sd = np.array(list(body.mean.values()))[free], np.array(list(body.sd.values()))[free]
        hits += np.abs(person[free] - mean) <= Z90 * sd
    return hits / len(people)


@pytest.mark.parametrize("known", [[], ["body_mass"], ["body_mass", "elbow_height_sitting", "popliteal_height"]])
@pytest.mark.parametrize("sex", ["male", "female"])
def test_nine_in_ten_lie_in_the_ninety_percent_interval(
    rows: Samples, refit: Refit, sex: SurveySex, known: list[str]
) -> None:
    """88 to 92 % averaged over the dimensions; none below 85 %, nearly four standard errors of a share of 493 women."""
    fit, rest = held_back(rows)
    refit(fit)
    shares = inside(sex, rest[sex], known)
    assert 0.88 <= shares.mean() <= 0.92
    assert shares.min() >= 0.85


@pytest.mark.parametrize("known", [[], ["body_mass"]])
def test_the_mixture_covers_a_crowd_of_both_sexes(rows: Samples, refit: Refit, known: list[str]) -> None:
    """Equal numbers of both, as the estimate takes for granted; 88 to 92 % averaged over the dimensions."""
    fit, rest = held_back(rows)
    refit(fit)
    crowd = np.concatenate([rest["male"][:493], rest["female"][:493]])
    assert 0.88 <= inside("unspecified", crowd, known).mean() <= 0.92


def tall_errors(rows: Samples, refit: Refit) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Errors of the estimate and of scaling by stature, (78, k), on men of 1900 and more, both fitted below 1850."""
    men = rows["male"]
    short, tall = men[men[:, 0] < 1850], men[men[:, 0] >= 1900] / UNITS
    refit({"male": short, "female": rows["female"]})
    means = np.array([list(estimate(sex="male", stature=person[0]).mean.values()) for person in tall])
    ratios = (short / UNITS).mean(axis=0) / short[:, 0].mean()
    return means - tall, np.outer(tall[:, 0], ratios) - tall


def test_no_bias_for_tall_men_beyond_chance(rows: Samples, refit: Refit) -> None:
    """At most 4 mm and two standard errors of the mean over these 78 men, in every dimension."""
    errors, _ = tall_errors(rows, refit)
    assert len(errors) == 78
    bias = np.abs(errors.mean(axis=0))
    chance = 2 * errors.std(axis=0, ddof=1) / np.sqrt(len(errors))
    assert {name: round(b, 1) for name, b, c in zip(NAMES, bias, chance, strict=True) if b > 4 + c} == {}


@pytest.mark.parametrize(
    "name", ["sitting_height", "eye_height_sitting", "bideltoid_breadth", "popliteal_height", "knee_height"]
)
def test_less_bias_for_tall_men_than_by_ratios(rows: Samples, refit: Refit, name: str) -> None:
    ours, scaled = (abs(errors[:, NAMES.index(name)].mean()) for errors in tall_errors(rows, refit))
    assert scaled > 10
    assert ours < 0.5 * scaled
