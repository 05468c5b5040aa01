"""Where the loose panel is in each mode."""

from __future__ import annotations

from parametric.core.pose import Pose, at, turn
from parametric.mechanism.modes import DESKS, NIGHTS
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import JOINT, REAR_GAP


def panel_place(dims: Dimensions, mode: str) -> Pose:
    """Where the panel's frame is in a mode: x away from its near edge, y from its wall edge, z up from below."""
    le, w, t = dims.lengths, dims.widths, dims.heights.panel
    if mode in NIGHTS:
        return at(le.front + JOINT, w.panel_night, dims.heights.platform - t)
    if mode in DESKS:
        x = le.parked if mode == "desk/parked" else le.near
        return at(x, w.panel_desk, dims.desk_at(mode) - t)
    # turned round, so that the stiffener hangs between the rear bearer and the door
    half = turn((0.0, 0.0, 1.0), 180.0)
    corner = (REAR_GAP + le.panel_depth, w.panel_stowed + w.panel_length, dims.heights.platform)
    return Pose(corner, half.rotation)
