"""Lying diagonally on a bed that is too short: the clearance of the lying body, not of the rectangle's diagonal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from parametric.body import Body
from parametric.posture.lying import LENGTHENED

STEEPEST: Final = 45.0
STEP: Final = 0.05  # degrees; the spare length changes by less than 0.1 mm between steps near its best


@dataclass(frozen=True, slots=True, kw_only=True)
class Slant:
    """The best way to lie on a bed.

    Attributes:
        spare: Bed length left beyond the stature, as if the bed were that much longer than the person, mm; negative
            if the body does not fit.
        angle: Angle to the length of the bed, degrees.
    """

    spare: float
    angle: float


def best_slant(body: Body, length: float, width: float) -> Slant:
    """The angle at which a supine body has most length to spare on a bed.

    The body is the convex outline of head, shoulders, elbows, hips and feet, each as broad as the person's own;
    the spare length is added beyond the crown, as broad as the head. Straight lying is among the angles tried.

    Args:
        body: Who lies.
        length: Bed length, mm.
        width: Bed width, mm.
    """
    angles = np.arange(0.0, STEEPEST + STEP / 2.0, STEP)
    cos, sin = np.cos(np.radians(angles)), np.sin(np.radians(angles))
    along, half = _outline(body)
    top, head = along[0], half[0]
    # least reach of the outline towards the foot and towards the lower side, one row an angle
    foot = (np.outer(cos, along) - np.outer(sin, half)).min(axis=1)
    side = (np.outer(sin, along) - np.outer(cos, half)).min(axis=1)
    deep = (np.outer(cos, along) + np.outer(sin, half)).max(axis=1) - foot
    broad = (np.outer(sin, along) + np.outer(cos, half)).max(axis=1) - side
    by_length = (length + foot - head * sin) / cos - top
    with np.errstate(divide="ignore"):
        by_width = np.where(sin > 0.0, (width + side - head * cos) / np.where(sin > 0.0, sin, 1.0) - top, np.inf)
    spare = np.where((deep <= length) & (broad <= width), np.minimum(by_length, by_width), -np.inf)
    best = int(np.argmax(spare))
    if np.isneginf(spare[best]):
        return Slant(spare=length - body.mean["stature"], angle=0.0)
    return Slant(spare=float(spare[best]) + LENGTHENED, angle=float(angles[best]))


def _outline(body: Body) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Places along the body from the soles, crown first, and half breadths there, mm."""
    mean = body.mean
    places = [
        (mean["stature"] + LENGTHENED, mean["head_breadth"]),
        (mean["shoulder_height"], mean["bideltoid_breadth"]),
        (mean["shoulder_height"] - mean["shoulder_elbow_length"], mean["elbow_to_elbow_breadth"]),
        (mean["trochanterion_height"], mean["hip_breadth_sitting"]),
        (0.0, 2.0 * mean["foot_breadth"]),
    ]
    return np.array([p for p, _ in places]), np.array([b / 2.0 for _, b in places])
