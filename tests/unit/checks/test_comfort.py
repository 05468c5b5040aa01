from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.checks.comfort import comfort_checks, head_gap, questions
from parametric.core.check import Check, Verdict
from parametric.pipeline.size import Sized, size

Make = Callable[..., Brief]


def told(worked: Make, id: str, mode: str | None = None, **tables: Any) -> Check:
    """What a check says of the worked layout, changed as asked."""
    (check,) = (c for c in size(worked(**tables)).checks if c.id == id and mode in (None, c.mode))
    return check


@pytest.mark.parametrize(
    ("seat", "value", "verdict"),
    [(462, -40.0, Verdict.PASS), (461, -41.0, Verdict.FAIL), (517, 15.0, Verdict.PASS), (518, 16.0, Verdict.FAIL)],
)
def test_the_loaded_seat_against_popliteal_height_and_shoe(
    worked: Make, seat: int, value: float, verdict: Verdict
) -> None:
    # popliteal 492 and slippers 10
    check = told(worked, "comfort.seat_height", sitting={"seat_height": seat})
    assert (check.value, check.verdict) == (value, verdict)


def test_the_gap_behind_the_knee_is_60(worked: Make) -> None:
    assert told(worked, "comfort.behind_knee").value == pytest.approx(60.0)


@pytest.mark.parametrize(
    ("desk", "value", "verdict"),
    [(767, 15.0, Verdict.PASS), (768, 16.0, Verdict.FAIL), (737, -15.0, Verdict.PASS), (736, -16.0, Verdict.FAIL)],
)
def test_the_desk_against_the_elbow(worked: Make, desk: int, value: float, verdict: Verdict) -> None:
    check = told(worked, "comfort.desk_height", "desk", sitting={"desk_height": desk})
    assert (check.value, check.verdict) == (value, verdict)


def test_outer_steps_are_judged_for_outer_elbows_and_only_warn(worked: Make) -> None:
    unsure = {"measured": {"elbow_height_sitting": None, "thigh_clearance": 205}}
    low = told(worked, "comfort.desk_height", "desk/low", sleeper=unsure)
    assert low.verdict is Verdict.CAUTION  # the thigh leaves no room for the steps a low elbow wants
    assert low.proposal == "measure elbow_height_sitting for the brief"
    assert told(worked, "comfort.desk_height", "desk/high", sleeper=unsure).verdict is Verdict.PASS


def test_a_measured_elbow_is_served_by_one_step_whichever(worked: Make) -> None:
    for mode in ("desk/low", "desk/high"):
        assert told(worked, "comfort.desk_height", mode).value == pytest.approx(0.0)


def test_room_over_thigh_and_knee_at_every_step(worked: Make) -> None:
    gaps = [told(worked, "comfort.thigh_gap", m).value for m in ("desk/low", "desk", "desk/high")]
    assert gaps == [pytest.approx(v) for v in (47.4, 67.4, 87.4)]
    knees = [told(worked, "comfort.knee_gap", m).value for m in ("desk/low", "desk", "desk/high")]
    assert knees == [pytest.approx(v) for v in (76.4, 96.4, 116.4)]


def test_a_stiffener_over_the_knee_counts(worked: Make) -> None:
    # the knee's front at 1798; a panel of 460 has its stiffener at 1363 + 440, one of 440 at 1783
    shallow = told(worked, "comfort.knee_gap", "desk", sleeper={"measured": {"buttock_knee_length": 900}})
    assert shallow.parts == ("stiffener",)
    assert shallow.value == pytest.approx(96.4 - 60.0)


@pytest.mark.parametrize(("keyboard", "good"), [(False, 560.0), (True, 600.0)])
def test_desk_depth(worked: Make, keyboard: bool, good: float) -> None:
    check = told(worked, "comfort.desk_depth", sitting={"keyboard": keyboard}, bed={"platform_length": 1547})
    assert (check.value, check.min) == (560.0, good)
    assert check.verdict is (Verdict.CAUTION if keyboard else Verdict.PASS)


