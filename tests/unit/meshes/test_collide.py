"""Overlap, distance and depth; the pushes and thresholds are those of an own measurement against OCCT booleans."""

from __future__ import annotations

import math

import numpy as np
import pytest

from parametric.core.pose import Pose, at, turn
from parametric.core.shape import Box, Cylinder, Shape, Sphere
from parametric.meshes.collide import free_after, gap, hits, near_pairs, overlap
from parametric.meshes.facets import CHORD
from parametric.meshes.mesh import placed, solid
from parametric.meshes.piece import Placed, piece, place

LID = Shape(
    (Box((0.0, 0.0, 0.0), (400.0, 400.0, 18.0)),),
    tuple(Cylinder(2.5, 20.0, at(x, 20.0, -1.0)) for x in (50.0, 200.0, 350.0)),
)
UPRIGHT = Pose()
SKEW = turn((1.0, 2.0, 3.0), 41.0, (70.0, 80.0, 90.0))


def _box(*size: float) -> Shape:
    return Shape((Box((0.0, 0.0, 0.0), (size[0], size[1], size[2])),))


def _put(shape: Shape, x: float = 0.0, y: float = 0.0, z: float = 0.0, world: Pose = UPRIGHT) -> Placed:
    return place(piece(shape), world @ at(x, y, z))


@pytest.mark.parametrize("world", [UPRIGHT, SKEW], ids=["upright", "skew"])
@pytest.mark.parametrize(
    ("push", "hit"), [(-0.1, False), (0.0, False), (0.02, False), (0.08, False), (0.12, True), (0.3, True), (1.0, True)]
)
def test_a_lid_pushed_into_another_is_a_hit_from_a_tenth_on(push: float, hit: bool, world: Pose) -> None:
    lower, upper = _put(LID, world=world), _put(LID, 3.0, 3.0, 18.0 - push, world)
    found = hits(lower, upper)
    assert (found is not None) is hit
    if found is not None:
        assert found.thickness == pytest.approx(push, rel=0.02)
        assert found.volume == pytest.approx(push * (397.0**2 - 6.0 * math.pi * 2.5**2), rel=1e-3)


def test_place_of_an_overlap_is_in_the_van_frame() -> None:
    found = hits(_put(_box(100, 100, 100), 1000.0), _put(_box(20, 20, 20), 1090.0, 40.0, 40.0))
    assert found is not None
    assert found.at == pytest.approx((1095.0, 50.0, 50.0))
    assert found.volume == pytest.approx(4000.0)


def test_overlap_smaller_than_a_cubic_millimetre_is_none() -> None:
    big, small = solid(_box(100, 100, 100)), solid(_box(0.9, 0.9, 0.9))
    assert overlap(big, small) is None
    assert overlap(big, solid(_box(1.1, 1.1, 1.1))) is not None


def test_a_part_wholly_inside_another_is_a_hit() -> None:
    found = hits(_put(_box(100, 100, 100)), _put(_box(10, 10, 10), 40.0, 45.0, 50.0))
    assert found is not None
    assert found.volume == pytest.approx(1000.0)


def test_a_part_wholly_around_another_is_a_hit() -> None:
    assert hits(_put(_box(10, 10, 10), 40.0, 45.0, 50.0), _put(_box(100, 100, 100))) is not None


def test_a_shank_inside_a_board_is_a_hit_though_its_head_lies_outside() -> None:
    bolt = Shape((Cylinder(4.0, 10.0), Cylinder(8.0, 5.0, at(0.0, 0.0, -5.0))))
    turned = place(piece(bolt), at(50.0, 50.0, 18.0) @ turn((1.0, 0.0, 0.0), 180.0))
    found = hits(_put(_box(100, 100, 18)), turned)
    assert found is not None
    assert found.volume == pytest.approx(math.pi * 160.0, rel=1e-6)


@pytest.mark.parametrize(("radius", "hit"), [(4.2, False), (4.25, False), (4.5, True)])
def test_a_pin_in_a_drilled_hole(radius: float, hit: bool) -> None:
    pin = _put(Shape((Cylinder(radius, 60.0),)), 50.0, 50.0, -20.0)
    plate = Shape((Box((0.0, 0.0, 0.0), (100.0, 100.0, 18.0)),), (Cylinder(4.25, 20.0, at(50.0, 50.0, -1.0)),))
    assert (hits(_put(plate), pin) is not None) is hit


def test_a_part_inside_a_recess_is_free() -> None:
    tray = Shape((Box((0.0, 0.0, 0.0), (100.0, 100.0, 30.0)),), (Box((5.0, 5.0, 5.0), (95.0, 95.0, 31.0)),))
    assert hits(_put(tray), _put(_box(90, 90, 10), 5.0, 5.0, 5.0)) is None


