"""Shape recipes: a few solids to join and a few to take away.

One recipe gives the check mesh (`meshes`), the CAD solid (`solids`) and the exact volume of simple parts,
so the three cannot drift apart. All lengths in mm, in the frame of the part.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from parametric.core.pose import Pose, Vec3

Point2 = tuple[float, float]


@dataclass(frozen=True, slots=True)
class LineTo:
    """Straight edge of an outline, to a point."""

    end: Point2


@dataclass(frozen=True, slots=True)
class ArcTo:
    """Circular edge of an outline, through one point to another."""

    through: Point2
    end: Point2


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed path, counter-clockwise, that ends where it starts."""

    start: Point2
    edges: tuple[LineTo | ArcTo, ...]


@dataclass(frozen=True, slots=True)
class Box:
    """Upright box between two corners."""

    lo: Vec3
    hi: Vec3


@dataclass(frozen=True, slots=True)
class Prism:
    """An outline in the local xy plane, drawn out along local z from 0 to `height`."""

    outline: Outline
    height: float
    pose: Pose = field(default_factory=Pose)


@dataclass(frozen=True, slots=True)
class Cylinder:
    """Round bar along local z from 0 to `height`; a second radius makes a cone (countersink)."""

    radius: float
    height: float
    pose: Pose = field(default_factory=Pose)
    top_radius: float | None = None


@dataclass(frozen=True, slots=True)
class Sphere:
    """A ball about `centre`."""

    radius: float
    centre: Vec3


@dataclass(frozen=True, slots=True)
class Hull:
    """The convex hull of some points: a stretch of sloping wall, a wedge of roof."""

    points: tuple[Vec3, ...]


Primitive = Box | Prism | Cylinder | Sphere | Hull


@dataclass(frozen=True, slots=True)
class Shape:
    """The union of `adds` less the union of `cuts`.

    A cut that goes right through starts and ends outside the material, never in its face.
    """

    adds: tuple[Primitive, ...]
    cuts: tuple[Primitive, ...] = ()


def rectangle(x0: float, y0: float, x1: float, y1: float, radius: float = 0.0) -> Outline:
    """A rectangle, its four corners rounded.

    Args:
        x0: Left.
        y0: Bottom.
        x1: Right.
        y1: Top.
        radius: Corner radius, at most half the shorter side.
    """
    return rounded(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), (radius,) * 4)


def rounded(corners: tuple[Point2, ...], radii: tuple[float, ...]) -> Outline:
    """A rectilinear polygon (counter-clockwise, square corners) with a radius at each corner.

    Raises:
        ValueError: A radius does not fit the edges beside its corner.
    """
    n = len(corners)
    edges: list[LineTo | ArcTo] = []
    start: Point2 | None = None
    for i, (corner, r) in enumerate(zip(corners, radii, strict=True)):
        back, ahead = corners[i - 1], corners[(i + 1) % n]
        u, lu = _unit(corner, back)
        v, lv = _unit(corner, ahead)
        if r > min(lu, lv):
            raise ValueError(f"radius {r} does not fit an edge of {min(lu, lv)}")
        if r <= 0.0:
            enter = leave = corner
            step: list[LineTo | ArcTo] = []
        else:
            enter = (corner[0] + u[0] * r, corner[1] + u[1] * r)
            leave = (corner[0] + v[0] * r, corner[1] + v[1] * r)
            k = r * (1.0 - 0.5**0.5)
            through = (corner[0] + (u[0] + v[0]) * k, corner[1] + (u[1] + v[1]) * k)
            step = [ArcTo(through, leave)]
        if start is None:
            start = enter
        else:
            edges.append(LineTo(enter))
        edges.extend(step)
    assert start is not None
    edges.append(LineTo(start))
    return Outline(start, tuple(edges))


def circle(x: float, y: float, radius: float) -> Outline:
    """A full circle as two half arcs."""
    return Outline(
        (x + radius, y),
        (ArcTo((x, y + radius), (x - radius, y)), ArcTo((x, y - radius), (x + radius, y))),
    )


def stadium(x: float, y: float, length: float, width: float) -> Outline:
    """A slot with round ends: a rectangle with half circles, `length` over all along x (mm)."""
    h, r = length / 2.0 - width / 2.0, width / 2.0
    if h <= 0.0:
        return circle(x, y, r)
    return Outline(
        (x - h, y - r),
        (
            LineTo((x + h, y - r)),
            ArcTo((x + h + r, y), (x + h, y + r)),
            LineTo((x - h, y + r)),
            ArcTo((x - h - r, y), (x - h, y - r)),
        ),
    )


def _unit(a: Point2, b: Point2) -> tuple[Point2, float]:
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = (dx * dx + dy * dy) ** 0.5
    return (dx / length, dy / length), length
