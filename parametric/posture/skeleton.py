"""Joint-to-joint lengths of one body or of many, for the posture solver."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from parametric.body import Body
from parametric.posture.flesh import EYE_BEHIND_BROW, HEEL_TO_ANKLE, LEAST
from parametric.posture.workplace import Number

_TYPING_REACH: Final = 0.8  # wrist to the tips of bent fingers, of the hand length (own estimate)


@dataclass(frozen=True, slots=True, kw_only=True)
class Skeleton:
    """Lengths in the sagittal plane, mm; floats, or arrays of one shape for many bodies.

    Leg lengths are those of `Links`. The hip is as high above the seat as the knee above the hollow behind it, so that
    the thigh is level on a seat of popliteal height; the shoulder is a shoulder-elbow length above the sitting elbow
    height, so that a desk meets the elbow that was measured; eye and crown likewise keep their sitting heights. The
    elbow is taken at its underside. Own construction; nothing is shorter than 10 mm.

    Attributes:
        foot: Heel to toe tip.
        heel_to_ankle: Heel to ankle along the foot.
        ankle_height: Sole to ankle.
        shank: Ankle to knee.
        thigh: Knee to hip.
        knee_cap: Knee to the top of the bent knee, and to its front.
        knee_hollow: Knee to the hollow behind it, along x.
        hip_above_seat: Loaded seat to hip.
        hip_from_back: Rearmost point of the buttock to hip.
        thigh_clearance: Loaded seat to the top of the thigh.
        belly: Rearmost point of the buttock to the front of the belly.
        trunk: Hip to shoulder.
        eye_up: Shoulder to eye along the head's upright axis.
        eye_forward: Shoulder to eye across it.
        vertex_up: Shoulder to crown.
        head_radius: Half the head length.
        upper_arm: Shoulder to the underside of the elbow.
        forearm: Elbow to wrist.
        palm: Wrist to the centre of the fist.
        hand: Wrist to fingertip.
        typing: Wrist to the tips of the fingers on the keys.
    """

    foot: Number
    heel_to_ankle: Number
    ankle_height: Number
    shank: Number
    thigh: Number
    knee_cap: Number
    knee_hollow: Number
    hip_above_seat: Number
    hip_from_back: Number
    thigh_clearance: Number
    belly: Number
    trunk: Number
    eye_up: Number
    eye_forward: Number
    vertex_up: Number
    head_radius: Number
    upper_arm: Number
    forearm: Number
    palm: Number
    hand: Number
    typing: Number

    @classmethod
    def of(cls, body: Body) -> Skeleton:
        """Skeleton of a body from its mean dimensions."""
        return cls.from_dimensions(body.mean)

    @classmethod
    def from_dimensions(cls, of: Mapping[str, Number]) -> Skeleton:
        """Skeleton from body dimensions by name, mm; arrays of one shape give many at once."""
        epicondyle, ankle = of["lateral_femoral_epicondyle_height"], of["lateral_malleolus_height"]
        thigh = _least(of["trochanterion_height"] - epicondyle)
        knee_cap = _least(of["knee_height"] - epicondyle)
        hip = _least(epicondyle - of["popliteal_height"])
        shoulder = of["elbow_height_sitting"] + of["shoulder_elbow_length"]
        hand = of["hand_length"]
        elbow_radius = (of["bideltoid_breadth"] - of["biacromial_breadth"]) / 2.0
        return cls(
            foot=of["foot_length"],
            heel_to_ankle=HEEL_TO_ANKLE * of["foot_length"],
            ankle_height=ankle,
            shank=_least(epicondyle - ankle),
            thigh=thigh,
            knee_cap=knee_cap,
            knee_hollow=of["buttock_knee_length"] - of["buttock_popliteal_length"] - knee_cap,
            hip_above_seat=hip,
            hip_from_back=_least(of["buttock_knee_length"] - thigh - knee_cap),
            thigh_clearance=of["thigh_clearance"],
            belly=of["abdominal_depth_sitting"],
            trunk=_least(shoulder - hip),
            eye_up=_least(of["eye_height_sitting"] - shoulder),
            eye_forward=of["head_length"] / 2.0 - EYE_BEHIND_BROW,
            vertex_up=_least(of["sitting_height"] - shoulder),
            head_radius=of["head_length"] / 2.0,
            upper_arm=of["shoulder_elbow_length"],
            forearm=_least(of["elbow_fingertip_length"] - hand - elbow_radius),
            palm=_least(of["elbow_grip_length"] - of["elbow_fingertip_length"] + hand),
            hand=hand,
            typing=_TYPING_REACH * hand,
        )


def _least(value: Number) -> Number:
    return np.maximum(value, LEAST)
