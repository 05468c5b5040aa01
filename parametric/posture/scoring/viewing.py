"""Where the eye meets the screen: distance, gaze, top edge, and the riser that puts them right.

Points are (x, z), mm. The sitter looks towards +x. Numbers may be arrays of equal shape.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from parametric.posture.seated import Point
from parametric.posture.workplace import Number

DISTANCE_BEST: Final = 600.0
DISTANCE_USUAL: Final = (400.0, 750.0)
DISTANCE_LEAST: Final = 300.0
DISTANCE_SOURCE: Final = "ISO 9241-306 (text of the GOST): 600 best, 400-750 usual, never under 300"
GAZE_GOOD: Final = (15.0, 20.0)
GAZE_MOST: Final = 35.0
GAZE_SOURCE: Final = "screen centre 15-20 degrees below the eye (union and HSE-style advice), up to 35 (DGUV 215-410)"
TOP_SOURCE: Final = "top of the screen at or below eye height (two guides agree)"
CHARACTER_ARCMIN: Final = (20.0, 22.0)

LAPTOP_BASE: Final = 18.0  # own estimate: thickness of the half with the keys
LAPTOP_BELOW: Final = 25.0  # own estimate: hinge to picture
LAPTOP_ABOVE: Final = 10.0  # own estimate: picture to the edge of the lid
LAPTOP_TILT: Final = 20.0  # own estimate: lid back from upright, degrees
STAND: Final = 60.0  # own estimate: foot to picture of a screen of its own at its lowest
SCREEN_TILT: Final = 10.0  # own estimate: screen of its own back from upright, degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen:
    """A picture that stands on something.

    Attributes:
        centre: Height of the middle of the picture over what the device stands on, mm.
        rise: How far the top of the picture is above its middle, mm.
    """

    centre: float
    rise: float


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """What the eye has of a screen.

    Attributes:
        distance: Eye to the middle of the picture, along the line of sight, mm.
        gaze: Line of sight below level, degrees; negative is upwards.
        top: Top of the picture above the eye, mm; negative is below, as it should be.
    """

    distance: Number
    gaze: Number
    top: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Riser:
    """A riser and the view it gives.

    Attributes:
        height: Of the riser, mm; 0 where the screen is high enough without.
        centre: Middle of the picture (x, z), mm.
        view: What the eye then has.
    """

    height: Number
    centre: Point
    view: View


def laptop_screen(depth: float) -> Screen:
    """The screen of an open laptop that is so deep when shut (mm); margins and tilt are own estimates.

    Raises:
        ValueError: The laptop is no deeper than its margins.
    """
    picture = depth - LAPTOP_BELOW - LAPTOP_ABOVE
    if picture <= 0.0:
        raise ValueError(f"a laptop {depth:g} mm deep has no room for a picture; it takes over 35 mm")
    upright = math.cos(math.radians(LAPTOP_TILT))
    return Screen(centre=LAPTOP_BASE + (LAPTOP_BELOW + picture / 2.0) * upright, rise=picture / 2.0 * upright)


def separate_screen(picture: float) -> Screen:
    """A screen of its own on its stand at its lowest, by the height of its picture (mm); stand and tilt own estimates.

    Raises:
        ValueError: The picture has no height.
    """
    if picture <= 0.0:
        raise ValueError(f"a picture {picture:g} mm high is none; it takes over 0 mm")
    rise = picture / 2.0 * math.cos(math.radians(SCREEN_TILT))
    return Screen(centre=STAND + rise, rise=rise)


def view(eye: Point, centre: Point, screen: Screen) -> View:
    """What an eye has of a screen whose picture has its middle at `centre` (both (x, z), mm)."""
    ahead, below = centre[0] - eye[0], eye[1] - centre[1]
    return View(
        distance=np.hypot(ahead, below),
        gaze=np.degrees(np.arctan2(below, ahead)),
        top=screen.rise - below,
    )


def riser_for(
    eye: Point, desk: Number, screen: Screen, *, distance: float = DISTANCE_BEST, gaze: float = 17.5
) -> Riser:
    """The riser that brings the middle of the picture to a gaze, but never its top above the eye.

    It is 0 where the screen stands too high already. A gaze of 15 and one of 20 give the ends of the good range.

    Args:
        eye: (x, z), mm.
        desk: Height of the desk surface, mm.
        screen: From `laptop_screen` or `separate_screen`.
        distance: Wished from the eye to the middle of the picture, mm.
        gaze: Wished below level, degrees.

    Raises:
        ValueError: The distance is not positive or the gaze not between 0 and 90.
    """
    _sensible(distance, gaze)
    below = max(distance * math.sin(math.radians(gaze)), screen.rise)
    height = np.maximum(eye[1] - below - desk - screen.centre, 0.0)
    return _seen(eye, desk, screen, distance, height)


def no_riser(eye: Point, desk: Number, screen: Screen, *, distance: float = DISTANCE_BEST) -> Riser:
    """The screen straight on the desk, as a laptop whose own keys are used must be; arguments as for `riser_for`.

    Raises:
        ValueError: The distance is not positive.
    """
    _sensible(distance, 0.0)
    return _seen(eye, desk, screen, distance, np.multiply(0.0, desk))


def character_height(distance: Number, arcmin: float = 21.0) -> Number:
    """Height of capitals (mm) that subtends an angle at a distance (mm): 20 to 22 arc minutes, 3.5 to 3.8 mm at 600."""
    return 2.0 * distance * math.tan(math.radians(arcmin / 60.0) / 2.0)


def _seen(eye: Point, desk: Number, screen: Screen, distance: float, height: Number) -> Riser:
    """A screen lower than the distance goes is seen from straight above, from further away."""
    middle = desk + height + screen.centre
    ahead = np.sqrt(np.maximum(distance**2 - (eye[1] - middle) ** 2, 0.0))
    centre = (eye[0] + ahead, middle)
    return Riser(height=height, centre=centre, view=view(eye, centre, screen))


def _sensible(distance: float, gaze: float) -> None:
    if not distance > 0.0:
        raise ValueError(f"a viewing distance is over 0 mm, not {distance:g}")
    if not 0.0 <= gaze < 90.0:
        raise ValueError(f"a gaze below level is 0 to under 90 degrees, not {gaze:g}")
