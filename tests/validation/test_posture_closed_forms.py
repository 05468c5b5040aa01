"""Two-link legs and arms of the posture solver against the law of cosines, to 0.1 mm and 0.1 degree."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from parametric.body import Sex, estimate
from parametric.posture.chain import Unknown
from parametric.posture.skeleton import Skeleton
from parametric.posture.solver import solve
from parametric.posture.station import NONE, Legs, Station

MM, DEGREES = 0.1, 0.1
BODIES: tuple[tuple[Sex, float], ...] = (("male", 1960.0), ("male", 1700.0), ("female", 1580.0), ("female", 1800.0))
Point = tuple[float, float]


def third(a: Point, b: Point, from_a: float, from_b: float, side: float) -> Point:
    """The corner of a triangle over a and b by the law of cosines; to the left of a -> b if `side` is 1."""
    base = math.dist(a, b)
    along = (from_a**2 + base**2 - from_b**2) / (2.0 * base)
    off = side * math.sqrt(from_a**2 - along**2)
    ux, uz = (b[0] - a[0]) / base, (b[1] - a[1]) / base
    return a[0] + along * ux - off * uz, a[1] + along * uz + off * ux


def inner(a: float, b: float, opposite: float) -> float:
    """Angle between two sides of a triangle, degrees."""
    return math.degrees(math.acos((a * a + b * b - opposite * opposite) / (2.0 * a * b)))


@pytest.mark.parametrize(("sex", "stature"), BODIES)
@pytest.mark.parametrize("drop", [-120.0, -60.0, 0.0, 30.0])
@pytest.mark.parametrize("forward", [-40.0, 0.0, 120.0])
def test_leg(sex: Sex, stature: float, drop: float, forward: float) -> None:
    """Hip held by the back rest, foot by the room: the knee is where two circles meet."""
    body = estimate(sex=sex, stature=stature)
    links: Any = Skeleton.of(body)
    seat = body.mean["popliteal_height"] + 20.0 + drop
    hip = (links.hip_from_back, seat + links.hip_above_seat)
    ankle = (links.hip_from_back + links.thigh + forward, 20.0 + links.ankle_height)
    heel = ankle[0] - links.heel_to_ankle
    found: Any = solve(
        links,
        Station(
            seat=seat,
            seat_front=300.0,
            rest=0.0,
            recline=(5.0, 5.0),
            feet_from=heel,
            feet_to=heel + links.foot,
            shoes=20.0,
        ),
    )
    knee = third(hip, ankle, links.thigh, links.shank, 1.0)
    assert found.exists
    assert found.joints.hip == pytest.approx(hip, abs=MM)
    assert found.joints.ankle == pytest.approx(ankle, abs=MM)
    assert found.joints.knee == pytest.approx(knee, abs=MM)
    assert found.angles.knee == pytest.approx(inner(links.thigh, links.shank, math.dist(hip, ankle)), abs=DEGREES)
    slope = math.degrees(math.atan2(knee[1] - hip[1], knee[0] - hip[0]))
    assert found.angles.hip == pytest.approx(95.0 - slope, abs=DEGREES)
    lean = math.degrees(math.atan2(knee[0] - ankle[0], knee[1] - ankle[1]))
    assert found.angles.ankle == pytest.approx(lean, abs=DEGREES)


@pytest.mark.parametrize(("sex", "stature"), BODIES)
@pytest.mark.parametrize("rise", [-60.0, 0.0, 40.0])
@pytest.mark.parametrize("reach", [0.9, 1.1, 1.3])
@pytest.mark.parametrize("recline", [0.0, 12.0])
def test_arm(sex: Sex, stature: float, rise: float, reach: float, recline: float) -> None:
    """Shoulder held by the back rest, fingertips by the home row: the elbow is where two circles meet.

    The hand's own slope is the solver's choice; the wrist follows from it.
    """
    body = estimate(sex=sex, stature=stature)
    links: Any = Skeleton.of(body)
    seat, lean = body.mean["popliteal_height"], math.radians(recline)
    shoulder = (
        links.hip_from_back - links.trunk * math.sin(lean),
        seat + links.hip_above_seat + links.trunk * math.cos(lean),
    )
    keys = (shoulder[0] + reach * (links.forearm + links.typing), shoulder[1] - links.upper_arm + rise)
    edge = keys[0] - 60.0
    found: Any = solve(
        links,
        Station(
            seat=seat,
            seat_front=400.0,
            rest=0.0,
            recline=(recline, recline),
            desk=keys[1] - 30.0,
            desk_edge=edge,
            home_row=(60.0, 60.0),
            keyboard=30.0,
        ),
    )
    hand = math.radians(found.state[Unknown.HAND])
    wrist = (keys[0] - links.typing * math.cos(hand), keys[1] - links.typing * math.sin(hand))
    elbow = third(shoulder, wrist, links.upper_arm, links.forearm, -1.0)
    assert found.exists
    assert found.joints.shoulder == pytest.approx(shoulder, abs=MM)
    assert found.joints.keys == pytest.approx(keys, abs=MM)
    assert found.joints.wrist == pytest.approx(wrist, abs=MM)
    assert found.joints.elbow == pytest.approx(elbow, abs=MM)
    assert found.angles.elbow == pytest.approx(
        inner(links.upper_arm, links.forearm, math.dist(shoulder, wrist)), abs=DEGREES
    )
    flexion = math.degrees(math.atan2(elbow[0] - shoulder[0], shoulder[1] - elbow[1]))
    assert found.angles.upper_arm == pytest.approx(flexion, abs=DEGREES)
    assert found.angles.shoulder == pytest.approx(flexion - recline, abs=DEGREES)


@pytest.mark.parametrize(("sex", "stature"), BODIES)
def test_gaze_and_view(sex: Sex, stature: float) -> None:
    """Trunk held; the head turns until line of sight and eyes agree, on one circle about the shoulder."""
    body = estimate(sex=sex, stature=stature)
    links: Any = Skeleton.of(body)
    station = Station(seat=450.0, seat_front=400.0, rest=0.0, recline=(0.0, 0.0), screen_x=(750.0, 750.0))
    for below in (0.0, 150.0, 400.0):
        found: Any = solve(links, replace(station, screen_z=450.0 + body.mean["eye_height_sitting"] - below))
        head = math.radians(found.angles.head)
        eye = (
            found.joints.shoulder[0] + links.eye_forward * math.cos(head) + links.eye_up * math.sin(head),
            found.joints.shoulder[1] + links.eye_up * math.cos(head) - links.eye_forward * math.sin(head),
        )
        run, fall = found.joints.screen[0] - eye[0], eye[1] - found.joints.screen[1]
        assert found.joints.eye == pytest.approx(eye, abs=MM)
        assert found.angles.gaze == pytest.approx(math.degrees(math.atan2(fall, run)), abs=DEGREES)
        assert found.view == pytest.approx(math.hypot(run, fall), abs=MM)


@pytest.mark.parametrize(("sex", "stature"), BODIES)
def test_heels_on_the_platform(sex: Sex, stature: float) -> None:
    """The heel is on the platform wherever the foot points, and the leg is the hip's and the ankle's triangle."""
    links: Any = Skeleton.of(estimate(sex=sex, stature=stature))
    found: Any = solve(
        links,
        Station(legs=Legs.HEELS, seat=400.0, seat_front=2500.0, feet=400.0, rest=0.0, recline=(20.0, 20.0), desk=NONE),
    )
    foot = math.radians(found.state[Unknown.FOOT])
    heel, ankle, hip = found.joints.heel, found.joints.ankle, found.joints.hip
    assert heel[1] == pytest.approx(400.0, abs=MM)
    rise = links.heel_to_ankle * math.sin(foot) + links.ankle_height * math.cos(foot)
    assert ankle[1] - heel[1] == pytest.approx(rise, abs=MM)
    straight = math.dist(hip, ankle)
    assert found.angles.knee == pytest.approx(inner(links.thigh, links.shank, straight), abs=DEGREES)
    assert found.joints.knee == pytest.approx(third(hip, ankle, links.thigh, links.shank, 1.0), abs=MM)
