from __future__ import annotations

import dataclasses

import pytest

from parametric.body import Body, estimate
from parametric.core.errors import BodyError, CatalogueError


@pytest.fixture
def body() -> Body:
    return estimate(sex="female", stature=1830, mass=70)


def test_quantiles_are_those_of_the_normal_distribution(body: Body) -> None:
    mean, sd = body.mean["knee_height"], body.sd["knee_height"]
    assert body.quantile("knee_height", 0.5) == pytest.approx(mean)
    assert body.quantile("knee_height", 0.95) == pytest.approx(mean + 1.644854 * sd, abs=1e-4)
    assert body.quantile("knee_height", 0.05) == pytest.approx(mean - 1.644854 * sd, abs=1e-4)


def test_known_dimensions_have_one_quantile(body: Body) -> None:
    assert body.quantile("stature", 0.01) == body.quantile("stature", 0.99) == 1830


@pytest.mark.parametrize("p", [0.0, 1.0, -0.1, 95.0, float("nan")])
def test_p_must_be_a_probability(body: Body, p: float) -> None:
    with pytest.raises(BodyError, match=r"quantile of stature: p is .*more than 0 and less than 1"):
        body.quantile("stature", p)


def test_unknown_names_are_refused(body: Body) -> None:
    with pytest.raises(CatalogueError, match=r"did you mean .*knee_height"):
        body.quantile("knee_heigth", 0.5)
    with pytest.raises(CatalogueError, match="'elbow' is not a body dimension"):
        body.cov("elbow", "stature")


def test_covariance_agrees_with_sd(body: Body) -> None:
    for name, sd in body.sd.items():
        assert body.cov(name, name) == pytest.approx(sd**2)
    assert body.cov("stature", "knee_height") == 0.0
    assert body.cov("knee_height", "popliteal_height") == body.cov("popliteal_height", "knee_height") > 0


def test_combined_sd_of_a_sum_and_of_a_difference(body: Body) -> None:
    a, b = "knee_height", "popliteal_height"
    variances = body.sd[a] ** 2 + body.sd[b] ** 2
    assert body.combined_sd({a: 1, b: 1}) ** 2 == pytest.approx(variances + 2 * body.cov(a, b))
    assert body.combined_sd({a: 1, b: -1}) ** 2 == pytest.approx(variances - 2 * body.cov(a, b))


def test_immutable(body: Body) -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        body.sex = "male"  # type: ignore[misc]
    with pytest.raises(TypeError, match="does not support item assignment"):
        body.mean["stature"] = 1.0  # type: ignore[index]
    with pytest.raises(ValueError, match="read-only"):
        body.covariance[0, 0] = 1.0
