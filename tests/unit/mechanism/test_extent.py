from __future__ import annotations

import pytest

from parametric.core.pose import at, turn
from parametric.core.shape import Box, Cylinder, Hull, Primitive, Prism, Shape, Sphere, rectangle, stadium
from parametric.mechanism.extent import Extent, extent, meeting
from parametric.mechanism.part import Bought


def bought(*adds: Primitive) -> Bought:
    """An envelope of some solids."""
    return Bought(
        name="b",
        material="steel",
        stock="s",
        density=1.0,
        designation="d",
        mass=1.0,
        shape=Shape(adds),
        envelope_volume=1.0,
    )


@pytest.mark.parametrize(
    ("adds", "box"),
    [
        ((Box((1.0, 2.0, 3.0), (4.0, 5.0, 6.0)),), ((1.0, 2.0, 3.0), (4.0, 5.0, 6.0))),
        ((Prism(rectangle(0.0, 0.0, 60.0, 40.0, 10.0), 18.0),), ((0.0, 0.0, 0.0), (60.0, 40.0, 18.0))),
        # the round ends bulge past the ends of their arcs
        ((Prism(stadium(0.0, 0.0, 110.0, 32.0), 5.0),), ((-55.0, -16.0, 0.0), (55.0, 16.0, 5.0))),
        ((Cylinder(4.0, 60.0), Cylinder(6.5, 8.0, at(0.0, 0.0, -8.0))), ((-6.5, -6.5, -8.0), (6.5, 6.5, 60.0))),
        ((Cylinder(2.0, 10.0, top_radius=5.0),), ((-5.0, -5.0, 0.0), (5.0, 5.0, 10.0))),
        ((Sphere(3.0, (1.0, 1.0, 1.0)),), ((-2.0, -2.0, -2.0), (4.0, 4.0, 4.0))),
        ((Hull(((0.0, 0.0, 0.0), (9.0, 1.0, 0.0), (2.0, 8.0, 7.0))),), ((0.0, 0.0, 0.0), (9.0, 8.0, 7.0))),
    ],
)
def test_the_box_round_a_part(adds: tuple[Primitive, ...], box: Extent) -> None:
    lo, hi = extent(bought(*adds))
    assert lo == pytest.approx(box[0])
    assert hi == pytest.approx(box[1])


def test_a_placed_part_has_its_box_there() -> None:
    part = bought(Box((0.0, 0.0, 0.0), (100.0, 20.0, 5.0)))
    assert extent(part, turn((0.0, 0.0, 1.0), 90.0).moved(dx=500.0)) == ((480.0, 0.0, 0.0), (500.0, 100.0, 5.0))


RAIL: Extent = ((0.0, 0.0, 0.0), (1000.0, 28.0, 95.0))


@pytest.mark.parametrize(
    ("other", "at_", "normal", "patch"),
    [
        (((100.0, 28.0, 50.0), (145.0, 73.0, 145.0)), (122.5, 28.0, 72.5), (0.0, 1.0, 0.0), (45.0, 45.0)),
        (((100.0, -40.0, 50.0), (145.0, 0.0, 145.0)), (122.5, 0.0, 72.5), (0.0, -1.0, 0.0), (45.0, 45.0)),
        (((900.0, 4.0, 95.0), (1100.0, 24.0, 115.0)), (950.0, 14.0, 95.0), (0.0, 0.0, 1.0), (100.0, 20.0)),
        (((1000.2, 0.0, 0.0), (1010.0, 28.0, 95.0)), (1000.1, 14.0, 47.5), (1.0, 0.0, 0.0), (28.0, 95.0)),
    ],
    ids=["left face", "right face", "on top", "a hair before its end"],
)
def test_where_two_parts_meet(
    other: Extent, at_: tuple[float, ...], normal: tuple[float, ...], patch: tuple[float, float]
) -> None:
    found_at, found_normal, found_patch = meeting(other, RAIL)
    assert found_at == pytest.approx(at_)
    assert found_normal == normal
    assert found_patch == pytest.approx(patch)


def test_an_edge_on_a_face_has_no_patch() -> None:
    _, normal, patch = meeting(((1000.0, 28.0, 0.0), (1010.0, 40.0, 95.0)), RAIL)
    assert max(map(abs, normal)) == 1.0
    assert min(patch) == 0.0