@pytest.mark.parametrize(("width", "verdict"), [(1150, Verdict.PASS), (750, Verdict.CAUTION), (560, Verdict.FAIL)])
def test_desk_width(worked: Make, width: int, verdict: Verdict) -> None:
    check = told(worked, "comfort.desk_width", bed={"width": width})
    assert check.value == pytest.approx(width - 20.0)
    assert check.verdict is verdict


def test_foot_and_heel_room(worked: Make) -> None:
    assert told(worked, "comfort.foot_room").value == 2450.0 - 1612.0
    # slat top 422, bearer 95 deep
    assert told(worked, "comfort.heel_room").value == 327.0
    assert told(worked, "comfort.knee_depth").value == 540.0


def test_nobody_leans_back_at_the_desk(worked: Make) -> None:
    check = told(worked, "comfort.back_support")
    assert check.verdict is Verdict.CAUTION
    assert "every 30 to 50 minutes" in (check.proposal or "")


def roof(front: float, rear: float, x: tuple[float, float] = (300, 2300)) -> dict[str, Any]:
    """A lifting roof."""
    return {"roof": {"x": list(x), "y": [-600, 500], "front": front, "rear": rear}}


def test_head_room_is_judged_with_the_roof_up_and_shut(worked: Make) -> None:
    up = told(worked, "comfort.head_room", "desk", van=roof(1700, 1700))
    assert up.value == pytest.approx(1700.0 - 1493.0)
    assert up.verdict is Verdict.PASS
    shut = told(worked, "comfort.head_room_roof_shut", van=roof(1700, 1700))
    assert shut.value == pytest.approx(1320.0 - 1493.0)
    assert shut.verdict is Verdict.CAUTION


def gap(brief: Brief) -> float:
    """Room over the head with the roof up."""
    sized = size(brief)
    return head_gap(brief, sized.people, sized.dimensions, roof_up=True)


def test_a_sloping_roof_is_judged_over_the_lower_end_of_the_head(worked: Make) -> None:
    sized = size(worked())
    body = sized.people.at_desk.mean
    front = sized.dimensions.lengths.back + body["chest_depth"] / 2.0 + body["head_length"] / 2.0
    # falls by 0.2 a mm from 1900 at x 300
    assert gap(worked(van=roof(1500, 1900))) == pytest.approx(1900.0 - 0.2 * (front - 300.0) - 1493.0)


def test_a_roof_that_covers_half_the_head_does_not_count(worked: Make) -> None:
    sized = size(worked())
    middle = sized.dimensions.lengths.back + sized.people.at_desk.mean["chest_depth"] / 2.0
    assert gap(worked(van=roof(1700, 1700, (300, middle + 20)))) == pytest.approx(1320.0 - 1493.0)
    assert gap(worked(van=roof(1700, 1700, (300, middle + 200)))) == pytest.approx(1700.0 - 1493.0)


def test_every_check_has_a_source_and_says_something(worked: Make) -> None:
    sized = size(worked())
    for check in comfort_checks(sized.brief, sized.people, sized.dimensions):
        assert check.source
        assert check.says
        assert check.id.startswith("comfort.")


def test_a_measured_dimension_leaves_nothing_to_chance(worked: Make, demo: Make) -> None:
    assert told(worked, "comfort.seat_height").chance == 0.0
    likely = next(c for c in size(demo()).checks if c.id == "comfort.seat_height").chance
    assert likely is not None
    assert 0.0 < likely < 0.2


def test_questions_have_the_room_the_checks_have(worked: Make) -> None:
    sized: Sized = size(worked(van=roof(1700, 1700)))
    room = {q.about: q.room for q in questions(sized.brief, sized.people, sized.dimensions)}
    assert room["seat height"] == pytest.approx(25.0)  # 10 under, 15 over
    assert room["desk height"] == pytest.approx(15.0)
    assert room["room over the thigh"] == pytest.approx(47.4)
    assert room["room over the knee"] == pytest.approx(96.4)
    assert room["head room"] == pytest.approx(157.0)
