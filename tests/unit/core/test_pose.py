from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.core.pose import Pose, Vec3, at, frame, from_matrix, turn

X, Y, Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)

length = st.floats(-5000.0, 5000.0)
points = st.tuples(length, length, length)
axes = st.tuples(*[st.floats(-1.0, 1.0)] * 3).filter(lambda a: math.hypot(*a) > 0.1)


@st.composite
def poses(draw: st.DrawFn) -> Pose:
    return turn(draw(axes), draw(st.floats(-400.0, 400.0)), draw(points)).moved(*draw(points))


@pytest.mark.parametrize(
    ("axis", "degrees", "start", "end"),
    [
        (Z, 90.0, X, Y),
        (Z, 180.0, X, (-1.0, 0.0, 0.0)),
        (Z, 270.0, X, (0.0, -1.0, 0.0)),
        (Z, -90.0, X, (0.0, -1.0, 0.0)),
        (Z, 360.0, X, X),
        (Z, 450.0, X, Y),
        (X, 90.0, Y, Z),
        (Y, 90.0, Z, X),
        (Y, -90.0, Z, (-1.0, 0.0, 0.0)),
        ((0.0, 0.0, 7.0), 90.0, X, Y),
    ],
)
def test_quarter_turns_are_exact_and_follow_the_right_hand(axis: Vec3, degrees: float, start: Vec3, end: Vec3) -> None:
    assert turn(axis, degrees).direction(start) == end


def test_a_third_of_a_turn_about_the_diagonal_swaps_the_axes() -> None:
    assert turn((1.0, 1.0, 1.0), 120.0).direction(X) == pytest.approx(Y, abs=1e-15)


def test_a_turn_about_a_point_leaves_that_point() -> None:
    about = (100.0, 20.0, 3.0)
    pose = turn(Z, 90.0, about)
    assert pose.point(about) == about
    assert pose.point((110.0, 20.0, 3.0)) == (100.0, 30.0, 3.0)


def test_thirty_degrees_by_hand() -> None:
    x, y, z = turn(Y, 30.0).point((200.0, 5.0, 0.0))
    assert (x, y, z) == pytest.approx((173.205081, 5.0, -100.0))


def test_the_second_placement_is_given_in_the_frame_of_the_first() -> None:
    table = at(1000.0, 0.0, 700.0) @ turn(Z, 90.0)
    assert (table @ at(300.0, 0.0, 20.0)).translation == (1000.0, 300.0, 720.0)
    assert table.point((300.0, 0.0, 20.0)) == (1000.0, 300.0, 720.0)


def test_order_of_composition_matters() -> None:
    assert (turn(Z, 90.0) @ at(1.0, 0.0, 0.0)).translation == (0.0, 1.0, 0.0)
    assert (at(1.0, 0.0, 0.0) @ turn(Z, 90.0)).translation == (1.0, 0.0, 0.0)


@given(poses(), poses(), points)
def test_composition_is_one_placement_after_the_other(a: Pose, b: Pose, p: Vec3) -> None:
    assert (a @ b).point(p) == pytest.approx(a.point(b.point(p)), abs=1e-6)


@given(poses(), points)
def test_the_inverse_undoes(pose: Pose, p: Vec3) -> None:
    assert pose.inverse().point(pose.point(p)) == pytest.approx(p, abs=1e-6)
    assert (pose @ pose.inverse()).matrix == pytest.approx(np.eye(4), abs=1e-6)


@given(poses(), points, points)
def test_distances_and_handedness_are_kept(pose: Pose, p: Vec3, q: Vec3) -> None:
    assert math.dist(pose.point(p), pose.point(q)) == pytest.approx(math.dist(p, q), abs=1e-6)
    assert float(np.linalg.det(pose.matrix[:3, :3])) == pytest.approx(1.0)


@given(poses(), points, points)
def test_a_direction_ignores_where_the_frame_is(pose: Pose, p: Vec3, q: Vec3) -> None:
    there = pose.direction((q[0] - p[0], q[1] - p[1], q[2] - p[2]))
    ends = pose.point(p), pose.point(q)
    assert there == pytest.approx([b - a for a, b in zip(*ends, strict=True)], abs=1e-6)


@given(poses())
def test_a_placement_survives_its_matrix(pose: Pose) -> None:
    assert from_matrix(pose.matrix) == pose


def test_a_frame_sends_its_axes_where_it_is_told() -> None:
    pose = frame((10.0, 20.0, 30.0), Y, Z)
    assert pose.direction(X) == Y
    assert pose.direction(Y) == Z
    assert pose.direction(Z) == X
    assert pose.point((1.0, 2.0, 3.0)) == (13.0, 21.0, 32.0)


def test_a_shift_keeps_the_attitude() -> None:
    pose = turn(Z, 90.0).moved(dx=1.0, dz=-3.0)
    assert pose.translation == (1.0, 0.0, -3.0)
    assert pose.rotation == turn(Z, 90.0).rotation


def test_no_negative_zero_makes_equal_placements_differ() -> None:
    there_and_back = turn(Z, 90.0) @ turn(Z, -90.0)
    assert there_and_back == Pose()
    assert "-0.0" not in repr(turn(Y, 180.0) @ turn(X, 180.0))
    assert hash(turn(Z, 360.0)) == hash(Pose())
