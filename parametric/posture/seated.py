"""A solved sitting posture."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.posture.workplace import Number

Point = tuple[Number, Number]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seated:
    """Joints and outermost points of a seated body in the sagittal plane, mm, and its joint angles, degrees.

    Points are (x, z) in the van frame; numbers are arrays where the workplace has arrays.

    Attributes:
        heel: Rearmost point of the foot, on the floor.
        toe: Foremost point of the foot, on the floor.
        ankle: Middle of the ankle.
        knee: Middle of the knee.
        hip: Middle of the hip joint.
        shoulder: Top of the shoulder (acromion).
        elbow: Underside of the elbow, below its middle.
        wrist: Underside of the wrist.
        grip: Under the centre of the fist.
        fingertip: Under the tip of the middle finger.
        eye: Outer corner of the eye.
        vertex: Crown of the head.
        knee_angle: Thigh to shank; 180 is a straight leg.
        hip_angle: Trunk to thigh.
        elbow_angle: Upper arm to forearm; 180 is a straight arm.
        shoulder_flexion: Upper arm forward from hanging.
        knee_front: Foremost x of the knee.
        knee_top: Highest z of the knee.
        calf_back: Rearmost x of the calf, at the back of the knee.
        thigh_top: Highest z of the thigh by the belly.
        belly: Foremost x of the belly.
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
    fingertip: Point
    eye: Point
    vertex: Point
    knee_angle: Number
    hip_angle: Number
    elbow_angle: Number
    shoulder_flexion: Number
    knee_front: Number
    knee_top: Number
    calf_back: Number
    thigh_top: Number
    belly: Number
