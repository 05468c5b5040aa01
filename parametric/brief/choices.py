"""How the person sits, which arrangement is wanted, what tools there are, which limits are moved."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from parametric.brief.fields import Flag, Table
from parametric.brief.quantities import HOURS, Quantity, mm

DeviceSize = Annotated[float, mm(50, 1000)]


class Sitting(Table):
    """Seat, working hours and devices."""

    seat: Literal["feet_down", "footwell", "crossed", "stretched", "auto"] = Field(
        default="feet_down", description="kind of seat"
    )
    hours: Annotated[float, Quantity(HOURS, 0, 16)] = Field(default=6.0, description="at the desk on a working day, h")
    screen: Literal["laptop", "laptop_on_riser", "separate"] = Field(default="laptop", description="what is looked at")
    keyboard: Flag = Field(default=False, description="a keyboard of its own")
    laptop: tuple[DeviceSize, DeviceSize] | None = Field(default=None, description="[width, depth], mm")
    desk_height: Annotated[float, mm(200, 1300)] | None = Field(default=None, description="wish: desk surface, mm")
    seat_height: Annotated[float, mm(100, 1000)] | None = Field(
        default=None, description="wish: seat surface under load, mm"
    )


class Arrangement(Table):
    """What makes up the missing length, and what carries the desk."""

    extension: Literal["panel", "interleaved", "flap", "auto"] = Field(default="panel", description="kind of extension")
    support: Literal["cleat_legs", "side_cleats", "post", "trestle", "auto"] = Field(
        default="cleat_legs", description="what carries the desk"
    )


class Shop(Table):
    """How the parts are made."""

    cut: Literal["hand", "router"] = Field(default="hand", description="hand tools or a CNC router")
    kerf: Annotated[float, mm(0, 6)] = Field(default=3.0, description="width of the saw cut, mm")
    cutter: Annotated[float, mm(1, 25)] = Field(default=8.0, description="diameter of the router cutter, mm")
    tolerance: Literal["f", "m", "c", "v"] = Field(default="m", description="class of ISO 2768-1")


class Rules(Table):
    """Limits the user wants tighter or looser."""

    head_clearance: Annotated[float, mm(0, 300)] = Field(default=50.0, description="over the seated head, mm")
    thigh_gap: Annotated[float, mm(0, 150)] = Field(default=20.0, description="thigh to desk underside, mm")
    entry_slot: Annotated[float, mm(150, 1000)] = Field(default=330.0, description="least way in to the seat, mm")
    moving_clearance: Annotated[float, mm(0.5, 20)] = Field(default=2.0, description="between moving parts, mm")
