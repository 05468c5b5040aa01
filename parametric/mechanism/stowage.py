"""Where leg stages ride when they are not in use: clipped along the inside of the rails, in two lanes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from parametric.core.errors import RefusedError
from parametric.core.pose import at
from parametric.core.shape import Box, Shape
from parametric.mechanism.draft import Draft
from parametric.mechanism.materials import STEEL
from parametric.mechanism.model import ContactKind, Fastener, Release
from parametric.mechanism.part import Bought
from parametric.mechanism.platform import Frame
from parametric.sizing.dimensions import Dimensions

CLIP: Final = (20.0, 5.0, 26.0)
PLAY: Final = 4.0  # between pieces in a lane, and to posts and strips
SHORT: Final = 140.0
LANES: Final = (2.0, 36.0)  # underside of each lane over the rail's underside


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A tube to stow.

    Attributes:
        part: Its name.
        length: Length of the tube.
        side: Outside of the tube.
        before: What sticks out of its near end.
        after: What sticks out of its far end.
        modes: Modes it is stowed in.
    """

    part: str
    length: float
    side: float
    before: float
    after: float
    modes: tuple[str, ...]

    @property
    def over_all(self) -> float:
        """Length it takes in a lane."""
        return self.before + self.length + self.after


@dataclass(slots=True)
class _Lane:
    side: str
    z: float
    start: float
    end: float


def stow(draft: Draft, dims: Dimensions, frame: Frame, items: Sequence[Item]) -> None:
    """Give every item a lane, longest first, the aisle side first, and clip it there.

    Raises:
        RefusedError: The lanes are too short.
    """
    lanes = _lanes(dims, frame)
    for item in sorted(items, key=lambda i: (-i.over_all, i.part)):
        lane = next((lane for lane in lanes if lane.end - lane.start >= item.over_all), None)
        if lane is None:
            longest = max(lane.end - lane.start for lane in lanes)
            raise RefusedError(
                f"stowage: {item.part} is {item.over_all:.0f} long and the longest free place under the platform is "
                f"{longest:.0f}; make the platform longer or higher"
            )
        _clip(draft, frame, item, lane)
        lane.start += item.over_all + PLAY


def _lanes(dims: Dimensions, frame: Frame) -> list[_Lane]:
    post, strip = dims.sections.post[0], dims.sections.strip[0]
    bays = (
        (frame.rear_bay[0] + post + PLAY, frame.rear_bay[1] - post - PLAY),
        (frame.front_bay[0] + strip + PLAY, frame.front_bay[1] - post - PLAY),
    )
    return [
        _Lane(side, frame.bottom + up, start, end) for side in ("left", "right") for start, end in bays for up in LANES
    ]


def _clip(draft: Draft, frame: Frame, item: Item, lane: _Lane) -> None:
    x = lane.start + item.before
    y = frame.left - CLIP[1] - item.side if lane.side == "left" else frame.right + CLIP[1]
    draft.move(item.part, item.modes, at(x, y, lane.z))
    design = Bought(
        name="tube_clip",
        material="steel",
        stock="spring clip",
        density=STEEL,
        designation="spring clip for tube 25 to 30",
        mass=0.02,
        shape=Shape((Box((0.0, 0.0, 0.0), CLIP),)),
        envelope_volume=CLIP[0] * CLIP[1] * CLIP[2],
    )
    face = frame.left - CLIP[1] if lane.side == "left" else frame.right
    # on a long stage the second clip sits between the two pin holes
    ends = (40.0, item.length - 55.0) if item.length > SHORT else (20.0, item.length - 20.0)
    for k, along in enumerate(ends, start=1):
        spot = at(x + along - CLIP[0] / 2.0, face, lane.z + 2.0)
        clip = draft.add(f"{item.part}_clip_{k}", design, spot)
        screws = Fastener(designation="wood screw 3.5 x 16, countersunk, EN 14592", count=1)
        draft.touch(ContactKind.SCREWED, clip, f"{lane.side}_rail", fasteners=(screws,))
        draft.touch(ContactKind.LATCHED, item.part, clip, item.modes, release=Release.HAND)
