"""How thick a body is about its joints."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from parametric.body import Body

LEAST: Final = 10.0  # measurements that contradict one another must not turn a limb inside out

EYE_BEHIND_BROW: Final = 20.0  # outer corner of the eye (own estimate, no source)
HEEL_TO_ANKLE: Final = 0.25  # of the foot length (own estimate, no source)

# shares of a measured length, for what the survey moments do not hold (own estimates, no source)
_WRIST, _HAND_THICKNESS, _HAND_BREADTH = 0.16, 0.15, 0.45  # of the hand length
_NECK = 0.4  # radius, of the head breadth
_CHIN = 1.75  # crown to chin, of crown to ear


@dataclass(frozen=True, slots=True, kw_only=True)
class Flesh:
    """Radii and small lengths of the limbs, mm, from the mean dimensions of a body.

    Limbs are taken as round. Where no dimension of the body says how thick one is, a neighbouring one stands for it:
    the acromion lies one arm's radius within the deltoid, the calf is as deep as the knee (buttock-knee less
    buttock-popliteal length; real ones bulge behind it), the ankle as thick as it is high. Own construction, no source.

    Attributes:
        arm: Radius of the upper arm and the elbow.
        wrist: Radius of the wrist.
        hand_thickness: Back of the hand to palm.
        hand_breadth: Across the knuckles.
        forearm: Middle of the elbow to the wrist.
        upper_arm: Middle of the shoulder joint to the middle of the elbow.
        thigh: Radius of the thigh by the belly.
        knee: Radius of the bent knee, underside of the thigh to its top.
        calf: Radius of the calf.
        ankle: Radius of the ankle.
        heel_to_ankle: Heel to the middle of the ankle, along the foot.
        neck: Radius of the neck.
        chin: Crown to chin.
    """

    arm: float
    wrist: float
    hand_thickness: float
    hand_breadth: float
    forearm: float
    upper_arm: float
    thigh: float
    knee: float
    calf: float
    ankle: float
    heel_to_ankle: float
    neck: float
    chin: float

    @classmethod
    def of(cls, body: Body) -> Flesh:
        """Flesh of a body from its mean dimensions; nothing is thinner than 10 mm."""
        mean = body.mean
        hand = mean["hand_length"]
        arm = _least((mean["bideltoid_breadth"] - mean["biacromial_breadth"]) / 2.0)
        return cls(
            arm=arm,
            wrist=_least(_WRIST * hand),
            hand_thickness=_least(_HAND_THICKNESS * hand),
            hand_breadth=_least(_HAND_BREADTH * hand),
            forearm=_least(mean["elbow_fingertip_length"] - hand - arm),
            upper_arm=_least(mean["shoulder_elbow_length"] - 2.0 * arm),
            thigh=_least(mean["thigh_clearance"] / 2.0),
            knee=_least((mean["knee_height"] - mean["popliteal_height"]) / 2.0),
            calf=_least((mean["buttock_knee_length"] - mean["buttock_popliteal_length"]) / 2.0),
            ankle=_least(mean["lateral_malleolus_height"] / 2.0),
            heel_to_ankle=HEEL_TO_ANKLE * mean["foot_length"],
            neck=_least(_NECK * mean["head_breadth"]),
            chin=_least(_CHIN * mean["tragion_top_of_head"]),
        )


def _least(value: float) -> float:
    return max(value, LEAST)
