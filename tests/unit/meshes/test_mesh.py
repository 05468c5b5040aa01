"""Check meshes of every recipe solid and part family."""

from __future__ import annotations

import math

import numpy as np
import pytest
import trimesh

from parametric.core.pose import at, turn
from parametric.core.shape import Box, Cylinder, Hull, Primitive, Prism, Shape, Sphere, rectangle
from parametric.mechanism.part import PartDesign
from parametric.meshes.mesh import arrays, bounds, centroid, eroded, placed, solid

SKEW = turn((1.0, 2.0, 3.0), 37.0, (5.0, 6.0, 7.0))
WEDGE = Hull(tuple(SKEW.point(p) for p in ((0, 0, 0), (30, 0, 0), (0, 20, 0), (0, 0, 10), (30, 0, 10), (0, 20, 10))))
ROUNDED = (60.0 * 40.0 - (4.0 - math.pi) * 64.0) * 18.0
PRIMITIVES: dict[str, tuple[Primitive, float]] = {
    "box": (Box((-1.0, 2.0, 3.0), (10.0, 20.0, 30.0)), 11.0 * 18.0 * 27.0),
    "prism": (Prism(rectangle(0.0, 0.0, 60.0, 40.0, 8.0), 18.0, SKEW), ROUNDED),
    "cylinder": (Cylinder(5.0, 18.0, SKEW), math.pi * 25.0 * 18.0),
    "cone": (Cylinder(9.0, 4.5, SKEW, 4.5), math.pi * 4.5 * (81.0 + 40.5 + 20.25) / 3.0),
    "cone up": (Cylinder(2.0, 4.5, SKEW, 4.0), math.pi * 4.5 * (4.0 + 8.0 + 16.0) / 3.0),
    "point": (Cylinder(0.0, 4.5, SKEW, 4.0), math.pi * 4.5 * 16.0 / 3.0),
    "sphere": (Sphere(60.0, (1.0, 2.0, 3.0)), math.pi * 288000.0),
    "hull": (WEDGE, 3000.0),
}
FAMILIES = ("panel", "notched board", "rail", "slat", "leg", "bolt", "strap", "mattress")


@pytest.mark.parametrize("name", PRIMITIVES)
def test_volume_of_a_primitive(name: str) -> None:
    primitive, volume = PRIMITIVES[name]
    assert solid(Shape((primitive,))).volume() == pytest.approx(volume, rel=1e-7)


@pytest.mark.parametrize("name", FAMILIES)
def test_volume_of_a_part_family(name: str, designs: dict[str, PartDesign]) -> None:
    design = designs[name]
    assert solid(design.shape).volume() == pytest.approx(design.volume, rel=1e-6)


@pytest.mark.parametrize("name", FAMILIES)
def test_mesh_of_a_part_family_is_watertight(name: str, designs: dict[str, PartDesign]) -> None:
    vertices, triangles = arrays(solid(designs[name].shape))
    mesh = trimesh.Trimesh(vertices, triangles, process=False)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    assert mesh.volume == pytest.approx(designs[name].volume, rel=1e-6)


def test_arrays_have_the_shapes_and_types_promised() -> None:
    vertices, triangles = arrays(solid(Shape((Box((0.0, 0.0, 0.0), (1.0, 2.0, 3.0)),))))
    assert vertices.shape == (8, 3)
    assert vertices.dtype == np.float64
    assert triangles.shape == (12, 3)


def test_solid_is_made_once_for_equal_recipes() -> None:
    assert solid(Shape((Sphere(7.0, (0.0, 0.0, 0.0)),))) is solid(Shape((Sphere(7.0, (0.0, 0.0, 0.0)),)))


def test_placed_moves_to_the_parent_frame() -> None:
    mesh = placed(solid(Shape((Box((0.0, 0.0, 0.0), (10.0, 20.0, 30.0)),))), at(1.0, 2.0, 3.0) @ turn((0, 0, 1), 90.0))
    low, high = bounds(mesh)
    assert (*low, *high) == pytest.approx((-19.0, 2.0, 3.0, 1.0, 12.0, 33.0))


