from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from parametric.body import Body
from parametric.posture import Workplace
from parametric.posture.arms import arms
from parametric.posture.flesh import Flesh

Fitting = Callable[..., Workplace]


def test_without_a_desk_the_arm_hangs_and_the_forearm_is_level(body: Body, fitting: Fitting) -> None:
    place = fitting(body, desk=None)
    found = arms(body, place)
    assert found == arms(body, fitting(body))
    assert found.shoulder_flexion == 0.0
    assert found.elbow_angle == 90.0
    assert found.wrist[1] == found.elbow[1] == place.seat + body.mean["elbow_height_sitting"]


def test_fingertip_and_grip_are_as_far_from_the_elbow_as_measured(body: Body, fitting: Fitting) -> None:
    found = arms(body, fitting(body))
    back_of_elbow = found.elbow[0] - Flesh.of(body).arm
    assert found.fingertip[0] - back_of_elbow == pytest.approx(body.mean["elbow_fingertip_length"])
    assert found.grip[0] - back_of_elbow == pytest.approx(body.mean["elbow_grip_length"])


@pytest.mark.parametrize("up", [1.0, 20.0, 60.0, 150.0])
def test_a_higher_desk_swings_the_upper_arm_forward(body: Body, fitting: Fitting, up: float) -> None:
    place = fitting(body, desk=up)
    found, link = arms(body, place), Flesh.of(body).upper_arm
    assert found.elbow[1] == found.wrist[1] == pytest.approx(place.desk)
    forward, down = found.elbow[0] - found.shoulder[0], link - up
    assert math.hypot(forward, down) == pytest.approx(link)
    assert found.shoulder_flexion == pytest.approx(math.degrees(math.atan2(forward, down)))
    assert found.elbow_angle == pytest.approx(90.0 + found.shoulder_flexion)


def test_a_desk_over_the_shoulder_is_out_of_reach(tall: Body, fitting: Fitting) -> None:
    place = fitting(tall, desk=700.0)
    found = arms(tall, place)
    assert found.shoulder_flexion == pytest.approx(90.0)
    assert found.elbow[1] == found.wrist[1] == pytest.approx(found.shoulder[1] - 2.0 * Flesh.of(tall).arm)


@pytest.mark.parametrize("down", [1.0, 20.0, 80.0])
def test_hands_go_down_to_a_lower_desk(body: Body, fitting: Fitting, down: float) -> None:
    place = fitting(body, desk=-down)
    found, link = arms(body, place), Flesh.of(body).forearm
    assert found.wrist[1] == found.grip[1] == pytest.approx(place.desk)
    assert found.elbow[1] == place.seat + body.mean["elbow_height_sitting"]
    assert math.dist(found.elbow, found.wrist) == pytest.approx(link)
    assert found.elbow_angle == pytest.approx(90.0 + math.degrees(math.asin(down / link)))


def test_the_elbow_opens_no_further_than_135_degrees(tall: Body, fitting: Fitting) -> None:
    """ANSI/HFES 100 via NUREG-0700 r3: elbow 70-135 degrees."""
    place = fitting(tall, desk=-400.0)
    found = arms(tall, place)
    assert found.elbow_angle == pytest.approx(135.0)
    assert place.desk is not None
    assert found.wrist[1] > place.desk
