"""A solved posture, or why there is none."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum, auto

import numpy as np
from numpy.typing import NDArray

from parametric.posture.workplace import Number

Point = tuple[Number, Number]


class Reason(IntEnum):
    """Why no posture exists: what is missed most when everything is missed as little as can be."""

    FITS = 0
    SEAT_TOO_SHORT = auto()
    THIGHS_HIT_DESK = auto()
    KNEES_HIT_DESK = auto()
    FEET_DANGLE = auto()
    LEGS_TOO_LONG = auto()
    HEELS_HIT_BACK = auto()
    TOES_HIT_FRONT = auto()
    CALVES_HIT_SEAT = auto()
    BELLY_HITS_DESK = auto()
    HEAD_HITS_ROOF = auto()
    DESK_TOO_LOW = auto()
    DESK_TOO_HIGH = auto()
    DESK_TOO_NEAR = auto()
    DESK_TOO_FAR = auto()
    FOREARM_HITS_EDGE = auto()
    SCREEN_OUT_OF_SIGHT = auto()
    SCREEN_TOO_NEAR = auto()
    SCREEN_TOO_FAR = auto()
    ANKLE = auto()
    KNEE = auto()
    HIP = auto()
    TRUNK = auto()
    NECK = auto()
    SHOULDER = auto()
    ELBOW = auto()
    WRIST = auto()
    NOT_SETTLED = auto()

    @property
    def unit(self) -> str:
        """Unit of the shortfall."""
        return "degrees" if self is Reason.SCREEN_OUT_OF_SIGHT or Reason.ANKLE <= self <= Reason.WRIST else "mm"

    @property
    def says(self) -> str:
        """In words: ``the head hits the roof``."""
        return _WORDS.get(self, f"the {self.name.lower()} would have to go past its limit")


_WORDS: Mapping[Reason, str] = {
    Reason.FITS: "a posture exists",
    Reason.SEAT_TOO_SHORT: "the seat is too short to sit on",
    Reason.THIGHS_HIT_DESK: "the thighs do not fit under the desk",
    Reason.KNEES_HIT_DESK: "the knees do not fit under the desk",
    Reason.FEET_DANGLE: "the feet do not reach down",
    Reason.LEGS_TOO_LONG: "the legs are too long for the height under the seat",
    Reason.HEELS_HIT_BACK: "the heels hit what is behind them",
    Reason.TOES_HIT_FRONT: "the toes hit what is in front of them",
    Reason.CALVES_HIT_SEAT: "the calves hit the front of the seat",
    Reason.BELLY_HITS_DESK: "the belly hits the desk",
    Reason.HEAD_HITS_ROOF: "the head hits the roof",
    Reason.DESK_TOO_LOW: "the hands do not reach down to the keyboard",
    Reason.DESK_TOO_HIGH: "the hands do not reach up to the keyboard",
    Reason.DESK_TOO_NEAR: "the keyboard is too near",
    Reason.DESK_TOO_FAR: "the keyboard is out of reach",
    Reason.FOREARM_HITS_EDGE: "the desk is so high that the forearm runs into its edge",
    Reason.SCREEN_OUT_OF_SIGHT: "the eyes cannot turn to the screen",
    Reason.SCREEN_TOO_NEAR: "the screen is too near to the eyes",
    Reason.SCREEN_TOO_FAR: "the screen is too far from the eyes",
    Reason.NOT_SETTLED: "the search did not settle",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Angles:
    """Angles of a posture, degrees.

    Attributes:
        ankle: Toes up against the shank; 0 with the foot square to it, pointing the toes is negative.
        knee: Inner angle, thigh to shank; 180 is a straight leg. Not a number for folded legs.
        hip: Inner angle, trunk to thigh.
        trunk: From the vertical, forward positive.
        neck: Head against trunk, forward positive; 0 as when standing erect and looking ahead.
        head: From the vertical, forward positive.
        gaze: Line of sight below the horizontal. Not a number without a screen.
        eye: Line of sight below the head's own horizontal: gaze less head.
        shoulder: Upper arm against trunk, forward positive (flexion, as RULA takes it).
        upper_arm: Upper arm from hanging, forward positive (elevation, as ISO 11226 takes it).
        abduction: Upper arm to the side; always 0, the posture is in one plane.
        elbow: Inner angle; 180 is a straight arm.
        lower_arm: Elbow flexion, 180 less `elbow`, as RULA takes it.
        wrist: Hand against forearm, extension (back of the hand up) positive.
    """

    ankle: Number
    knee: Number
    hip: Number
    trunk: Number
    neck: Number
    head: Number
    gaze: Number
    eye: Number
    shoulder: Number
    upper_arm: Number
    abduction: Number
    elbow: Number
    lower_arm: Number
    wrist: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Joints:
    """Points (x, z) of a posture in the van frame, mm; not numbers where a point is not in the plane or not there.

    Attributes:
        heel: Rearmost point of the sole, inside the shoe.
        toe: Foremost point of the sole.
        ankle: Middle of the ankle.
        knee: Middle of the knee.
        hip: Middle of the hip joint.
        shoulder: Top of the shoulder.
        elbow: Underside of the elbow.
        wrist: Underside of the wrist.
        grip: Under the centre of the fist.
        keys: Tips of the typing fingers.
        eye: Outer corner of the eye.
        vertex: Crown of the head.
        screen: Centre of the screen.
    """

    heel: Point
    toe: Point
    ankle: Point
    knee: Point
    hip: Point
    shoulder: Point
    elbow: Point
    wrist: Point
    grip: Point
    keys: Point
    eye: Point
    vertex: Point
    screen: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearances:
    """Room left, mm; negative is missing, infinite where nothing is in the way.

    Attributes:
        thigh: Top of the thigh to the underside of the desk.
        knee: Top of the knee to the underside of the desk.
        crown: Highest point of the head to the roof.
        behind_knee: Front of the seat to the hollow of the knee.
        belly: Belly to the desk edge.
        heel: Heel to what is behind it.
        toe: Toes to what is in front of them.
    """

    thigh: Number
    knee: Number
    crown: Number
    behind_knee: Number
    belly: Number
    heel: Number
    toe: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """The best posture of each candidate; single numbers where nothing given was an array.

    Attributes:
        exists: Whether a posture keeps every limit; otherwise the rest describes the one that misses them least.
        settled: Whether the search settled within its steps.
        reason: `Reason` as a whole number; 0 where a posture exists.
        shortfall: By how much the limit of `reason` is missed, in its unit.
        objective: Sum of `costs`.
        costs: Cost by row of ``joint_limits.csv``; its weight at the end of a comfortable range, four times that at
            twice the way from neutral.
        angles: Joint angles.
        joints: Joint centres.
        clearances: Room left.
        view: Eye to screen centre, mm; not a number without a screen.
        state: (unknowns, ...) segment angles in degrees and places in mm, in the order of `Unknown`; a start for a
            similar candidate.
    """

    exists: bool | NDArray[np.bool_]
    settled: bool | NDArray[np.bool_]
    reason: int | NDArray[np.int64]
    shortfall: Number
    objective: Number
    costs: Mapping[str, Number]
    angles: Angles
    joints: Joints
    clearances: Clearances
    view: Number
    state: NDArray[np.float64]
