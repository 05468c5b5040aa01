"""Seat `feet_down`: feet on the van floor in front of the platform, desk in front. Rules on floats or arrays."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

Number = float | NDArray[np.float64]

SLACK: Final = 10.0  # seat a little under popliteal height, so that the feet carry weight (own estimate)
BEHIND_KNEE: Final = 60.0  # gap from the seat front to the back of the knee, within 50-75
BELLY_GAP: Final = 30.0  # belly to the desk edge, within 20-40 (own estimate)
FOOT_ROOM: Final = 600.0  # seat front to the first obstacle (OSHA eTool, foot depth)
PITCH: Final = 20.0  # step of cleat holes and leg pins
OFF_ELBOW: Final = 10.0  # a step may miss the elbow by half a pitch


def seat_height(popliteal: Number, shoe: Number) -> Number:
    """Loaded seat height above the floor for a body, mm."""
    return popliteal + shoe - SLACK


def platform_height(seat: Number, mattress: Number, sink: Number) -> Number:
    """Slat top that gives a loaded seat height over a mattress that sinks, mm."""
    return seat + sink - mattress


def loaded_seat(platform: Number, mattress: Number, sink: Number) -> Number:
    """Seat height under load that a platform gives, mm."""
    return platform + mattress - sink


def desk_height(seat: Number, elbow: Number, thigh: Number, thigh_gap: Number, panel: Number) -> Number:
    """Desk surface at elbow height, raised where the thigh needs it, mm."""
    return seat + np.maximum(elbow, thigh + thigh_gap + panel)


def steps_above(spread: Number) -> Number:
    """Steps needed over the middle one so that an elbow `spread` higher still finds its height."""
    return np.maximum(1.0, np.ceil((spread - OFF_ELBOW) / PITCH))


def steps_below(spread: Number, room: Number) -> Number:
    """Steps offered under the middle one: as many as the spread asks for and thigh and knee leave room for.

    Args:
        spread: How much lower the elbow may be, mm.
        room: Gap to spare over thigh and knee at the middle step, mm.
    """
    wanted = np.maximum(1.0, np.ceil((spread - OFF_ELBOW) / PITCH))
    return np.maximum(0.0, np.minimum(wanted, np.floor(room / PITCH + 1e-9)))


def back(seat_front: Number, buttock_popliteal: Number) -> Number:
    """Where the back is when the gap behind the knee is right, mm along the vehicle."""
    return seat_front + BEHIND_KNEE - buttock_popliteal


def near_edge(back: Number, abdominal_depth: Number) -> Number:
    """Desk edge nearest the person, mm along the vehicle."""
    return back + abdominal_depth + BELLY_GAP


def seat_depth(buttock_popliteal: Number) -> Number:
    """Depth of seat a body can use, mm."""
    return buttock_popliteal - BEHIND_KNEE
