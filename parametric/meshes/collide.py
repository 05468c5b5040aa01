"""Overlap, distance and depth of placed pieces.

FCL only ever says "these two are certainly clear of each other"; whatever it cannot clear is decided by the exact
intersection. Everything is asked in the frame of the first piece and remembered by relative placement, so that parts
which stay together through all modes are judged once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import fcl
import numpy as np
from manifold3d import Manifold
from numpy.typing import NDArray

from parametric.core.pose import Pose, Vec3
from parametric.meshes.mesh import centroid, placed
from parametric.meshes.piece import Piece, Placed, bare, core, corners, drilled, lumps, skin, tree

NEAR = 5.0
LEAST_VOLUME = 1.0
LEAST_THICKNESS = 0.1

_REMEMBERED = 65536


@dataclass(frozen=True, slots=True, kw_only=True)
class Overlap:
    """Space taken twice.

    Attributes:
        volume: mm3.
        thickness: Mean thickness, twice the volume over the surface, mm.
        at: Centre of its volume, mm.
    """

    volume: float
    thickness: float
    at: Vec3


def near_pairs(boxes: Sequence[NDArray[np.float64]], grow: float = NEAR) -> list[tuple[int, int]]:
    """Pairs (i, j), i < j, whose corner boxes overlap or touch when each is grown on all sides.

    Args:
        boxes: Least and greatest corner of each, shape (n, 2, 3), mm.
        grow: mm.
    """
    if len(boxes) < 2:
        return []
    corners = np.asarray(boxes)
    low, high = corners[:, 0] - grow, corners[:, 1] + grow
    meet = np.all(low[:, None] <= high[None], axis=2)
    i, j = np.nonzero(np.triu(meet & meet.T, 1))
    return list(zip(i.tolist(), j.tolist(), strict=True))


def overlap(a: Manifold, b: Manifold) -> Overlap | None:
    """The exact overlap of two meshes in one frame; None unless over 1 mm3 and over 0.1 mm thick in the mean."""
    common = a ^ b
    volume = float(common.volume())
    if volume <= LEAST_VOLUME:
        return None
    thickness = 2.0 * volume / float(common.surface_area())
    if thickness <= LEAST_THICKNESS:
        return None
    return Overlap(volume=volume, thickness=thickness, at=centroid(common))


def hits(a: Placed, b: Placed) -> Overlap | None:
    """How two placed pieces overlap, in the van frame; None when they do not by the rule of `overlap`."""
    # an overlap no deeper than this along one axis cannot be thicker in the mean
    if _apart(a.box, b.box) >= -LEAST_THICKNESS:
        return None
    found = _hit(a.piece, b.piece, _relative(a.pose, b.pose))
    return found and replace(found, at=a.pose.point(found.at))


def gap(a: Placed, b: Placed, limit: float) -> float:
    """Shortest distance between two placed pieces, mm: 0 if they touch or overlap, `limit` if it is more."""
    if _apart(a.box, b.box) >= limit:
        return limit
    return _gap(a.piece, b.piece, _relative(a.pose, b.pose), limit)


def free_after(a: Placed, b: Placed, direction: Vec3, depth: float) -> bool:
    """Whether `a` comes free of `b` (1 mm3 or less in common) when moved `depth` mm along a unit direction."""
    shift = np.asarray(direction) * depth
    if _apart(a.box + shift, b.box) >= 0.0:
        return True
    moved = placed(drilled(a.piece), a.pose.moved(*shift.tolist()))
    return float((moved ^ placed(drilled(b.piece), b.pose)).volume()) <= LEAST_VOLUME


@lru_cache(maxsize=_REMEMBERED)
def _hit(a: Piece, b: Piece, where: Pose) -> Overlap | None:
    if not _cores_meet(a, b, where) or not _drilled_meet(bare(a), bare(b), where):
        return None
    return overlap(drilled(a), placed(drilled(b), where))


@lru_cache(maxsize=_REMEMBERED)
def _gap(a: Piece, b: Piece, where: Pose, limit: float) -> float:
    first, second = fcl.CollisionObject(tree(a)), fcl.CollisionObject(tree(b), _transform(where))
    distance = float(fcl.distance(first, second, fcl.DistanceRequest(), fcl.DistanceResult()))
    if distance >= limit and not _swallowed(a, b, where):
        return limit
    first_skin, second_skin = skin(a), skin(b)
    if first_skin is not None and second_skin is not None and _collide(first_skin, second_skin, where):
        return 0.0
    return float(drilled(a).min_gap(placed(drilled(b), where), limit))


def _cores_meet(a: Piece, b: Piece, where: Pose) -> bool:
    """False only if the two pieces, shrunk, are certainly clear of each other."""
    first, second = core(a), core(b)
    if first is None or second is None:
        return True
    return _collide(first, second, where) or _swallowed(a, b, where)


def _drilled_meet(a: Piece, b: Piece, where: Pose) -> bool:
    """False only if two pieces with open holes, shrunk, are certainly clear of each other: a pin in its hole is."""
    first, second = core(a), core(b)
    if first is None or second is None or _collide(first, second, where):
        return True
    # surfaces apart: a lump is wholly inside the other piece or wholly outside it, as any point of it is
    (boxes_a, seeds_a), (boxes_b, seeds_b) = lumps(a), lumps(b)
    rotation = np.asarray(where.rotation).reshape(3, 3)
    theirs, ours = seeds_b @ rotation.T + where.translation, (seeds_a - where.translation) @ rotation
    return any(_within(p, a, boxes_a) for p in theirs) or any(_within(p, b, boxes_b) for p in ours)


def _within(point: NDArray[np.float64], piece: Piece, boxes: NDArray[np.float64]) -> bool:
    """Whether a point lies in the material of a piece, by the solid angle its surface fills from there."""
    if not _inside(point[None], boxes):
        return False
    a, b, c = corners(piece) - point
    la, lb, lc = (np.sqrt(np.einsum("ij,ij->i", v, v)) for v in (a, b, c))
    up = np.einsum("ij,ij->i", a, np.cross(b, c))
    down = la * lb * lc + (a * b).sum(1) * lc + (b * c).sum(1) * la + (c * a).sum(1) * lb
    return bool(2.0 * np.arctan2(up, down).sum() > 2.0 * np.pi)


def _swallowed(a: Piece, b: Piece, where: Pose) -> bool:
    """Whether a lump of one may lie wholly inside the other, where surfaces do not meet."""
    (boxes_a, seeds_a), (boxes_b, seeds_b) = lumps(a), lumps(b)
    rotation = np.asarray(where.rotation).reshape(3, 3)
    theirs = seeds_b @ rotation.T + where.translation
    ours = (seeds_a - where.translation) @ rotation
    return _inside(theirs, boxes_a) or _inside(ours, boxes_b)


def _inside(points: NDArray[np.float64], boxes: NDArray[np.float64]) -> bool:
    """Whether any point, of shape (n, 3), is in any of the corner boxes, of shape (k, 2, 3)."""
    at = points[:, None]
    return bool(((at >= boxes[:, 0]) & (at <= boxes[:, 1])).all(axis=2).any())


def _apart(a: NDArray[np.float64], b: NDArray[np.float64]) -> float:
    """Widest gap between two corner boxes along an axis; negative if they overlap."""
    return float(np.maximum(a[0] - b[1], b[0] - a[1]).max())


def _collide(a: fcl.BVHModel, b: fcl.BVHModel, where: Pose) -> bool:
    first, second = fcl.CollisionObject(a), fcl.CollisionObject(b, _transform(where))
    return bool(fcl.collide(first, second, fcl.CollisionRequest(), fcl.CollisionResult()))


def _transform(pose: Pose) -> fcl.Transform:
    return fcl.Transform(np.asarray(pose.rotation).reshape(3, 3), np.asarray(pose.translation))


def _relative(a: Pose, b: Pose) -> Pose:
    """Where `b` is in the frame of `a`, free of rounding noise so that equal placements are recognised."""
    ra, rb = np.asarray(a.rotation).reshape(3, 3), np.asarray(b.rotation).reshape(3, 3)
    shift = (ra.T @ (np.asarray(b.translation) - np.asarray(a.translation))).round(9) + 0.0
    turn = (ra.T @ rb).round(12) + 0.0
    x, y, z = shift.tolist()
    return Pose((x, y, z), tuple(turn.ravel().tolist()))
