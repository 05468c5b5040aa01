from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from parametric.posture.scoring.viewing import (
    Screen,
    character_height,
    laptop_screen,
    no_riser,
    riser_for,
    separate_screen,
    view,
)

EYE = (100.0, 1200.0)
DESK = 700.0
LAPTOP = laptop_screen(250.0)


def test_view_of_a_three_four_five_triangle() -> None:
    found = view((0.0, 1000.0), (400.0, 700.0), Screen(centre=0.0, rise=100.0))
    assert found.distance == pytest.approx(500.0)
    assert found.gaze == pytest.approx(math.degrees(math.atan(0.75)))
    assert found.top == pytest.approx(-200.0)


def test_looking_up_is_a_negative_gaze() -> None:
    assert view((0.0, 1000.0), (500.0, 1500.0), LAPTOP).gaze == pytest.approx(-45.0)


def test_laptop_screen_stands_on_its_base() -> None:
    """Half of 215 mm of picture and 25 mm below it, 20 degrees back, on 18 mm of base."""
    assert pytest.approx(107.5 * math.cos(math.radians(20.0))) == LAPTOP.rise
    assert pytest.approx(18.0 + 132.5 * math.cos(math.radians(20.0))) == LAPTOP.centre


def test_separate_screen_stands_on_its_foot() -> None:
    found = separate_screen(300.0)
    assert found.rise == pytest.approx(150.0 * math.cos(math.radians(10.0)))
    assert found.centre - found.rise == 60.0


@pytest.mark.parametrize("depth", [0.0, 35.0])
def test_a_laptop_without_a_picture_is_refused(depth: float) -> None:
    with pytest.raises(ValueError, match="no room for a picture"):
        laptop_screen(depth)


def test_a_picture_without_height_is_refused() -> None:
    with pytest.raises(ValueError, match="over 0 mm"):
        separate_screen(0.0)


@pytest.mark.parametrize("screen", [LAPTOP, separate_screen(300.0)], ids=["laptop", "separate"])
@pytest.mark.parametrize("gaze", [15.0, 17.5, 20.0])
@pytest.mark.parametrize("distance", [600.0, 700.0])
def test_a_riser_brings_the_screen_to_the_gaze(screen: Screen, gaze: float, distance: float) -> None:
    found = riser_for(EYE, DESK, screen, distance=distance, gaze=gaze)
    below, ahead = distance * math.sin(math.radians(gaze)), distance * math.cos(math.radians(gaze))
    assert below > screen.rise
    assert found.height == pytest.approx(EYE[1] - below - screen.centre - DESK)
    assert found.centre[0] == pytest.approx(EYE[0] + ahead)
    assert found.centre[1] == pytest.approx(EYE[1] - below)
    assert found.view.gaze == pytest.approx(gaze)
    assert found.view.distance == pytest.approx(distance)
    assert found.view.top <= 1e-9


def test_riser_worked_by_hand() -> None:
    """600 away at 17.5 degrees is 180.4 below the eye; 1200 - 180.4 - 700 - 142.5 leaves 177."""
    assert riser_for(EYE, DESK, LAPTOP).height == pytest.approx(177.1, abs=0.1)


def test_a_tall_picture_keeps_its_top_at_the_eye() -> None:
    tall = separate_screen(450.0)
    found = riser_for(EYE, 600.0, tall)
    assert found.height > 0.0
    assert found.view.top == pytest.approx(0.0)
    assert found.view.gaze == pytest.approx(math.degrees(math.asin(tall.rise / 600.0)))
    assert found.view.gaze > 17.5


def test_a_screen_that_is_too_high_gets_no_riser() -> None:
    found = riser_for((0.0, 1000.0), 800.0, separate_screen(300.0))
    assert found.height == 0.0
    assert found.view.top > 0.0
    assert found.view.gaze == pytest.approx(
        -math.degrees(math.asin((800.0 + 60.0 + 147.72 - 1000.0) / 600.0)), abs=0.01
    )


def test_a_laptop_on_the_desk_is_looked_down_on() -> None:
    found = no_riser(EYE, DESK, LAPTOP)
    assert found.height == 0.0
    assert found.centre[1] == DESK + LAPTOP.centre
    assert found.view.distance == pytest.approx(600.0)
    assert found.view.gaze == pytest.approx(math.degrees(math.asin((1200.0 - 700.0 - LAPTOP.centre) / 600.0)))
    assert found.view.gaze > riser_for(EYE, DESK, LAPTOP).view.gaze


def test_a_screen_out_of_the_distance_is_right_below() -> None:
    found = no_riser(EYE, 0.0, LAPTOP)
    assert found.centre[0] == EYE[0]
    assert found.view.gaze == pytest.approx(90.0)
    assert found.view.distance == pytest.approx(1200.0 - LAPTOP.centre)


@pytest.mark.parametrize("find", [riser_for, no_riser])
def test_many_eyes_at_once(find: Callable[..., Any]) -> None:
    eyes, desks = np.array([1000.0, 1200.0, 1400.0]), np.array([600.0, 700.0, 900.0])
    together = find((np.zeros(3), eyes), desks, LAPTOP)
    for i, (eye, desk) in enumerate(zip(eyes, desks, strict=True)):
        alone = find((0.0, float(eye)), float(desk), LAPTOP)
        assert together.height[i] == pytest.approx(alone.height)
        assert together.view.gaze[i] == pytest.approx(alone.view.gaze)
        assert together.view.distance[i] == pytest.approx(alone.view.distance)


@pytest.mark.parametrize("distance", [0.0, -1.0, math.nan])
def test_a_distance_is_positive(distance: float) -> None:
    with pytest.raises(ValueError, match="viewing distance is over 0 mm"):
        no_riser(EYE, DESK, LAPTOP, distance=distance)


@pytest.mark.parametrize("gaze", [-1.0, 90.0, math.nan])
def test_a_gaze_is_below_level(gaze: float) -> None:
    with pytest.raises(ValueError, match="0 to under 90"):
        riser_for(EYE, DESK, LAPTOP, gaze=gaze)


@pytest.mark.parametrize(("arcmin", "height"), [(20.0, 3.5), (22.0, 3.8)])
def test_characters_at_600(arcmin: float, height: float) -> None:
    """ISO 9241-306 (text of the GOST): 20-22 arc minutes, 3.5-3.8 mm at 600 mm."""
    assert round(float(character_height(600.0, arcmin)), 1) == height
    assert character_height(1200.0, arcmin) == pytest.approx(2.0 * character_height(600.0, arcmin))
