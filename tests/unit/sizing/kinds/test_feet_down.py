from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from parametric.sizing.kinds import feet_down as rules


def test_seat_and_slats_of_the_worked_layout() -> None:
    # popliteal 492, slippers 10, mattress 100 sinking 30
    assert rules.seat_height(492.0, 10.0) == 492.0
    assert rules.platform_height(492.0, 100.0, 30.0) == 422.0
    assert rules.loaded_seat(422.0, 100.0, 30.0) == 492.0


def test_the_desk_is_at_elbow_height_where_the_thigh_lets_it() -> None:
    # elbow 260 over seat 492; thigh 175 + gap 20 + board 17.6 = 212.6 is less
    assert rules.desk_height(492.0, 260.0, 175.0, 20.0, 17.6) == 752.0


def test_a_thick_thigh_lifts_the_desk() -> None:
    assert rules.desk_height(492.0, 200.0, 175.0, 20.0, 17.6) == pytest.approx(704.6)


@pytest.mark.parametrize(
    ("spread", "steps"), [(0.0, 1), (10.0, 1), (30.0, 1), (30.1, 2), (46.0, 2), (50.0, 2), (50.1, 3)]
)
def test_steps_of_twenty_reach_a_higher_elbow_within_ten(spread: float, steps: int) -> None:
    assert rules.steps_above(spread) == steps
    assert rules.PITCH * steps >= spread - rules.OFF_ELBOW


@pytest.mark.parametrize(
    ("spread", "room", "steps"),
    [
        (46.0, 47.4, 2),  # as many as the spread asks for
        (46.0, 39.9, 1),  # the thigh leaves room for one
        (46.0, 40.0, 2),
        (46.0, 19.9, 0),
        (46.0, -5.0, 0),
        (0.0, 90.0, 1),
        (90.0, 200.0, 4),
    ],
)
def test_lower_steps_stop_at_the_thigh(spread: float, room: float, steps: int) -> None:
    assert rules.steps_below(spread, room) == steps


def test_back_belly_and_desk_edge_by_hand() -> None:
    # a seat front at 1550: back 1550 + 60 - 565 = 1045, belly 1045 + 226 = 1271, desk edge 30 before it
    back = rules.back(1550.0, 565.0)
    assert back == 1045.0
    assert rules.near_edge(back, 226.0) == 1301.0
    assert rules.seat_depth(565.0) == 505.0


@pytest.mark.parametrize(
    ("rule", "args"),
    [
        (rules.seat_height, ((380.0, 492.0), (0.0, 10.0))),
        (rules.platform_height, ((492.0, 400.0), (100.0, 20.0), (30.0, 0.0))),
        (rules.loaded_seat, ((422.0, 300.0), (100.0, 150.0), (30.0, 50.0))),
        (rules.desk_height, ((492.0, 492.0), (260.0, 200.0), (175.0, 175.0), (20.0, 20.0), (17.6, 17.6))),
        (rules.steps_above, ((46.0, 5.0),)),
        (rules.steps_below, ((46.0, 46.0), (47.4, -3.0))),
        (rules.back, ((1550.0, 1200.0), (565.0, 430.0))),
        (rules.near_edge, ((1045.0, 830.0), (226.0, 190.0))),
        (rules.seat_depth, ((565.0, 430.0),)),
    ],
    ids=lambda value: getattr(value, "__name__", None),
)
def test_arrays_and_floats_agree(rule: Callable[..., Any], args: tuple[tuple[float, float], ...]) -> None:
    together = rule(*(np.array(a) for a in args))
    assert together.shape == (2,)
    assert together.tolist() == [float(rule(*each)) for each in zip(*args, strict=True)]
