"""Check meshes straight from shape recipes, and the same recipes shrunk by a hair.

Holes and pins keep a chord error of 0.02 mm; see `facets` for how round edges are cut up.
"""

from __future__ import annotations

import math
from functools import cache, lru_cache

import numpy as np
from manifold3d import CrossSection, FillRule, JoinType, Manifold, OpType
from numpy.typing import NDArray

from parametric.core.pose import Pose, Vec3
from parametric.core.shape import Box, Cylinder, Hull, Outline, Primitive, Prism, Shape, Sphere, circle
from parametric.meshes.facets import polygon

EROSION = 0.05  # touching parts shrunk by this much each are 0.1 apart: the thickness that makes an overlap

_BALL_FACETS = 48
_SHARPEST = 4.0  # an offset corner may run this many times the offset away, enough for 29 degrees


@lru_cache(maxsize=1024)
def solid(shape: Shape) -> Manifold:
    """The closed mesh of a recipe, in the frame of the part, mm."""
    return _joined(shape, 0.0)


@lru_cache(maxsize=1024)
def eroded(shape: Shape, by: float = EROSION) -> Manifold:
    """The recipe with every face moved `by` mm into the material: solids shrunk, cuts grown.

    Two solids that share a face come apart; a solid thinner than twice `by` vanishes.
    """
    return _joined(shape, by)


def placed(mesh: Manifold, pose: Pose) -> Manifold:
    """The mesh in the parent frame of `pose`."""
    return mesh.transform(pose.matrix[:3])


def arrays(mesh: Manifold) -> tuple[NDArray[np.float64], NDArray[np.int32]]:
    """Vertices, shape (n, 3), mm, and triangles, shape (m, 3), counter-clockwise from outside."""
    raw = mesh.to_mesh64()
    return np.asarray(raw.vert_properties)[:, :3], np.asarray(raw.tri_verts).astype(np.int32)


def bounds(mesh: Manifold) -> tuple[Vec3, Vec3]:
    """Least and greatest corner of a mesh, mm."""
    x0, y0, z0, x1, y1, z1 = mesh.bounding_box()
    return (x0, y0, z0), (x1, y1, z1)


def centroid(mesh: Manifold) -> Vec3:
    """Centre of the volume of a mesh, mm."""
    vertices, triangles = arrays(mesh)
    middle = vertices.mean(axis=0)  # near the result, so that little is lost by subtraction
    a, b, c = (vertices[triangles[:, k]] - middle for k in range(3))
    volumes = np.einsum("ij,ij->i", a, np.cross(b, c))
    x, y, z = middle + ((a + b + c) * volumes[:, None]).sum(axis=0) / (4.0 * volumes.sum())
    return float(x), float(y), float(z)


def _joined(shape: Shape, by: float) -> Manifold:
    body = Manifold.batch_boolean([_primitive(p, -by) for p in shape.adds], OpType.Add)
    return Manifold.batch_boolean([body, *(_primitive(p, by) for p in shape.cuts)], OpType.Subtract)


def _primitive(primitive: Primitive, grow: float) -> Manifold:
    """One solid of a recipe with every face moved `grow` mm outwards."""
    match primitive:
        case Box(lo, hi):
            size = tuple(b - a + 2.0 * grow for a, b in zip(lo, hi, strict=True))
            if min(size) <= 0.0:
                return Manifold()
            return Manifold.cube(size).translate(tuple(a - grow for a in lo))
        case Prism(outline, height, pose):
            return _drawn(_section(outline, grow), height, pose, grow)
        case Cylinder(_, height, pose):
            low, high = _radii(primitive, grow)
            if max(low, high) <= 0.0:
                return Manifold()
            return _drawn(_disc(max(low, high)), height, pose, grow, (low, high))
        case Sphere(radius, centre):
            return _ball().scale((radius + grow,) * 3).translate(centre) if radius + grow > 0.0 else Manifold()
        case Hull(points):
            hull = Manifold.hull_points(np.asarray(points))
            return _faces_moved(hull, grow) if grow else hull


def _section(outline: Outline, grow: float) -> CrossSection:
    section = CrossSection([polygon(outline)], FillRule.NonZero)
    return section.offset(grow, JoinType.Miter, _SHARPEST) if grow else section


@lru_cache(maxsize=256)
def _disc(radius: float) -> CrossSection:
    return CrossSection([polygon(circle(0.0, 0.0, radius))])


def _radii(cylinder: Cylinder, grow: float) -> tuple[float, float]:
    """Radii at both ends, the wall moved outwards square to itself and the ends along the axis."""
    low = cylinder.radius
    high = low if cylinder.top_radius is None else cylinder.top_radius
    slope = (high - low) / cylinder.height
    out = grow * math.sqrt(1.0 + slope * slope)
    return max(0.0, low + out - slope * grow), max(0.0, high + out + slope * grow)


def _drawn(
    section: CrossSection, height: float, pose: Pose, grow: float, radii: tuple[float, float] | None = None
) -> Manifold:
    """A section drawn out along z, both ends moved outwards; with radii, tapered from the wider end."""
    length = height + 2.0 * grow
    if length <= 0.0 or section.is_empty():
        return Manifold()
    if radii is None or radii[0] == radii[1]:
        bar = section.extrude(length)
    else:
        narrow = min(radii) / max(radii)
        bar = section.extrude(length, scale_top=(narrow, narrow))
        if radii[0] < radii[1]:
            bar = bar.rotate((180.0, 0.0, 0.0)).translate((0.0, 0.0, length))
    return placed(bar.translate((0.0, 0.0, -grow)), pose)


def _faces_moved(hull: Manifold, grow: float) -> Manifold:
    """A convex mesh with every face moved outwards."""
    vertices, triangles = arrays(hull)
    a, b, c = (vertices[triangles[:, k]] for k in range(3))
    normals = np.cross(b - a, c - a)
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    planes = np.unique(np.column_stack([normals, np.einsum("ij,ij->i", normals, a) + grow]).round(9), axis=0)
    size = np.ptp(vertices, axis=0) + 2.0 * max(grow, 0.0) * _SHARPEST
    body = Manifold.cube(size, True).translate((vertices.max(axis=0) + vertices.min(axis=0)) / 2.0)
    for plane in planes:
        body = body.trim_by_plane(-plane[:3], -plane[3])
    return body


@cache
def _ball() -> Manifold:
    """A ball of facets that holds the volume of the unit sphere."""
    rough = Manifold.sphere(1.0, _BALL_FACETS)
    return rough.scale(((4.0 / 3.0 * math.pi / rough.volume()) ** (1.0 / 3.0),) * 3)
