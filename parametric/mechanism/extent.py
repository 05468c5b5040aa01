"""Upright boxes around parts, and the face on which two of them meet."""

from __future__ import annotations

from itertools import product

from parametric.core.pose import Pose, Vec3
from parametric.core.shape import ArcTo, Box, Cylinder, Hull, Outline, Primitive, Prism, Sphere
from parametric.mechanism.part import PartDesign

Extent = tuple[Vec3, Vec3]


def extent(design: PartDesign, pose: Pose | None = None) -> Extent:
    """Box around a part: lower and upper corner, mm, in its own frame or the parent frame of a placement."""
    corners: list[Vec3] = []
    for primitive in design.shape.adds:
        corners.extend(_corners(primitive))
    if pose is not None:
        corners = [pose.point(c) for c in corners]
    return _hull(corners)


def meeting(a: Extent, b: Extent) -> tuple[Vec3, Vec3, tuple[float, float]]:
    """Where two boxes meet face to face: centre of the patch, normal from `b` to `a`, length and width."""
    gaps = [max(a[0][i] - b[1][i], b[0][i] - a[1][i]) for i in range(3)]
    axis = max(range(3), key=lambda i: gaps[i])
    lo = [max(a[0][i], b[0][i]) for i in range(3)]
    hi = [min(a[1][i], b[1][i]) for i in range(3)]
    at = [(lo[i] + hi[i]) / 2.0 for i in range(3)]
    normal = [0.0, 0.0, 0.0]
    normal[axis] = 1.0 if a[0][axis] + a[1][axis] >= b[0][axis] + b[1][axis] else -1.0
    u, v = (i for i in range(3) if i != axis)
    patch = (max(0.0, hi[u] - lo[u]), max(0.0, hi[v] - lo[v]))
    return (at[0], at[1], at[2]), (normal[0], normal[1], normal[2]), patch


def _hull(points: list[Vec3]) -> Extent:
    lo = tuple(min(p[i] for p in points) for i in range(3))
    hi = tuple(max(p[i] for p in points) for i in range(3))
    return (lo[0], lo[1], lo[2]), (hi[0], hi[1], hi[2])


def _corners(primitive: Primitive) -> list[Vec3]:
    match primitive:
        case Box(lo, hi):
            return _box(lo, hi)
        case Prism(outline, height, pose):
            xy = _points(outline)
            return [pose.point((x, y, z)) for x, y in xy for z in (0.0, height)]
        case Cylinder(radius, height, pose, top):
            r = max(radius, top or 0.0)
            return [pose.point(c) for c in _box((-r, -r, 0.0), (r, r, height))]
        case Sphere(r, (x, y, z)):
            return _box((x - r, y - r, z - r), (x + r, y + r, z + r))
        case Hull(points):
            return list(points)


def _box(lo: Vec3, hi: Vec3) -> list[Vec3]:
    return [(x, y, z) for x, y, z in product(*zip(lo, hi, strict=True))]


def _points(outline: Outline) -> list[tuple[float, float]]:
    out = [outline.start]
    for edge in outline.edges:
        if isinstance(edge, ArcTo):
            out.append(edge.through)
        out.append(edge.end)
    return out
