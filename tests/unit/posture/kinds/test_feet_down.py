from __future__ import annotations

import dataclasses
import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.body import Body, Links, estimate
from parametric.catalogue.survey import allowed_range
from parametric.posture import Workplace, solve

Fitting = Callable[..., Workplace]
EXACT = 1e-6


def test_level_thigh_gives_the_body_s_own_dimensions(body: Body, fitting: Fitting) -> None:
    place, mean = fitting(body), body.mean
    seated = solve(body, place)
    seat, back, sole = place.seat, place.back, place.floor + place.shoes
    assert seated.knee_front - back == pytest.approx(mean["buttock_knee_length"], abs=EXACT)
    assert seated.calf_back - back == pytest.approx(mean["buttock_popliteal_length"], abs=EXACT)
    assert seated.knee_top - sole == pytest.approx(mean["knee_height"], abs=EXACT)
    assert seated.ankle[1] - sole == pytest.approx(mean["lateral_malleolus_height"], abs=EXACT)
    assert seated.toe[0] - seated.heel[0] == pytest.approx(mean["foot_length"], abs=EXACT)
    assert seated.vertex[1] - seat == pytest.approx(mean["sitting_height"], abs=EXACT)
    assert seated.eye[1] - seat == pytest.approx(mean["eye_height_sitting"], abs=EXACT)
    assert seated.elbow[1] - seat == pytest.approx(mean["elbow_height_sitting"], abs=EXACT)
    assert seated.shoulder[1] - seated.elbow[1] == pytest.approx(mean["shoulder_elbow_length"], abs=EXACT)
    assert seated.thigh_top - seat == pytest.approx(mean["thigh_clearance"], abs=EXACT)
    assert seated.belly - back == pytest.approx(mean["abdominal_depth_sitting"], abs=EXACT)
    assert seated.knee_angle == seated.hip_angle == pytest.approx(90.0, abs=EXACT)


def test_independent_landmarks_put_hip_and_shoulder_near(body: Body, fitting: Fitting) -> None:
    """Standing landmark heights, which the posture does not use, give the same joints to 35 mm (see `Links`)."""
    place = fitting(body)
    seated, links = solve(body, place), Links.of(body)
    assert seated.hip[1] - place.seat == pytest.approx(links.hip_above_seat, abs=35)
    assert seated.shoulder[1] - seated.hip[1] == pytest.approx(links.trunk, abs=35)


@pytest.mark.parametrize("shift", [-120.0, -82.0, -10.0, 0.0, 15.0, 60.0])
def test_shank_stays_upright_and_the_thigh_keeps_its_length(body: Body, fitting: Fitting, shift: float) -> None:
    seated, links = solve(body, fitting(body, seat=shift)), Links.of(body)
    assert seated.knee[0] == seated.ankle[0]
    assert seated.knee[1] - seated.ankle[1] == pytest.approx(links.shank)
    run, rise = seated.knee[0] - seated.hip[0], seated.knee[1] - seated.hip[1]
    assert math.hypot(run, rise) == pytest.approx(links.thigh)
    assert rise == pytest.approx(-shift)
    assert seated.knee_angle == pytest.approx(90.0 - math.degrees(math.atan2(rise, run)))


def test_knees_at_80_degrees_on_a_seat_82_lower(tall: Body, fitting: Fitting) -> None:
    """Own calculation: a thigh of 430-490 turns by 9.6-11 degrees."""
    seated = solve(tall, fitting(tall, seat=-82.0))
    assert seated.knee_angle == pytest.approx(80.0, abs=1.0)


def test_worked_example_of_1960(tall: Body) -> None:
    """Regressions on ANSUR II 2012, men (recomputed): at 1960 popliteal 492, knee 628, eye 879, elbow 260."""
    seated = solve(tall, Workplace(seat=492.0, back=1045.0, place=0.0, desk=752.0, shoes=10.0))
    assert seated.knee_top == pytest.approx(638.0, abs=1.5)
    assert seated.vertex[1] == pytest.approx(492.0 + 1001.0, abs=1.5)
    assert seated.eye[1] == pytest.approx(492.0 + 879.0, abs=1.5)
    assert seated.knee_front == pytest.approx(1045.0 + 691.0, abs=1.5)


def test_arrays_give_what_floats_give(tall: Body) -> None:
    seats, desks = np.array([420.0, 492.0, 560.0]), np.array([700.0, 752.0, 900.0])
    back, zeros = np.array([1000.0, 1045.0, 900.0]), np.zeros(3)
    many = solve(tall, Workplace(seat=seats, floor=zeros, back=back, place=zeros, desk=desks, shoes=zeros + 10.0))
    for i in range(3):
        one = solve(tall, Workplace(seat=seats[i], back=back[i], place=0.0, desk=desks[i], shoes=10.0))
        for field in dataclasses.fields(one):
            found, wanted = getattr(many, field.name), getattr(one, field.name)
            assert _row(found, i) == pytest.approx(wanted), field.name


@given(seat=st.floats(-2000.0, 3000.0), desk=st.floats(-2000.0, 4000.0), data=st.data())
def test_nothing_is_ever_not_a_number(seat: float, desk: float, data: st.DataObject) -> None:
    """Even for measurements that contradict one another as far as a brief lets them."""
    names = ("trochanterion_height", "lateral_femoral_epicondyle_height", "hand_length", "bideltoid_breadth")
    measured = {name: data.draw(st.floats(*allowed_range(name))) for name in names}
    body = estimate(sex="female", stature=1700.0, measured=measured)
    seated = solve(body, Workplace(seat=seat, back=0.0, place=0.0, desk=desk, shoes=10.0))
    assert all(np.isfinite(value).all() for value in dataclasses.astuple(seated))


def _row(value: Any, i: int) -> Any:
    """One of three postures solved together."""
    return tuple(_row(v, i) for v in value) if isinstance(value, tuple) else float(np.broadcast_to(value, (3,))[i])
