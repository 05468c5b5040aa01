"""Desk support `cleat_legs`: a wall cleat under one short edge, two two-stage legs under the other."""

from __future__ import annotations

from typing import Final

from parametric.core.errors import RefusedError
from parametric.sizing.dimensions import Stages

HEAD: Final = 10.0  # flange over the upper stage
FOOT: Final = 15.0  # levelling foot
PLUG: Final = 25.0  # the head's plug fills the top of the upper stage
SHOW: Final = 5.0  # least a lower stage shows below the upper one
HEAD_CLEAR: Final = 3.0  # a lower stage pushed home to the plug over it
LEAST_UPPER: Final = 180.0
CLEAR: Final = 15.0  # leg to the seat front when the belly is slim
LEAST_APART: Final = 150.0
INSET: Final = 25.0  # leg axis to the panel's aisle edge
STIFFENER_GAP: Final = 5.0


def least_overlap(section: float) -> float:
    """Least overlap of two telescoping stages (common practice, no source)."""
    return max(100.0, 3.0 * section)


def stages(night: float, desk_high: float, section: float) -> Stages:
    """Leg stages for the night height and the highest desk step.

    Args:
        night: Underside of the panel at night.
        desk_high: Underside of the panel at the highest desk step.
        section: Outside of the upper stage.

    Raises:
        RefusedError: The platform is too low for a leg to stand under the panel.
    """
    overlap, fittings = least_overlap(section), HEAD + FOOT
    upper = night - fittings - SHOW
    if upper < LEAST_UPPER:
        raise RefusedError(
            f"desk support cleat_legs: the panel is {night:.0f} above the floor at night, "
            f"a two-stage leg needs {LEAST_UPPER + SHOW + fittings:.0f}; raise the platform"
        )
    lower = desk_high - fittings - upper + overlap
    telescopes = lower <= upper - PLUG + SHOW - HEAD_CLEAR
    return Stages(
        kind="telescopic" if telescopes else "exchange",
        upper=upper,
        lower_desk=lower,
        lower_night=0.0 if telescopes else overlap + SHOW,
        overlap=overlap,
    )


def near_leg(greatest_overlap: float, section: float) -> float:
    """Distance of the nearer leg from the near edge: clear of the seat front for the slimmest body."""
    return greatest_overlap + section / 2.0 + CLEAR


def far_leg(depth: float, stiffener: float, section: float) -> float:
    """Distance of the farther leg from the near edge: beside the stiffener."""
    return depth - stiffener - STIFFENER_GAP - section / 2.0 - 10.0


def depth_for(greatest_overlap: float, stiffener: float, section: float) -> float:
    """Least panel depth that leaves room between the legs."""
    near = near_leg(greatest_overlap, section)
    return near + LEAST_APART + section / 2.0 + stiffener + STIFFENER_GAP + 10.0
