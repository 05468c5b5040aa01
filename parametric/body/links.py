"""Lengths between the joints of a body, for placing it."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.body.body import Body


@dataclass(frozen=True, slots=True, kw_only=True)
class Links:
    """Link lengths of a person in the sagittal plane, mm.

    Joints are taken at the bony landmarks beside them: hip at the trochanterion, knee at the lateral femoral
    epicondyle, ankle at the lateral malleolus, shoulder at the acromion, elbow at its underside. Sitting erect keeps
    the trunk's standing length, so that heights above the seat are standing heights less (stature - sitting height).
    This is the project's own construction on the body's mean dimensions, without a source.

    Attributes:
        foot: Heel to toe tip.
        ankle_height: Sole to ankle.
        shank: Ankle to knee.
        thigh: Knee to hip.
        knee_cap: Knee to the top of the bent knee, and to its front.
        hip_above_seat: Loaded seat to hip, sitting.
        hip_from_back: Rearmost point of the buttock to hip, sitting.
        trunk: Hip to shoulder.
        shoulder_to_eye: Vertical, erect.
        shoulder_to_vertex: Vertical, erect.
        upper_arm: Shoulder to the underside of the elbow.
        forearm: Elbow to the centre of the fist.
        hand: Centre of the fist to the fingertip.
    """

    foot: float
    ankle_height: float
    shank: float
    thigh: float
    knee_cap: float
    hip_above_seat: float
    hip_from_back: float
    trunk: float
    shoulder_to_eye: float
    shoulder_to_vertex: float
    upper_arm: float
    forearm: float
    hand: float

    @classmethod
    def of(cls, body: Body) -> Links:
        """Links of a body from its mean dimensions."""
        mean = body.mean
        hip, knee = mean["trochanterion_height"], mean["lateral_femoral_epicondyle_height"]
        ankle = mean["lateral_malleolus_height"]
        below_seat = mean["stature"] - mean["sitting_height"]
        shoulder = mean["shoulder_height"] - below_seat
        knee_cap = mean["knee_height"] - knee
        return cls(
            foot=mean["foot_length"],
            ankle_height=ankle,
            shank=knee - ankle,
            thigh=hip - knee,
            knee_cap=knee_cap,
            hip_above_seat=hip - below_seat,
            hip_from_back=mean["buttock_knee_length"] - (hip - knee) - knee_cap,
            trunk=mean["shoulder_height"] - hip,
            shoulder_to_eye=mean["eye_height_sitting"] - shoulder,
            shoulder_to_vertex=mean["sitting_height"] - shoulder,
            upper_arm=mean["shoulder_elbow_length"],
            forearm=mean["elbow_grip_length"],
            hand=mean["elbow_fingertip_length"] - mean["elbow_grip_length"],
        )
