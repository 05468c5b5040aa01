"""What a seat, foot support, desk, screen and roof leave to a seated body."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from parametric.posture.workplace import Number

NONE: Final = float("nan")
HOME_ROW: Final = (120.0, 300.0)  # 100-150 free before a keyboard (DGUV), and half a keyboard; own estimate
KEYBOARD: Final = 20.0  # desk to the top of the home row (own estimate)
RECLINE: Final = (0.0, 30.0)  # own estimate


class Legs(StrEnum):
    """What the legs do: soles flat, only the heels down, or folded on the seat."""

    FLAT = "flat"
    HEELS = "heels"
    FOLDED = "folded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """Heights and places in the van frame, mm; the sitter faces forward (+x). Seats are level.

    Every number may be an array; arrays broadcast together. `NONE` (not a number) says that a thing is not there.
    It stands beside `Workplace`, which knows only what the closed-form upright posture needs.

    Attributes:
        seat: Height of the seat under load.
        seat_front: Front edge of the seat.
        seat_rear: What stops the back from going further back; `NONE`: nothing.
        legs: What the legs do; the same for all of a batch.
        feet: Height of what the feet or heels rest on: van floor, well floor, platform under load.
        feet_from: Rearmost place of the heel: platform front, rear wall of a well.
        feet_to: Foremost place of the toes: first obstacle, front wall of a well.
        rest: Back rest where it meets the buttocks; the back keeps against it. `NONE`: no back rest.
        recline: Least and largest angle of the back rest from the vertical, degrees.
        desk: Height of the desk surface; `NONE`: the hands are free.
        desk_edge: Edge of the desk nearest to the sitter.
        desk_under: Lowest underside of the desk over the legs; `NONE`: open below.
        keyboard: Desk surface to the top of the home row.
        home_row: Least and largest distance of the home row from the desk edge.
        screen_x: Least and largest x of the screen centre, or of its distance from the home row for a laptop.
        screen_z: Height of the screen centre; `NONE`: nothing to look at.
        riser: What lifts the screen over `screen_z`.
        laptop: The screen goes where the keyboard goes.
        roof: Height of the ceiling over the head; `NONE`: open.
        shoes: Sole and heel of the shoes.
        folded_rise: Folded legs: loaded seat to the top of the knee.
        folded_reach: Folded legs: rearmost point of the buttocks to the front of the shins.
    """

    seat: Number
    seat_front: Number
    seat_rear: Number = NONE
    legs: Legs = Legs.FLAT
    feet: Number = 0.0
    feet_from: Number = NONE
    feet_to: Number = NONE
    rest: Number = NONE
    recline: tuple[Number, Number] = RECLINE
    desk: Number = NONE
    desk_edge: Number = NONE
    desk_under: Number = NONE
    keyboard: Number = KEYBOARD
    home_row: tuple[Number, Number] = HOME_ROW
    screen_x: tuple[Number, Number] = (NONE, NONE)
    screen_z: Number = NONE
    riser: Number = 0.0
    laptop: bool = False
    roof: Number = NONE
    shoes: Number = 0.0
    folded_rise: Number = NONE
    folded_reach: Number = NONE
