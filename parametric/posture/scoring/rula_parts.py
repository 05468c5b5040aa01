"""RULA scores of single body parts from angles (McAtamney and Corlett 1993, Applied Ergonomics 24(2):91-99).

An angle on a limit gets the lower score: 20.0 degrees of upper arm flexion is 1, 45.0 is 2, 90.0 is 3. An angle that is
not a number gets the worst score of its band, so that a posture nobody solved never looks good.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from parametric.posture.scoring.number import ANGLE_EPS, Flag, Score, score
from parametric.posture.workplace import Number

WRIST_NEUTRAL: Final = 5.0  # the method says only "neutral": own reading, degrees either way


def upper_arm_score(flexion: Number, *, raised: Flag = False, abducted: Flag = False, supported: Flag = False) -> Score:
    """Score 1 to 6 of the upper arm: 1 from 20 back to 20 forward, 2 to 45 or further back, 3 to 90, 4 beyond.

    Args:
        flexion: Forward from hanging, degrees; negative is back.
        raised: Shoulder pulled up, one more.
        abducted: Arm away from the side, one more.
        supported: Arm rests on something, one less but never under 1 (own reading).
    """
    angle = np.asarray(flexion, dtype=np.float64)
    base = np.where(angle < -20.0 - ANGLE_EPS, 2, _band(angle, 20.0, 45.0, 90.0))
    return score(np.maximum(base + _one(raised) + _one(abducted) - _one(supported), 1))


def lower_arm_score(flexion: Number, *, off_line: Flag = False) -> Score:
    """Score 1 to 3 of the lower arm: 1 from 60 to 100 degrees of elbow flexion, both included, else 2.

    Args:
        flexion: Bend of the elbow, degrees; 0 is a straight arm.
        off_line: Works across the midline of the body or out to the side, one more.
    """
    angle = np.asarray(flexion, dtype=np.float64)
    level = (angle >= 60.0 - ANGLE_EPS) & (angle <= 100.0 + ANGLE_EPS)
    return score(np.where(level, 1, 2) + _one(off_line))


def wrist_score(flexion: Number, *, deviated: Flag = False) -> Score:
    """Score 1 to 4 of the wrist: 1 neutral (within 5 degrees, own reading), 2 to 15 degrees, 3 beyond.

    Args:
        flexion: Flexion or extension, degrees; the sign does not matter.
        deviated: Bent to the side of the thumb or of the little finger, one more.
    """
    return score(_band(np.abs(flexion), WRIST_NEUTRAL, 15.0) + _one(deviated))


def wrist_twist_score(near_end: Flag) -> Score:
    """Score 1 of a forearm turned within the middle of its range, 2 at or near the end of it."""
    return score(1 + _one(near_end))


def neck_score(flexion: Number, *, twisted: Flag = False, bent: Flag = False) -> Score:
    """Score 1 to 6 of the neck: 1 from 0 to 10 degrees, 2 to 20, 3 beyond, 4 for any extension.

    Args:
        flexion: Head forward against the trunk, degrees; negative is extension.
        twisted: Turned to a side, one more.
        bent: Bent to a side, one more.
    """
    angle = np.asarray(flexion, dtype=np.float64)
    forward = np.where(np.isnan(angle) | (angle < -ANGLE_EPS), 4, _band(angle, 10.0, 20.0))
    return score(forward + _one(twisted) + _one(bent))


def trunk_score(
    flexion: Number, *, hip_angle: Number, supported: Flag = False, twisted: Flag = False, bent: Flag = False
) -> Score:
    """Score 1 to 6 of a sitter's trunk: 1 well supported and not closed at the hip, else 2 to 20 degrees, 3 to 60, 4.

    Leaning back without support counts like leaning forward as far: the method is silent (own reading).

    Args:
        flexion: Forward from upright, degrees; negative is back.
        hip_angle: Trunk to thigh, degrees; 90.0 is enough for score 1.
        supported: A back rest carries the trunk well.
        twisted: Turned to a side, one more.
        bent: Bent to a side, one more.
    """
    carried = np.asarray(supported) & (np.asarray(hip_angle) >= 90.0 - ANGLE_EPS) & ~np.isnan(flexion)
    base = np.where(carried, 1, 1 + _band(np.abs(flexion), 20.0, 60.0))
    return score(base + _one(twisted) + _one(bent))


def legs_score(supported: Flag) -> Score:
    """Score 1 if legs and feet are well supported and in balance, else 2."""
    return score(np.where(supported, 1, 2))


def _band(angle: NDArray[np.float64], *edges: float) -> NDArray[np.int64]:
    return 1 + np.searchsorted(np.asarray(edges) + ANGLE_EPS, angle, side="left")


def _one(flag: Flag) -> NDArray[np.int64]:
    return np.asarray(flag, dtype=np.int64)
