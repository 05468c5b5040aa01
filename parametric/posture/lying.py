"""A body on its back, along the vehicle."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from parametric.body import Body

HeadEnd = Literal["rear", "front"]

LENGTHENED: Final = 15.0  # the spine stretches when lying (Pheasant, Bodyspace, as reprinted by City Univ. Hong Kong)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """Where a lying body is, van frame, mm.

    Attributes:
        head: End of the vehicle the head points to.
        start: Rearmost x of the body.
        end: Foremost x of the body.
        y: Middle of the body.
        z: Surface under load: top of the mattress less its sink.
    """

    head: HeadEnd
    start: float
    end: float
    y: float
    z: float


def lying_length(body: Body) -> float:
    """Crown to sole on the back, toes up, mm; a pillow is ignored."""
    return body.mean["stature"] + LENGTHENED


def lie(body: Body, *, head: HeadEnd, bed: tuple[float, float], y: float, z: float) -> Lying:
    """Lay a body half way between the ends of a bed; it sticks out at both if the bed is too short.

    Args:
        body: Who.
        head: End of the vehicle the head points to.
        bed: Rear and front end of the bed, x, mm.
        y: Middle of the place, mm.
        z: Surface under load, mm.
    """
    middle, half = (bed[0] + bed[1]) / 2.0, lying_length(body) / 2.0
    return Lying(head=head, start=middle - half, end=middle + half, y=y, z=z)
