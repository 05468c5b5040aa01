"""What a body can give when there is too little height over a seat."""

from __future__ import annotations

import math


def knee_angle_when_lowered(thigh_length: float, drop: float) -> float | None:
    """Knee angle on a seat lower than the one that keeps the thigh level, the shank upright, degrees.

    Args:
        thigh_length: Hip to knee, mm.
        drop: How much lower, mm; negative if higher.

    Returns:
        None if the thigh is too short to bridge the drop.
    """
    if not thigh_length > 0.0 or not abs(drop) <= thigh_length:
        return None
    return 90.0 - math.degrees(math.asin(drop / thigh_length))


def recline_for(drop: float, above_hip: float) -> float | None:
    """How far an upright trunk leans back about the hip so that the crown comes down, degrees.

    Args:
        drop: How much the crown comes down, mm.
        above_hip: Hip to crown, sitting erect, mm.

    Returns:
        None if leaning cannot do it: the drop is negative, or more than lying flat gives.
    """
    if not above_hip > 0.0 or not 0.0 <= drop <= above_hip:
        return None
    return math.degrees(math.acos(1.0 - drop / above_hip))
