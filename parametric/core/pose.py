"""Rigid placements. Quarter turns are exact, so a part turned by 90 degrees keeps round figures."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Vec3 = tuple[float, float, float]
_IDENTITY = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Pose:
    """Where a part frame lies in its parent frame: ``parent = rotation @ local + translation``.

    Attributes:
        translation: mm.
        rotation: 3x3 rotation matrix, row by row.
    """

    translation: Vec3 = (0.0, 0.0, 0.0)
    rotation: tuple[float, ...] = _IDENTITY

    @property
    def matrix(self) -> NDArray[np.float64]:
        """Homogeneous matrix, shape (4, 4)."""
        out = np.eye(4)
        out[:3, :3] = np.asarray(self.rotation).reshape(3, 3)
        out[:3, 3] = self.translation
        return out

    def __matmul__(self, other: Pose) -> Pose:
        """The placement of `other`'s frame when `other` is given in this frame."""
        return from_matrix(self.matrix @ other.matrix)

    def inverse(self) -> Pose:
        """The placement that undoes this one."""
        r = np.asarray(self.rotation).reshape(3, 3)
        return _pose(-r.T @ np.asarray(self.translation), r.T)

    def point(self, p: Vec3) -> Vec3:
        """A point of the local frame, in the parent frame."""
        r, t = self.rotation, self.translation
        return (
            r[0] * p[0] + r[1] * p[1] + r[2] * p[2] + t[0],
            r[3] * p[0] + r[4] * p[1] + r[5] * p[2] + t[1],
            r[6] * p[0] + r[7] * p[1] + r[8] * p[2] + t[2],
        )

    def direction(self, d: Vec3) -> Vec3:
        """A direction of the local frame, in the parent frame."""
        r = self.rotation
        return (
            r[0] * d[0] + r[1] * d[1] + r[2] * d[2],
            r[3] * d[0] + r[4] * d[1] + r[5] * d[2],
            r[6] * d[0] + r[7] * d[1] + r[8] * d[2],
        )

    def moved(self, dx: float = 0.0, dy: float = 0.0, dz: float = 0.0) -> Pose:
        """The same attitude, shifted in the parent frame (mm)."""
        x, y, z = self.translation
        return Pose((x + dx, y + dy, z + dz), self.rotation)


def at(x: float, y: float, z: float) -> Pose:
    """A shift without a turn (mm)."""
    return Pose((x, y, z))


def turn(axis: Vec3, degrees: float, about: Vec3 = (0.0, 0.0, 0.0)) -> Pose:
    """A turn by the right-hand rule about an axis through a point.

    Args:
        axis: Direction, need not be of unit length.
        degrees: Angle; multiples of 90 are exact.
        about: Point on the axis, mm.
    """
    n = math.sqrt(sum(c * c for c in axis))
    x, y, z = (c / n for c in axis)
    c, s = _cos_sin(degrees)
    k = 1.0 - c
    r = np.array(
        [
            [c + x * x * k, x * y * k - z * s, x * z * k + y * s],
            [y * x * k + z * s, c + y * y * k, y * z * k - x * s],
            [z * x * k - y * s, z * y * k + x * s, c + z * z * k],
        ]
    )
    o = np.asarray(about)
    return _pose(o - r @ o, r)


def frame(origin: Vec3, x_to: Vec3, y_to: Vec3) -> Pose:
    """The placement whose local x and y point along two parent directions.

    Args:
        origin: Where the local origin goes, mm.
        x_to: Unit direction of local x; local z is ``x_to`` cross ``y_to``.
        y_to: Unit direction of local y, square to `x_to`.
    """
    x, y = np.asarray(x_to, float), np.asarray(y_to, float)
    return _pose(np.asarray(origin, float), np.column_stack([x, y, np.cross(x, y)]))


def from_matrix(m: NDArray[np.float64]) -> Pose:
    """A placement from a homogeneous matrix, shape (4, 4)."""
    return _pose(m[:3, 3], m[:3, :3])


def _pose(t: NDArray[np.float64], r: NDArray[np.float64]) -> Pose:
    # -0.0 prints differently from 0.0 and would make equal placements hash apart
    x, y, z = (float(v) + 0.0 for v in t)
    return Pose((x, y, z), tuple(float(v) + 0.0 for v in r.reshape(9)))


def _cos_sin(degrees: float) -> tuple[float, float]:
    quarter, rest = divmod(degrees, 90.0)
    if rest == 0.0:
        return ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(quarter) % 4]
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
