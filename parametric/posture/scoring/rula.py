"""Rapid upper limb assessment (McAtamney and Corlett 1993, Applied Ergonomics 24(2):91-99).

Two versions of table A circulate. This is the one of current handouts in Spanish; an older English worksheet differs in
cells of the upper arm rows 1 to 4 and 6, and in its first arm band (15 degrees instead of 20). The table as printed in
1993 was not seen.

All three tables rise, or stay, along every part score, so a worse part never lowers the grand score. Angles do not have
that property: neck extension scores more than flexion, and a supported trunk less than an upright one.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Final

import numpy as np
from numpy.typing import NDArray

from parametric.core.check import Verdict
from parametric.posture.scoring.number import Flag, Score, score
from parametric.posture.scoring.rula_parts import (
    legs_score,
    lower_arm_score,
    neck_score,
    trunk_score,
    upper_arm_score,
    wrist_score,
    wrist_twist_score,
)
from parametric.posture.workplace import Number

SOURCE: Final = "RULA (McAtamney and Corlett 1993), table A of current handouts"
ACTIONS: Final = (
    "fine, unless it is held or repeated for long",
    "look closer; it may have to change",
    "look closer and change it soon",
    "change it now",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Angles:
    """A seated posture as RULA looks at it; any field may be an array, all arrays of one shape. Angles in degrees.

    Attributes:
        upper_arm: Upper arm forward from hanging; negative is back.
        shoulder_raised: Shoulder pulled up.
        arm_abducted: Upper arm away from the side.
        arm_supported: Arm rests on something.
        elbow: Bend of the elbow; 0 is a straight arm.
        forearm_off_line: Hand across the midline or out to the side.
        wrist: Flexion or extension of the wrist.
        wrist_deviated: Hand bent to the thumb or to the little finger.
        wrist_twist_near_end: Forearm turned near the end of its range.
        neck: Head forward against the trunk; negative is extension.
        neck_twisted: Neck turned to a side.
        neck_bent: Neck bent to a side.
        trunk: Trunk forward from upright; negative is back.
        hip: Trunk to thigh.
        trunk_supported: A back rest carries the trunk well.
        trunk_twisted: Trunk turned to a side.
        trunk_bent: Trunk bent to a side.
        legs_supported: Legs and feet well supported and in balance.
        arms_static: Arms held over a minute or moved over four times a minute.
        body_static: The same for neck, trunk and legs.
        arms_force: Force score 0 to 3 of the arms; 0 is under 2 kg now and then.
        body_force: Force score 0 to 3 of neck, trunk and legs.
    """

    upper_arm: Number
    shoulder_raised: Flag = False
    arm_abducted: Flag = False
    arm_supported: Flag = False
    elbow: Number
    forearm_off_line: Flag = False
    wrist: Number = 0.0
    wrist_deviated: Flag = False
    wrist_twist_near_end: Flag = False
    neck: Number
    neck_twisted: Flag = False
    neck_bent: Flag = False
    trunk: Number
    hip: Number
    trunk_supported: Flag
    trunk_twisted: Flag = False
    trunk_bent: Flag = False
    legs_supported: Flag
    arms_static: Flag = True
    body_static: Flag = True
    arms_force: Score = 0
    body_force: Score = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rula:
    """Every score on the way to the grand score.

    Attributes:
        upper_arm: 1 to 6.
        lower_arm: 1 to 3.
        wrist: 1 to 4.
        wrist_twist: 1 or 2.
        neck: 1 to 6.
        trunk: 1 to 6.
        legs: 1 or 2.
        a: Arm and wrist, table A.
        b: Neck, trunk and legs, table B.
        c: `a` with muscle use and force of the arms.
        d: `b` with muscle use and force of the body.
        grand: 1 to 7, table C.
        level: Action level 1 to 4.
    """

    upper_arm: Score
    lower_arm: Score
    wrist: Score
    wrist_twist: Score
    neck: Score
    trunk: Score
    legs: Score
    a: Score
    b: Score
    c: Score
    d: Score
    grand: Score
    level: Score


def rula_from_angles(posture: Angles) -> Rula:
    """Score a posture.

    Raises:
        ValueError: A force score is not 0 to 3.
    """
    p = posture
    return rula_from_scores(
        upper_arm=upper_arm_score(
            p.upper_arm, raised=p.shoulder_raised, abducted=p.arm_abducted, supported=p.arm_supported
        ),
        lower_arm=lower_arm_score(p.elbow, off_line=p.forearm_off_line),
        wrist=wrist_score(p.wrist, deviated=p.wrist_deviated),
        wrist_twist=wrist_twist_score(p.wrist_twist_near_end),
        neck=neck_score(p.neck, twisted=p.neck_twisted, bent=p.neck_bent),
        trunk=trunk_score(
            p.trunk, hip_angle=p.hip, supported=p.trunk_supported, twisted=p.trunk_twisted, bent=p.trunk_bent
        ),
        legs=legs_score(p.legs_supported),
        arms_muscle=score(p.arms_static),
        body_muscle=score(p.body_static),
        arms_force=p.arms_force,
        body_force=p.body_force,
    )


def rula_from_scores(
    *,
    upper_arm: Score,
    lower_arm: Score,
    wrist: Score,
    wrist_twist: Score,
    neck: Score,
    trunk: Score,
    legs: Score,
    arms_muscle: Score = 0,
    body_muscle: Score = 0,
    arms_force: Score = 0,
    body_force: Score = 0,
) -> Rula:
    """Combine part scores with muscle use (0 or 1) and force (0 to 3) of both groups.

    Raises:
        ValueError: A score is outside its range; the message names it.
    """
    _within("arms muscle use", arms_muscle, 0, 1)
    _within("body muscle use", body_muscle, 0, 1)
    _within("arms force", arms_force, 0, 3)
    _within("body force", body_force, 0, 3)
    a = score_a(upper_arm, lower_arm, wrist, wrist_twist)
    b = score_b(neck, trunk, legs)
    c, d = a + arms_muscle + arms_force, b + body_muscle + body_force
    grand = grand_score(c, d)
    return Rula(
        upper_arm=upper_arm,
        lower_arm=lower_arm,
        wrist=wrist,
        wrist_twist=wrist_twist,
        neck=neck,
        trunk=trunk,
        legs=legs,
        a=a,
        b=b,
        c=c,
        d=d,
        grand=grand,
        level=score((np.asarray(grand) + 1) // 2),
    )


def score_a(upper_arm: Score, lower_arm: Score, wrist: Score, wrist_twist: Score) -> Score:
    """Table A.

    Raises:
        ValueError: A part score is outside its range; the message names it.
    """
    _within("upper arm", upper_arm, 1, 6)
    _within("lower arm", lower_arm, 1, 3)
    _within("wrist", wrist, 1, 4)
    _within("wrist twist", wrist_twist, 1, 2)
    column = 2 * (wrist - 1) + wrist_twist - 1
    return score(_table("rula_a.csv", ("upper_arm", "lower_arm"))[3 * (upper_arm - 1) + lower_arm - 1, column])


def score_b(neck: Score, trunk: Score, legs: Score) -> Score:
    """Table B.

    Raises:
        ValueError: A part score is outside its range; the message names it.
    """
    _within("neck", neck, 1, 6)
    _within("trunk", trunk, 1, 6)
    _within("legs", legs, 1, 2)
    return score(_table("rula_b.csv", ("neck",))[neck - 1, 2 * (trunk - 1) + legs - 1])


def grand_score(c: Score, d: Score) -> Score:
    """Table C; scores over 8 (c) and 7 (d) share the last row and column.

    Raises:
        ValueError: A score is under 1.
    """
    _within("C", c, 1, 13)
    _within("D", d, 1, 13)
    return score(_table("rula_c.csv", ("score_c",))[np.minimum(c, 8) - 1, np.minimum(d, 7) - 1])


def action(grand: int) -> str:
    """What a grand score asks for, in a few words.

    Raises:
        ValueError: It is not 1 to 7.
    """
    _within("grand", grand, 1, 7)
    return ACTIONS[(grand - 1) // 2]


def rula_verdict(grand: int, hours: float) -> Verdict:
    """Verdict on a grand score for so many hours a day at the desk (own rule on the action levels of the method).

    ========  ====  =======  ====
    hours     pass  caution  fail
    ========  ====  =======  ====
    4 and up  1-2   3-4      5-7
    1 to 4    1-4   -        5-7
    under 1   1-4   5-6      7
    ========  ====  =======  ====
    """
    _within("grand", grand, 1, 7)
    good, most = (2 if hours >= 4.0 else 4), (6 if hours < 1.0 else 4)
    if grand > most:
        return Verdict.FAIL
    return Verdict.PASS if grand <= good else Verdict.CAUTION


def _within(name: str, value: Score, low: int, high: int) -> None:
    if np.size(value) and (np.min(value) < low or np.max(value) > high):
        raise ValueError(f"RULA score {name} is {low} to {high}, not {np.min(value)} to {np.max(value)}")


@cache
def _table(file: str, keys: tuple[str, ...]) -> NDArray[np.int64]:
    """The cells of a table, rows in the order of their keys; cannot be written to."""
    text = files("parametric.posture.scoring").joinpath(file).read_text(encoding="utf-8")
    rows = sorted(csv.DictReader(text.splitlines()), key=lambda row: [int(row[key]) for key in keys])
    cells = [[int(value) for name, value in row.items() if name not in (*keys, "source")] for row in rows]
    table = np.array(cells, dtype=np.int64)
    table.flags.writeable = False
    return table
