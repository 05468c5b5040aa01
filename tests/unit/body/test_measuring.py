from __future__ import annotations

import numpy as np
import pytest

from parametric.body import Body, estimate, narrowing
from parametric.core.errors import CatalogueError

DESK = {"popliteal_height": 1.0, "elbow_height_sitting": 1.0}


@pytest.fixture
def body() -> Body:
    return estimate(sex="male", stature=1960, mass=88)


def test_elbow_height_tells_most_about_the_desk(body: Body) -> None:
    rows = narrowing(body, DESK)
    assert rows[0].name == "elbow_height_sitting"
    assert rows[0].before == pytest.approx(38.2, abs=0.1)
    assert rows[0].after == pytest.approx(18.8, abs=0.1)
    assert [row.after for row in rows] == sorted(row.after for row in rows)


def test_measuring_the_target_itself_leaves_the_measuring_error(body: Body) -> None:
    (row, *_) = narrowing(body, {"popliteal_height": 1.0})
    sd = body.sd["popliteal_height"]
    assert row.name == "popliteal_height"
    assert row.before == pytest.approx(1.644854 * sd)
    assert row.after == pytest.approx(1.644854 * np.sqrt(1 / (1 / sd**2 + 1 / 5.0**2)))


def test_known_dimensions_are_not_proposed(body: Body) -> None:
    names = {row.name for row in narrowing(body, DESK)}
    assert names == set(body.mean) - {"stature", "body_mass"}


def test_nothing_widens(body: Body) -> None:
    assert all(0 <= row.after <= row.before for row in narrowing(body, DESK))


def test_a_target_fully_known_has_no_width(body: Body) -> None:
    assert {row.before for row in narrowing(body, {"stature": 2.0})} == {0.0}


def test_the_mass_may_be_the_thing_to_ask_for() -> None:
    rows = narrowing(estimate(sex="female", stature=1700), {"abdominal_depth_sitting": 1.0})
    assert [row.name for row in rows[:2]] == ["abdominal_depth_sitting", "body_mass"]


def test_unknown_target(body: Body) -> None:
    with pytest.raises(
        CatalogueError, match=r"'elbow_height' is not a body dimension; did you mean .*elbow_height_sitting"
    ):
        narrowing(body, {"elbow_height": 1.0})