def test_a_thin_rod_through_a_board_is_a_hit() -> None:
    rod = _put(Shape((Cylinder(0.5, 60.0),)), 50.0, 50.0, -20.0)
    assert hits(_put(_box(100, 100, 18)), rod) is not None


@pytest.mark.parametrize("world", [UPRIGHT, SKEW], ids=["upright", "skew"])
@pytest.mark.parametrize(
    ("away", "expected"), [(-5.0, 0.0), (0.0, 0.0), (0.2, 0.2), (0.9, 0.9), (3.0, 1.0), (30.0, 1.0)]
)
def test_gap_between_drilled_faces(away: float, expected: float, world: Pose) -> None:
    assert gap(_put(LID, world=world), _put(LID, 3.0, 3.0, 18.0 + away, world), 1.0) == pytest.approx(
        expected, abs=1e-6
    )


def test_gap_at_a_corner_is_the_straight_distance() -> None:
    assert gap(_put(_box(10, 10, 10)), _put(_box(10, 10, 10), 13.0, 14.0, 5.0), 9.0) == pytest.approx(5.0)


def test_gap_of_a_pin_in_its_hole_is_the_radial_play() -> None:
    plate = Shape((Box((0.0, 0.0, 0.0), (100.0, 100.0, 18.0)),), (Cylinder(5.0, 20.0, at(50.0, 50.0, -1.0)),))
    pin = _put(Shape((Cylinder(4.75, 60.0),)), 50.0, 50.0, -20.0)
    assert gap(_put(plate), pin, 1.0) == pytest.approx(0.25, abs=2.0 * CHORD)


def test_gap_of_a_part_inside_another_is_nought() -> None:
    assert gap(_put(_box(100, 100, 100)), _put(_box(10, 10, 10), 40.0, 45.0, 50.0), 5.0) == 0.0


def test_gap_of_a_ball_in_a_hollow_is_the_play() -> None:
    hollow = Shape((Box((0.0, 0.0, 0.0), (100.0, 100.0, 100.0)),), (Box((10.0, 10.0, 10.0), (90.0, 90.0, 101.0)),))
    ball = _put(Shape((Sphere(20.0, (0.0, 0.0, 0.0)),)), 50.0, 50.0, 32.0)
    assert gap(_put(hollow), ball, 5.0) == pytest.approx(2.0, abs=0.1)


@pytest.mark.parametrize(("depth", "free"), [(10.0, False), (29.9, False), (30.0, True), (40.0, True)])
def test_free_after_moving_out_of_the_foam(depth: float, free: bool) -> None:
    foam, seat = _put(_box(600, 400, 100)), _put(_box(300, 300, 300), 100.0, 50.0, 70.0)
    assert free_after(seat, foam, (0.0, 0.0, 1.0), depth) is free


def test_free_after_moving_the_wrong_way_is_false() -> None:
    foam, seat = _put(_box(600, 400, 100)), _put(_box(300, 300, 300), 100.0, 50.0, 70.0)
    assert not free_after(seat, foam, (0.0, 0.0, -1.0), 40.0)


def test_near_pairs_meet_when_grown_by_five_each() -> None:
    boxes = [np.array([[x, 0.0, 0.0], [x + 10.0, 10.0, 10.0]]) for x in (0.0, 20.0, 40.5, 5.0)]
    assert near_pairs(boxes) == [(0, 1), (0, 3), (1, 3)]
    assert near_pairs(boxes, grow=0.0) == [(0, 3)]


def test_near_pairs_of_one_box_are_none() -> None:
    assert near_pairs([np.zeros((2, 3))]) == []


def test_quick_tests_never_hide_an_overlap() -> None:
    tube = Shape((Box((0.0, 0.0, 0.0), (90.0, 30.0, 30.0)),), (Box((-1.0, 2.0, 2.0), (91.0, 28.0, 28.0)),))
    bolt = Shape((Cylinder(4.0, 40.0), Cylinder(8.0, 5.0, at(0.0, 0.0, -5.0))))
    plate = Shape((Box((0.0, 0.0, 0.0), (90.0, 60.0, 18.0)),), (Cylinder(9.0, 20.0, at(45.0, 30.0, -1.0)),))
    shapes = (tube, bolt, plate, Shape((Sphere(6.0, (0.0, 0.0, 0.0)),)), _box(8, 8, 8))
    random = np.random.default_rng(7)
    verdicts = []
    for _ in range(400):
        first, second = (shapes[k] for k in random.integers(len(shapes), size=2))
        x, y, z = random.uniform(-30.0, 60.0, 3)
        pose = at(x, y, z / 2.0) @ turn((random.normal(), random.normal(), random.normal()), random.uniform(0.0, 360.0))
        true = overlap(solid(first), placed(solid(second), pose))
        assert (hits(place(piece(first), UPRIGHT), place(piece(second), pose)) is None) is (true is None)
        verdicts.append(true is None)
    assert 100 < sum(verdicts) < 300
