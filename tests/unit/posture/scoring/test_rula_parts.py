from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from parametric.posture.scoring import rula_parts as parts
from parametric.posture.scoring.number import Score


@pytest.mark.parametrize(
    ("flexion", "score"),
    [
        (-60, 2),
        (-20.1, 2),
        (-20, 1),
        (0, 1),
        (20 + 1e-9, 1),
        (20.1, 2),
        (45, 2),
        (45.1, 3),
        (90, 3),
        (90.1, 4),
        (math.nan, 4),
    ],
)
def test_upper_arm(flexion: float, score: int) -> None:
    assert parts.upper_arm_score(flexion) == score


def test_upper_arm_extras() -> None:
    assert parts.upper_arm_score(100.0, raised=True, abducted=True) == 6
    assert parts.upper_arm_score(30.0, abducted=True) == 3
    assert parts.upper_arm_score(30.0, supported=True) == 1
    assert parts.upper_arm_score(0.0, supported=True) == 1


@pytest.mark.parametrize(
    ("flexion", "score"), [(0, 2), (59.9, 2), (60, 1), (90, 1), (100, 1), (100.1, 2), (math.nan, 2)]
)
def test_lower_arm(flexion: float, score: int) -> None:
    assert parts.lower_arm_score(flexion) == score
    assert parts.lower_arm_score(flexion, off_line=True) == score + 1


@pytest.mark.parametrize(
    ("flexion", "score"), [(0, 1), (5, 1), (-5, 1), (5.1, 2), (15, 2), (-15, 2), (15.1, 3), (-40, 3), (math.nan, 3)]
)
def test_wrist(flexion: float, score: int) -> None:
    assert parts.wrist_score(flexion) == score
    assert parts.wrist_score(flexion, deviated=True) == score + 1


def test_wrist_twist() -> None:
    assert parts.wrist_twist_score(False) == 1
    assert parts.wrist_twist_score(True) == 2


@pytest.mark.parametrize(
    ("flexion", "score"), [(-0.1, 4), (0, 1), (-1e-9, 1), (10, 1), (10.1, 2), (20, 2), (20.1, 3), (math.nan, 4)]
)
def test_neck(flexion: float, score: int) -> None:
    assert parts.neck_score(flexion) == score
    assert parts.neck_score(flexion, bent=True) == score + 1
    assert parts.neck_score(flexion, twisted=True, bent=True) == score + 2


@pytest.mark.parametrize(
    ("flexion", "score"), [(0, 2), (20, 2), (-20, 2), (20.1, 3), (-20.1, 3), (60, 3), (60.1, 4), (math.nan, 4)]
)
def test_unsupported_trunk(flexion: float, score: int) -> None:
    assert parts.trunk_score(flexion, hip_angle=100.0) == score
    assert parts.trunk_score(flexion, hip_angle=100.0, bent=True, twisted=True) == score + 2


@pytest.mark.parametrize(("hip", "score"), [(89.9, 2), (90, 1), (110, 1), (math.nan, 2)])
def test_supported_trunk_needs_an_open_hip(hip: float, score: int) -> None:
    assert parts.trunk_score(0.0, hip_angle=hip, supported=True) == score
    assert parts.trunk_score(0.0, hip_angle=hip, supported=True, twisted=True) == score + 1


def test_supported_trunk_nobody_solved_scores_worst() -> None:
    assert parts.trunk_score(math.nan, hip_angle=100.0, supported=True) == 4


def test_legs() -> None:
    assert parts.legs_score(True) == 1
    assert parts.legs_score(False) == 2


@pytest.mark.parametrize(
    "score",
    [
        lambda angle, flag: parts.upper_arm_score(angle, supported=flag),
        lambda angle, flag: parts.lower_arm_score(angle, off_line=flag),
        lambda angle, flag: parts.wrist_score(angle, deviated=flag),
        lambda angle, flag: parts.neck_score(angle, bent=flag),
        lambda angle, flag: parts.trunk_score(angle, hip_angle=100.0 + angle, supported=flag),
    ],
    ids=["upper arm", "lower arm", "wrist", "neck", "trunk"],
)
def test_arrays_score_as_each_of_their_numbers(score: Callable[..., Score]) -> None:
    angles = np.linspace(-95.0, 130.0, 451).reshape(11, 41)
    flags = (np.arange(angles.size) % 3 == 0).reshape(angles.shape)
    together = score(angles, flags)
    assert isinstance(together, np.ndarray)
    assert together.shape == angles.shape
    each = zip(angles.ravel().tolist(), flags.ravel().tolist(), strict=True)
    assert together.ravel().tolist() == [score(angle, flag) for angle, flag in each]
