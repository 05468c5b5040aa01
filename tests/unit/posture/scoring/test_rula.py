from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from parametric.core.check import Verdict
from parametric.posture.scoring import rula
from parametric.posture.scoring.rula import Angles, action, rula_from_angles, rula_from_scores, rula_verdict

GOOD = Angles(upper_arm=10.0, elbow=90.0, neck=5.0, trunk=-5.0, hip=100.0, trunk_supported=True, legs_supported=True)
SIZES = {"upper_arm": 6, "lower_arm": 3, "wrist": 4, "wrist_twist": 2, "neck": 6, "trunk": 6, "legs": 2}


def every_part() -> dict[str, np.ndarray[tuple[int, ...], np.dtype[np.int64]]]:
    """All 10 368 combinations of part scores, one axis a part."""
    return dict(zip(SIZES, np.indices(tuple(SIZES.values())).astype(np.int64) + 1, strict=True))


def test_a_good_seat_at_a_computer() -> None:
    """Every part at its best; sitting still adds one to both groups: C 2, D 2, grand 2."""
    found = rula_from_angles(GOOD)
    assert dataclasses.asdict(found) == {
        **dict.fromkeys(SIZES, 1),
        "a": 1,
        "b": 1,
        "c": 2,
        "d": 2,
        "grand": 2,
        "level": 1,
    }


def test_no_back_rest_and_dangling_feet() -> None:
    """Trunk 2, legs 2: B 3, D 4; with C 2 that is 4."""
    found = rula_from_angles(dataclasses.replace(GOOD, trunk_supported=False, legs_supported=False))
    assert (found.b, found.d, found.grand, found.level) == (3, 4, 4, 2)


def test_every_input_reaches_its_score() -> None:
    worse = Angles(
        upper_arm=50.0,
        shoulder_raised=True,
        arm_abducted=True,
        arm_supported=True,
        elbow=40.0,
        forearm_off_line=True,
        wrist=20.0,
        wrist_deviated=True,
        wrist_twist_near_end=True,
        neck=15.0,
        neck_twisted=True,
        neck_bent=True,
        trunk=30.0,
        hip=60.0,
        trunk_supported=False,
        trunk_twisted=True,
        trunk_bent=True,
        legs_supported=False,
        arms_static=False,
        arms_force=2,
        body_force=1,
    )
    found = rula_from_angles(worse)
    assert [getattr(found, part) for part in SIZES] == [4, 3, 4, 2, 4, 5, 2]
    assert (found.a, found.b) == (6, 7)
    assert (found.c, found.d, found.grand, found.level) == (8, 9, 7, 4)


def test_many_postures_score_as_each_alone() -> None:
    neck, trunk, still = (
        np.array([-5.0, 5.0, 15.0, 25.0]),
        np.array([0.0, 10.0, 30.0, 70.0]),
        np.array([True, False] * 2),
    )
    together = rula_from_angles(dataclasses.replace(GOOD, neck=neck, trunk=trunk, hip=100.0 - trunk, body_static=still))
    alone = [
        rula_from_angles(
            dataclasses.replace(GOOD, neck=float(n), trunk=float(t), hip=100.0 - float(t), body_static=bool(s))
        )
        for n, t, s in zip(neck, trunk, still, strict=True)
    ]
    for name in ("neck", "trunk", "b", "d", "grand", "level"):
        assert getattr(together, name).tolist() == [getattr(one, name) for one in alone]
    assert together.a == alone[0].a == 1


def test_a_posture_nobody_solved_scores_worse_than_any_solved_one() -> None:
    nowhere = np.array([5.0, np.nan])
    found = rula_from_angles(dataclasses.replace(GOOD, upper_arm=nowhere, neck=nowhere, trunk=nowhere, hip=nowhere))
    assert isinstance(found.grand, np.ndarray)
    assert found.grand[1] == 7


@pytest.mark.parametrize("axis", range(len(SIZES)), ids=list(SIZES))
@pytest.mark.parametrize("muscle", [0, 1])
def test_a_worse_part_never_lowers_the_grand_score(axis: int, muscle: int) -> None:
    found = rula_from_scores(**every_part(), arms_muscle=muscle, body_muscle=muscle)
    assert np.diff(np.asarray(found.grand), axis=axis).min() >= 0
    assert np.diff(np.asarray(found.grand), axis=axis).max() > 0


def test_muscle_use_and_force_never_lower_the_grand_score() -> None:
    parts = every_part()
    rest = np.asarray(rula_from_scores(**parts).grand)
    for extra in (
        rula_from_scores(**parts, arms_muscle=1),
        rula_from_scores(**parts, body_muscle=1),
        rula_from_scores(**parts, arms_force=3),
        rula_from_scores(**parts, body_force=3),
    ):
        assert np.all(np.asarray(extra.grand) >= rest)
        assert np.any(np.asarray(extra.grand) > rest)


def test_scores_over_the_last_row_and_column_share_it() -> None:
    assert rula.grand_score(8, 7) == rula.grand_score(13, 13) == 7
    assert rula.grand_score(13, 1) == rula.grand_score(8, 1) == 5
    assert rula.grand_score(1, 13) == rula.grand_score(1, 7) == 5


@pytest.mark.parametrize("part", SIZES)
@pytest.mark.parametrize("beyond", [False, True])
def test_a_score_outside_the_method_is_refused(part: str, beyond: bool) -> None:
    scores = dict.fromkeys(SIZES, 1) | {part: SIZES[part] + 1 if beyond else 0}
    with pytest.raises(ValueError, match=f"RULA score {part.replace('_', ' ')} is 1 to {SIZES[part]}"):
        rula_from_scores(**scores)


@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("arms_muscle", 2, "arms muscle use is 0 to 1"),
        ("body_muscle", -1, "body muscle use is 0 to 1"),
        ("arms_force", 4, "arms force is 0 to 3"),
        ("body_force", 4, "body force is 0 to 3"),
    ],
)
def test_an_extra_outside_the_method_is_refused(name: str, value: int, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        rula_from_scores(**(dict.fromkeys(SIZES, 1) | {name: value}))


def test_one_bad_score_in_an_array_is_refused() -> None:
    with pytest.raises(ValueError, match="lower arm is 1 to 3, not 1 to 4"):
        rula.score_a(np.array([1, 1]), np.array([1, 4]), np.array([1, 1]), np.array([1, 1]))
    with pytest.raises(ValueError, match="C is 1 to 13"):
        rula.grand_score(0, 1)


def test_no_candidates_give_no_scores() -> None:
    none = np.array([], dtype=np.int64)
    assert np.size(rula.score_b(none, none, none)) == 0


def test_each_level_has_words_of_its_own() -> None:
    words = [action(grand) for grand in range(1, 8)]
    assert words[0] == words[1]
    assert words[2] == words[3]
    assert words[4] == words[5]
    assert len(set(words)) == 4
    assert "now" in words[6]
    with pytest.raises(ValueError, match="grand is 1 to 7"):
        action(8)


@pytest.mark.parametrize(
    ("hours", "verdicts"),
    [
        (8.0, "pass pass caution caution fail fail fail"),
        (4.0, "pass pass caution caution fail fail fail"),
        (3.99, "pass pass pass pass fail fail fail"),
        (1.0, "pass pass pass pass fail fail fail"),
        (0.99, "pass pass pass pass caution caution fail"),
        (0.0, "pass pass pass pass caution caution fail"),
    ],
)
def test_more_hours_are_judged_harder(hours: float, verdicts: str) -> None:
    assert [rula_verdict(grand, hours) for grand in range(1, 8)] == [Verdict(word) for word in verdicts.split()]
