"""Extension `panel`: a loose board that ends the bed at night and is the desk top by day. Rules on numbers."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from parametric.core.errors import RefusedError

STRAP_OUT: Final = 28.0  # strap cases on the aisle side of the platform
REAR_GAP: Final = 5.0  # platform to rear door, and stiffener to bearer when the panel is stowed
JOINT: Final = 3.0  # panel to platform end
WALL_BEARING: Final = 20.0  # least bearing on a cleat
WALL_GAP: Final = 25.0  # panel to wall at night: over 25 keeps fingers whole (EN 527-2 rule for moving parts)
PLATFORM_GAP: Final = 5.0  # platform to wall
GROOVE: Final = 25.0  # depth of the groove in the desk cleat
GROOVE_PLAY: Final = 3.0  # panel edge to the bottom of the groove
LEAST_DEPTH: Final = 500.0
DEPTH: Final = 560.0
DEPTH_KEYBOARD: Final = 600.0
MOST_DEPTH: Final = 700.0  # a board deeper than this is past comfortable reach (own estimate)
LID_SPARE: Final = 20.0  # propped lid to ceiling
LEAST_LID: Final = 390.0  # a shorter lid's batten ends would turn into the end bearer
KNUCKLE: Final = 3.0  # hinge pin over slat top
KNUCKLES_CLEAR: Final = 35.0  # stowed panel to the middle bearer: leaf, knuckle and play


def desk_depth(separate_keyboard: bool) -> float:
    """Desk depth wanted: more with a keyboard in front of the screen."""
    return DEPTH_KEYBOARD if separate_keyboard else DEPTH


def rear(stiffener: float) -> float:
    """Rear face of the platform: the stowed panel's stiffener hangs between it and the door."""
    return stiffener + 2.0 * REAR_GAP


def platform_length(bed: float, depth: float, rear: float, ledger: float, length_day: float, foot_room: float) -> float:
    """Platform length: bed less desk depth, shorter where the feet need the floor, longer never.

    Args:
        bed: Sleeping length.
        depth: Desk depth wanted.
        rear: Rear face of the platform.
        ledger: How far the ledger stands out of the platform's end.
        length_day: Clear floor length by day.
        foot_room: Floor needed in front of the seat.
    """
    for_feet = length_day - foot_room - ledger - rear
    return max(min(bed - depth - JOINT, for_feet), bed - MOST_DEPTH - JOINT)


def deepest(bed: float, rear: float, bearer: float) -> float:
    """Greatest panel depth with which the platform still has room for two lids and the panel stowed on the rear one."""
    return math.floor((bed + rear - JOINT - 2.0 * bearer - LEAST_LID - REAR_GAP - KNUCKLES_CLEAR) / 2.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Middle:
    """What the middle bearer has to stand between.

    Attributes:
        rear: Rear face of the platform.
        front: Front face of the platform.
        bearer: Width of a bearer.
        longest_lid: Longest lid that can stand up under the ceiling.
        depth: Panel depth: the panel is stowed on the rear lid, short of the hinges.
        stowed: Longest leg stage, with what it needs beside it in the rear bay or the front bay.
    """

    rear: float
    front: float
    bearer: float
    longest_lid: float
    depth: float
    stowed: float

    @property
    def first(self) -> float:
        """Least x of its centre that leaves the rear lid and the panel stowed on it their room."""
        half = self.bearer / 2.0
        return max(self.rear + self.bearer + LEAST_LID, REAR_GAP + self.depth + KNUCKLES_CLEAR) + half

    @property
    def last(self) -> float:
        """Greatest x of its centre that leaves the front lid its room."""
        return self.front - self.bearer * 1.5 - LEAST_LID

    @property
    def low(self) -> float:
        """Least x of its centre at which the front lid can stand up too."""
        return max(self.first, self.front - self.bearer * 1.5 - self.longest_lid)

    @property
    def high(self) -> float:
        """Greatest x of its centre at which the rear lid can stand up too."""
        return min(self.last, self.rear + self.bearer * 1.5 + self.longest_lid)

    def longest_at(self, x: float) -> float:
        """Length of the longer lid with the bearer's centre at `x`, between the bearers."""
        half = self.bearer / 2.0
        return max(x - half - self.rear - self.bearer, self.front - self.bearer - x - half)

    def takes(self, x: float) -> bool:
        """Whether the centre may be at `x`: lids, panel and leg stages all find room."""
        return self.low <= x <= self.high and self.longest_at(x) >= self.stowed


def middle_bearer(room: Middle, seat_front: float, seat_depth: float, cushion: float) -> float:
    """Centre of the middle bearer: the rear lid, propped up, is a back rest at the right depth.

    One or two mattress pieces stand between lid and back, whichever lets the lid stand under the ceiling and the
    leg stages ride below; where neither does, the bearer stands as near to that as lids and stages allow.

    Args:
        room: What it stands between.
        seat_front: Front of the seat.
        seat_depth: Depth of seat the body can use.
        cushion: Thickness of one mattress piece.

    Raises:
        RefusedError: The platform is too short for two lids and the panel stowed on one of them.
    """
    if room.first > room.last + 1e-6:
        raise RefusedError(
            f"extension panel: a platform {room.front - room.rear:.0f} long has no room for two lids with a panel "
            f"{room.depth:.0f} deep stowed on the rear one; make the platform longer, or the bed shorter, "
            f"by {room.first - room.last:.0f} together"
        )
    half = room.bearer / 2.0
    wanted = [seat_front - seat_depth - pieces * cushion + half for pieces in (2, 1)]
    for x in wanted:
        if room.takes(x):
            return x
    for_stages = room.rear + room.bearer + half + room.stowed
    standing = max(room.low, min(room.high, max(wanted[0], for_stages)))
    return max(room.first, min(room.last, standing))
