from __future__ import annotations

import math

import pytest

from parametric.core.pose import at, turn
from parametric.core.shape import Box, Cylinder, Prism, Shape, Sphere, rectangle
from parametric.meshes.mesh import bounds, solid
from parametric.posture.limbs import limb, oval, posed


@pytest.mark.parametrize("end", [(300.0, 0.0, 0.0), (0.0, 300.0, 0.0), (0.0, 0.0, -300.0), (100.0, -200.0, 200.0)])
def test_a_limb_is_a_bar_between_balls(end: tuple[float, float, float]) -> None:
    found = limb(((0.0, 0.0, 0.0), 40.0), (end, 40.0))
    bar = next(p for p in found if isinstance(p, Cylinder))
    assert bar.pose.point((0.0, 0.0, bar.height)) == pytest.approx(end)
    assert solid(Shape(found)).volume() == pytest.approx(math.pi * 40.0**2 * (300.0 + 4.0 / 3.0 * 40.0), rel=0.005)


def test_a_tapered_limb_has_the_radius_of_each_ball_at_its_end() -> None:
    bar = next(p for p in limb(((0.0, 0.0, 0.0), 50.0), ((0.0, 0.0, 400.0), 30.0)) if isinstance(p, Cylinder))
    assert (bar.radius, bar.top_radius, bar.height) == (50.0, 30.0, 400.0)


def test_balls_in_one_place_need_no_bar() -> None:
    assert limb(((1.0, 2.0, 3.0), 40.0), ((1.0, 2.0, 3.0), 40.0)) == (Sphere(40.0, (1.0, 2.0, 3.0)),) * 2


@pytest.mark.parametrize(("depth", "breadth"), [(250.0, 400.0), (400.0, 250.0), (300.0, 300.0)])
def test_an_oval_keeps_depth_and_breadth_whichever_is_greater(depth: float, breadth: float) -> None:
    lo, hi = bounds(solid(Shape((oval(depth, breadth, 20.0, 90.0),))))
    assert lo == pytest.approx((0.0, -breadth / 2.0, 20.0), abs=0.05)
    assert hi == pytest.approx((depth, breadth / 2.0, 90.0), abs=0.05)


def test_a_posed_shape_is_the_shape_elsewhere() -> None:
    prism = Prism(rectangle(0.0, 0.0, 60.0, 40.0), 20.0)
    shape = Shape((prism, Sphere(10.0, (60.0, 0.0, 20.0))), (Cylinder(5.0, 60.0, at(20.0, 20.0, -10.0)),))
    pose = turn((1.0, 2.0, 3.0), 40.0, (10.0, 20.0, 30.0))
    here, there = solid(posed(shape, pose)), solid(shape).transform(pose.matrix[:3])
    # facets of a ball do not turn with it: its surface of 1257 mm2 may differ by 0.02 mm
    assert (here - there).volume() + (there - here).volume() < 25.0


def test_a_box_cannot_be_posed() -> None:
    with pytest.raises(TypeError, match="Box cannot be posed; draw it as a prism"):
        posed(Shape((Box((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)),)), turn((0.0, 0.0, 1.0), 30.0))