def test_centroid_of_a_box_far_away() -> None:
    mesh = solid(Shape((Box((1e4, 2e4, 3e4), (1e4 + 2.0, 2e4 + 4.0, 3e4 + 6.0)),)))
    assert centroid(mesh) == pytest.approx((10001.0, 20002.0, 30003.0), abs=1e-6)


def test_eroded_box_moves_every_face_in() -> None:
    mesh = eroded(Shape((Box((0.0, 0.0, 0.0), (10.0, 20.0, 30.0)),)), 0.05)
    low, high = bounds(mesh)
    assert (*low, *high) == pytest.approx((0.05, 0.05, 0.05, 9.95, 19.95, 29.95))
    assert mesh.volume() == pytest.approx(9.9 * 19.9 * 29.9)


def test_eroded_prism_is_offset_and_shortened() -> None:
    mesh = eroded(Shape((Prism(rectangle(0.0, 0.0, 60.0, 40.0), 18.0),)), 0.05)
    assert mesh.volume() == pytest.approx(59.9 * 39.9 * 17.9)


def test_eroded_cuts_grow_also_along_their_axis() -> None:
    plate = Box((0.0, 0.0, 0.0), (40.0, 40.0, 18.0))
    blind = Cylinder(4.0, 11.0, at(20.0, 20.0, 8.0))
    mesh = eroded(Shape((plate,), (blind,)), 0.05)
    hole = math.pi * 4.05**2 * (17.95 - 7.95)
    assert mesh.volume() == pytest.approx(39.9 * 39.9 * 17.9 - hole, rel=1e-7)


def test_eroded_cone_moves_its_wall_square_to_itself() -> None:
    mesh = eroded(Shape((Cylinder(10.0, 5.0, at(0.0, 0.0, 0.0), 5.0),)), 0.1)
    low = 10.0 - 0.1 * math.sqrt(2.0) - 0.1
    assert bounds(mesh)[1] == pytest.approx((low, low, 4.9), abs=1e-6)


def test_eroded_sphere_shrinks() -> None:
    assert eroded(Shape((Sphere(10.0, (0.0, 0.0, 0.0)),)), 1.0).volume() == pytest.approx(4.0 / 3.0 * math.pi * 729.0)


@pytest.mark.parametrize("by", [0.05, -0.05])
def test_eroded_hull_moves_every_face(by: float) -> None:
    box = Hull(tuple((x, y, z) for x in (0.0, 10.0) for y in (0.0, 20.0) for z in (0.0, 30.0)))
    assert eroded(Shape((box,)), by).volume() == pytest.approx((10.0 - 2 * by) * (20.0 - 2 * by) * (30.0 - 2 * by))
    # a wedge of the same slope: its sides are 30, 20 and 36.06 long, its inner circle has radius area / half girth
    radius = 300.0 / ((50.0 + math.hypot(30.0, 20.0)) / 2.0)
    left = (1.0 - by / radius) ** 2 * 300.0 * (10.0 - 2 * by)
    assert eroded(Shape((WEDGE,)), by).volume() == pytest.approx(left, rel=1e-6)


@pytest.mark.parametrize(
    "thin",
    [
        Box((0.0, 0.0, 0.0), (10.0, 10.0, 0.08)),
        Prism(rectangle(0.0, 0.0, 10.0, 10.0), 0.08),
        Prism(rectangle(0.0, 0.0, 10.0, 0.08), 10.0),
        Cylinder(0.04, 10.0),
        Sphere(0.04, (0.0, 0.0, 0.0)),
    ],
)
def test_eroded_solid_thinner_than_the_erosion_vanishes(thin: Primitive) -> None:
    assert eroded(Shape((thin,))).is_empty()
