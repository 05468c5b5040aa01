"""Everybody from 1500 to 2100 gets a seat, a desk and a bed that fit, in a van with room enough."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.pipeline.check import check
from parametric.pipeline.size import Sized, size

Roomy = Callable[..., Brief]

SEXES = ("male", "female")
STATURES = tuple(range(1500, 2101, 50))
PEOPLE = tuple(product(SEXES, STATURES))
SOME = tuple(product(SEXES, (1500, 1800, 2100)))
REST = tuple(p for p in PEOPLE if p not in SOME)


def fails(checks: tuple[Check, ...]) -> list[tuple[str, str | None, str]]:
    """What failed, in short."""
    return [(c.id, c.mode, c.says) for c in checks if c.verdict is Verdict.FAIL]


@pytest.fixture(scope="module", params=PEOPLE, ids=lambda p: f"{p[0]}-{p[1]}")
def sized(request: pytest.FixtureRequest, roomy: Roomy) -> Sized:
    return size(roomy(*request.param))


def test_the_loaded_seat_lets_the_feet_stand(sized: Sized) -> None:
    wanted = sized.people.at_desk.mean["popliteal_height"] + sized.people.shoes
    assert -40.0 <= sized.dimensions.heights.seat - wanted <= 15.0


def test_the_desk_is_within_15_of_the_elbow(sized: Sized) -> None:
    heights = sized.dimensions.heights
    assert abs(heights.desk - heights.seat - sized.people.at_desk.mean["elbow_height_sitting"]) <= 15.0


def test_the_steps_serve_nine_in_ten_elbows_upwards(sized: Sized) -> None:
    """Downwards the thigh may stop them; then the check of the lowest step says so."""
    elbow = sized.dimensions.heights.seat + sized.people.at_desk.quantile("elbow_height_sitting", 0.95)
    assert min(abs(step - elbow) for step in sized.dimensions.steps) <= 15.0


def test_every_step_clears_the_thigh_by_20(sized: Sized) -> None:
    thigh = sized.dimensions.heights.seat + sized.people.at_desk.mean["thigh_clearance"]
    assert min(sized.dimensions.steps) - sized.dimensions.heights.panel - thigh >= 20.0


def test_the_bed_is_150_longer_than_the_sleeper(sized: Sized) -> None:
    spare = sized.dimensions.lengths.bed - sized.people.tallest
    assert spare >= 70.0
    (verdict,) = (c.verdict for c in sized.checks if c.id == "sleep.length")
    assert verdict is (Verdict.PASS if spare >= 150.0 else Verdict.CAUTION)
    assert spare == 150.0


def test_the_head_has_50_over_it(sized: Sized) -> None:
    body = sized.people.at_desk
    assert 2200.0 - sized.dimensions.heights.seat - body.mean["sitting_height"] >= 50.0
    assert 1100.0 < sized.dimensions.heights.head < 1700.0


def test_nothing_clashes_and_nothing_fails(sized: Sized) -> None:
    assert sized.clashes == ()
    assert fails(sized.checks) == []


def test_heights_grow_with_stature(roomy: Roomy) -> None:
    for sex in SEXES:
        rows = [size(roomy(sex, stature)).dimensions for stature in STATURES]
        for key in ("seat", "desk", "platform", "head"):
            values = [getattr(d.heights, key) for d in rows]
            assert values == sorted(values)
        assert [d.lengths.bed for d in rows] == [float(s + 150) for s in STATURES]


@pytest.mark.parametrize("mass", [45, 60, 75, 95, 120])
@pytest.mark.parametrize("stature", [1600, 1800, 2000])
def test_light_and_heavy_are_served_or_told_why_not(roomy: Roomy, stature: int, mass: int) -> None:
    sized = size(roomy("male", stature, mass=mass))
    told = {c.about for c in sized.clashes}
    assert not fails(sized.checks) or told


@pytest.mark.parametrize(("sex", "stature"), SOME)
def test_solids_of_some_fit_in_every_mode(roomy: Roomy, sex: str, stature: int) -> None:
    assert fails(check(roomy(sex, stature)).checks) == []


@pytest.mark.heavy
@pytest.mark.parametrize(("sex", "stature"), [*REST, *product(("unspecified",), STATURES)])
def test_solids_of_all_fit_in_every_mode(roomy: Roomy, sex: str, stature: int) -> None:
    assert fails(check(roomy(sex, stature)).checks) == []


@pytest.mark.heavy
@pytest.mark.parametrize("shoes", [0, 30])
@pytest.mark.parametrize(("sex", "stature"), SOME)
def test_barefoot_or_in_boots(roomy: Roomy, sex: str, stature: int, shoes: int) -> None:
    assert fails(check(roomy(sex, stature, shoes=shoes)).checks) == []
