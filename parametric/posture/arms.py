"""Arms of an upright sitter: forearms on the desk, as near to hanging upper arms as its height allows."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from parametric.body import Body
from parametric.posture.flesh import Flesh
from parametric.posture.seated import Point
from parametric.posture.workplace import Number, Workplace

_STEEPEST: Final = math.sin(math.radians(45.0))  # elbow 70-135 degrees: ANSI/HFES 100 via NUREG-0700 r3


@dataclass(frozen=True, slots=True, kw_only=True)
class Arms:
    """Joints (x, z), mm, and angles, degrees; as in `Seated`."""

    shoulder: Point
    elbow: Point
    wrist: Point
    grip: Point
    fingertip: Point
    elbow_angle: Number
    shoulder_flexion: Number


def arms(body: Body, workplace: Workplace) -> Arms:
    """Place the arms of a body that sits upright.

    The shoulder stands over the middle of the chest, a shoulder-elbow length above the sitting elbow height. A desk
    above elbow height lifts the elbow: the upper arm swings forward about a point one arm's radius under the acromion
    and the forearm lies level on the desk; a desk above the shoulder is out of reach, and the forearm stops level with
    the shoulder joint. A desk below elbow height is met by the hands: the forearm slopes down until the wrist lies on
    it or the elbow is open to 135 degrees. Own construction, closed form.
    """
    mean, flesh = body.mean, Flesh.of(body)
    hanging = workplace.seat + mean["elbow_height_sitting"]
    desk = hanging if workplace.desk is None else workplace.desk
    swing = np.arccos(np.clip(1.0 - np.maximum(desk - hanging, 0.0) / flesh.upper_arm, 0.0, 1.0))
    slope = np.arcsin(np.clip((hanging - desk) / flesh.forearm, 0.0, _STEEPEST))
    x = workplace.back + mean["chest_depth"] / 2.0
    raised = np.minimum(np.maximum(desk, hanging), hanging + flesh.upper_arm)
    elbow = (x + flesh.upper_arm * np.sin(swing), raised)
    wrist = elbow[0] + flesh.forearm * np.cos(slope)
    # taken from the desk, not from the slope, so that a reachable desk is met to the last bit
    hand = np.minimum(raised, np.maximum(desk, hanging - flesh.forearm * _STEEPEST))
    palm = mean["elbow_grip_length"] - mean["elbow_fingertip_length"] + mean["hand_length"]
    return Arms(
        shoulder=(x, hanging + mean["shoulder_elbow_length"]),
        elbow=elbow,
        wrist=(wrist, hand),
        grip=(wrist + palm, hand),
        fingertip=(wrist + mean["hand_length"], hand),
        elbow_angle=90.0 + np.degrees(swing + slope),
        shoulder_flexion=np.degrees(swing),
    )
