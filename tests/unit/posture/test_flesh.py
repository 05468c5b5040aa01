from __future__ import annotations

import dataclasses
import math

import pytest

from parametric.body import Body, Sex, estimate
from parametric.posture.flesh import LEAST, Flesh


def test_an_arm_fills_what_the_deltoids_stand_out(body: Body) -> None:
    mean = body.mean
    assert mean["biacromial_breadth"] + 2.0 * Flesh.of(body).arm == pytest.approx(mean["bideltoid_breadth"])


def test_knee_and_thigh_are_as_thick_as_measured(body: Body) -> None:
    mean, flesh = body.mean, Flesh.of(body)
    assert mean["popliteal_height"] + 2.0 * flesh.knee == pytest.approx(mean["knee_height"])
    assert 2.0 * flesh.thigh == pytest.approx(mean["thigh_clearance"])


@pytest.mark.parametrize(
    ("sex", "stature", "calf", "hand"), [("male", 1756.0, 391.0, 88.0), ("female", 1629.0, 378.0, 79.0)]
)
def test_stand_ins_agree_with_what_was_measured(sex: Sex, stature: float, calf: float, hand: float) -> None:
    """Calf circumference and hand breadth, means of ANSUR II 2012: from memory.

    The calf bulges behind the back of the knee, where the figure stops: it may be up to 15 % slimmer, never thicker.
    """
    flesh = Flesh.of(estimate(sex=sex, stature=stature))
    assert 0.85 * calf < 2.0 * math.pi * flesh.calf <= calf
    assert flesh.hand_breadth == pytest.approx(hand, rel=0.05)


def test_contradicting_measurements_leave_something_to_draw() -> None:
    measured = {
        "bideltoid_breadth": 300.0,
        "biacromial_breadth": 480.0,
        "knee_height": 400.0,
        "popliteal_height": 600.0,
    }
    flesh = Flesh.of(estimate(sex="male", stature=1750.0, measured=measured))
    assert flesh.arm == flesh.knee == LEAST
    assert min(dataclasses.astuple(flesh)) >= LEAST
