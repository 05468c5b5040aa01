from __future__ import annotations

import math

import pytest

from parametric.posture import knee_angle_when_lowered, recline_for


@pytest.mark.parametrize(("thigh", "turned"), [(430.0, 11.0), (490.0, 9.6)])
def test_knee_angle_on_a_seat_82_lower(thigh: float, turned: float) -> None:
    """Own calculation: 82 lower turns a thigh of 430-490 by 9.6-11 degrees."""
    assert knee_angle_when_lowered(thigh, 82.0) == pytest.approx(90.0 - turned, abs=0.05)


def test_a_higher_seat_opens_the_knee() -> None:
    assert knee_angle_when_lowered(400.0, -200.0) == pytest.approx(120.0)


@pytest.mark.parametrize(
    ("thigh", "drop"), [(400.0, 400.1), (400.0, -401.0), (0.0, 0.0), (math.nan, 10.0), (400.0, math.nan)]
)
def test_no_knee_angle_where_the_thigh_cannot_reach(thigh: float, drop: float) -> None:
    assert knee_angle_when_lowered(thigh, drop) is None


@pytest.mark.parametrize(("above", "degrees"), [(1017.0 - 67.0, 24.0), (1017.0, 23.0)])
def test_recline_that_brings_the_crown_82_down(above: float, degrees: float) -> None:
    """Own calculation: sitting height 1017, 24 degrees about the hip, 23 about the seat."""
    assert recline_for(82.0, above) == pytest.approx(degrees, abs=0.5)


def test_no_drop_needs_no_recline() -> None:
    assert recline_for(0.0, 950.0) == 0.0


@pytest.mark.parametrize(
    ("drop", "above"), [(-1.0, 950.0), (951.0, 950.0), (10.0, 0.0), (math.nan, 950.0), (10.0, math.nan)]
)
def test_no_recline_that_cannot_do_it(drop: float, above: float) -> None:
    assert recline_for(drop, above) is None
