from __future__ import annotations

from collections.abc import Callable
from statistics import NormalDist

import numpy as np
import pytest

from parametric.body import Body, estimate
from parametric.brief.model import Brief
from parametric.checks.chance import Question, chance_outside, worth_measuring
from parametric.pipeline.size import size

NORMAL = NormalDist()


@pytest.fixture(scope="module")
def body() -> Body:
    return estimate(sex="male", stature=1900.0)


@pytest.mark.parametrize(
    ("off", "low", "high", "chance"),
    [
        (0.0, 0.0, None, 0.5),
        (1.0, 0.0, None, NORMAL.cdf(-1.0)),
        (0.0, -2.0, 2.0, 2.0 * NORMAL.cdf(-2.0)),
        (0.0, None, 1.644854, 0.05),
        (5.0, None, None, 0.0),
        (-9.0, 0.0, None, 1.0),
    ],
)
def test_a_normal_figure_misses_its_limits_as_often_as_the_table_says(
    body: Body, off: float, low: float | None, high: float | None, chance: float
) -> None:
    sd = body.sd["popliteal_height"]
    limits = [None if x is None else x * sd for x in (low, high)]
    found = chance_outside(body, {"popliteal_height": 1.0}, off * sd, limits[0], limits[1])
    assert found == pytest.approx(chance, abs=1e-6)


def test_sums_of_dimensions_take_their_covariance(body: Body) -> None:
    weights = {"popliteal_height": 1.0, "elbow_height_sitting": 1.0}
    spread = (
        np.array(
            [[body.cov(a, b) for b in weights] for a in weights],
        ).sum()
        ** 0.5
    )
    assert chance_outside(body, weights, 0.0, -float(spread), None) == pytest.approx(NORMAL.cdf(-1.0))


@pytest.mark.parametrize(("value", "chance"), [(5.0, 0.0), (-5.0, 1.0)])
def test_what_is_measured_is_certain(value: float, chance: float) -> None:
    known = estimate(sex="male", stature=1900.0, measured={"popliteal_height": 470.0})
    assert chance_outside(known, {"popliteal_height": 1.0}, value, 0.0, 10.0) == chance


def question(about: str, name: str, room: float) -> Question:
    """A figure that hangs on one dimension."""
    return Question(about=about, weights={name: 1.0}, room=room)


def test_the_tightest_question_is_measured_first(body: Body) -> None:
    asked = [question("desk height", "elbow_height_sitting", 15.0), question("head room", "sitting_height", 400.0)]
    first, *_ = worth_measuring(body, asked)
    assert (first.name, first.about) == ("elbow_height_sitting", "desk height")
    assert first.after < first.before
    assert first.before == pytest.approx(1.644854 * body.sd["elbow_height_sitting"], rel=1e-5)


def test_a_second_measurement_is_another_one(body: Body) -> None:
    asked = [question("desk height", "elbow_height_sitting", 15.0), question("seat height", "popliteal_height", 15.0)]
    found = worth_measuring(body, asked)
    assert {w.name for w in found} == {"elbow_height_sitting", "popliteal_height"}


def test_where_there_is_room_enough_nothing_is_worth_it(body: Body) -> None:
    assert worth_measuring(body, [question("head room", "sitting_height", 900.0)]) == ()


def test_what_is_known_is_not_asked_for(demo: Callable[..., Brief]) -> None:
    assert next(w.name for w in size(demo()).worth) == "elbow_height_sitting"
    measured = {"elbow_height_sitting": 255, "popliteal_height": 490}
    after = [w.name for w in size(demo(sleeper={"measured": measured})).worth]
    assert not {"elbow_height_sitting", "popliteal_height"} & set(after)
