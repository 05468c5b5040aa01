"""Seat `feet_down`: upright, feet flat on the floor in front of the seat."""

from __future__ import annotations

import numpy as np

from parametric.body import Body, Links
from parametric.posture.arms import arms
from parametric.posture.flesh import EYE_BEHIND_BROW, LEAST, Flesh
from parametric.posture.seated import Seated
from parametric.posture.workplace import Workplace


def solve(body: Body, workplace: Workplace) -> Seated:
    """Sit a body upright: feet flat, shank and trunk upright, arms as in `arms`.

    The thigh is level when the seat is a popliteal height and a shoe above the floor: there the underside of the
    thigh lies on the seat. On a lower seat the knee is higher than the hip by the same drop: the sine of the slope is
    the drop over the thigh length, and knee and hip angle are 90 degrees less the slope; a higher seat opens both. A
    drop of more than a thigh length counts as one of a thigh length. Own construction on mean dimensions, closed form;
    floats or arrays as in the workplace.
    """
    mean, links, flesh = body.mean, Links.of(body), Flesh.of(body)
    seat, sole, back = workplace.seat, workplace.floor + workplace.shoes, workplace.back
    thigh = max(links.thigh, LEAST)
    level = sole + mean["popliteal_height"]
    slope = np.arcsin(np.clip((level - seat) / thigh, -1.0, 1.0))
    hip_x = back + mean["buttock_knee_length"] - links.knee_cap - thigh
    knee_x, knee_z = hip_x + thigh * np.cos(slope), sole + links.ankle_height + links.shank
    front, heel = knee_x + links.knee_cap, knee_x - flesh.heel_to_ankle
    head_x = back + max(mean["chest_depth"], mean["head_length"]) / 2.0
    arm = arms(body, workplace)
    return Seated(
        heel=(heel, workplace.floor),
        toe=(heel + links.foot, workplace.floor),
        ankle=(knee_x, sole + links.ankle_height),
        knee=(knee_x, knee_z),
        hip=(hip_x, knee_z - thigh * np.sin(slope)),
        shoulder=arm.shoulder,
        elbow=arm.elbow,
        wrist=arm.wrist,
        grip=arm.grip,
        fingertip=arm.fingertip,
        eye=(head_x + mean["head_length"] / 2.0 - EYE_BEHIND_BROW, seat + mean["eye_height_sitting"]),
        vertex=(head_x, seat + mean["sitting_height"]),
        knee_angle=90.0 - np.degrees(slope),
        hip_angle=90.0 - np.degrees(slope),
        elbow_angle=arm.elbow_angle,
        shoulder_flexion=arm.shoulder_flexion,
        knee_front=front,
        knee_top=sole + mean["knee_height"],
        calf_back=front - (mean["buttock_knee_length"] - mean["buttock_popliteal_length"]),
        thigh_top=seat + mean["thigh_clearance"],
        belly=back + mean["abdominal_depth_sitting"],
    )
