"""Round limbs, oval blocks, and shapes set elsewhere."""

from __future__ import annotations

import math
from itertools import pairwise

from parametric.core.pose import Pose, Vec3, at, frame, turn
from parametric.core.shape import Cylinder, Primitive, Prism, Shape, Sphere, stadium

_COINCIDE = 1e-6
_QUARTER = turn((0.0, 0.0, 1.0), 90.0)


def limb(*nodes: tuple[Vec3, float]) -> tuple[Primitive, ...]:
    """A ball at each node and a round bar, tapered if need be, from each to the next.

    Args:
        nodes: Centre and radius of each ball, mm.
    """
    balls = [Sphere(radius, centre) for centre, radius in nodes]
    bars = [
        Cylinder(r, math.dist(a, b), _towards(a, b), None if r == s else s)
        for (a, r), (b, s) in pairwise(nodes)
        if math.dist(a, b) > _COINCIDE
    ]
    return (*balls, *bars)


def oval(depth: float, breadth: float, low: float, high: float) -> Prism:
    """An upright block with a slot-shaped plan; its back touches x = 0, its middle is y = 0.

    Args:
        depth: Along x, mm.
        breadth: Along y, mm.
        low: Underside, mm.
        high: Top, mm.
    """
    pose = at(depth / 2.0, 0.0, low)
    if breadth > depth:
        return Prism(stadium(0.0, 0.0, breadth, depth), high - low, pose @ _QUARTER)
    return Prism(stadium(0.0, 0.0, depth, breadth), high - low, pose)


def posed(shape: Shape, pose: Pose) -> Shape:
    """A shape of balls, bars and prisms, set from a local frame into its parent.

    Raises:
        TypeError: The shape has something else in it.
    """
    return Shape(tuple(_posed(p, pose) for p in shape.adds), tuple(_posed(p, pose) for p in shape.cuts))


def _posed(primitive: Primitive, pose: Pose) -> Primitive:
    match primitive:
        case Sphere(radius, centre):
            return Sphere(radius, pose.point(centre))
        case Cylinder(radius, height, inner, top):
            return Cylinder(radius, height, pose @ inner, top)
        case Prism(outline, height, inner):
            return Prism(outline, height, pose @ inner)
    raise TypeError(f"{type(primitive).__name__} cannot be posed; draw it as a prism")


def _towards(a: Vec3, b: Vec3) -> Pose:
    """The placement at `a` whose local z points to `b`."""
    z = _unit((b[0] - a[0], b[1] - a[1], b[2] - a[2]))
    across = _unit(_cross((0.0, 1.0, 0.0) if abs(z[1]) < 0.9 else (0.0, 0.0, 1.0), z))
    return frame(a, across, _cross(z, across))


def _cross(a: Vec3, b: Vec3) -> Vec3:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _unit(v: Vec3) -> Vec3:
    n = math.hypot(*v)
    return v[0] / n, v[1] / n, v[2] / n
