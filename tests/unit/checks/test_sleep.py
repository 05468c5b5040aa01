from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.pipeline.size import size

Make = Callable[..., Brief]


def told(worked: Make, id: str, **tables: Any) -> Check:
    """What a check says of the worked layout, changed as asked."""
    (check,) = (c for c in size(worked(**tables)).checks if c.id == id)
    return check


@pytest.mark.parametrize(
    ("length", "verdict"), [(2110, Verdict.PASS), (2109, Verdict.CAUTION), (2030, Verdict.CAUTION)]
)
def test_a_bed_should_be_150_longer_than_the_sleeper_and_70_at_least(
    worked: Make, length: int, verdict: Verdict
) -> None:
    check = told(worked, "sleep.length", bed={"length": length})
    assert (check.value, check.verdict) == (length - 1960.0, verdict)


def test_a_narrow_bed_too_short_fails(worked: Make) -> None:
    check = told(worked, "sleep.length", bed={"length": 1980, "width": 620})
    assert check.verdict is Verdict.FAIL


def test_a_wide_one_lets_a_single_sleeper_lie_across(worked: Make) -> None:
    check = told(worked, "sleep.length", bed={"length": 2000})
    assert check.value is not None
    assert check.value > 40.0
    assert "degrees across it" in check.says


def test_the_taller_of_two_decides_and_cannot_lie_across(worked: Make) -> None:
    two = [{"sex": "male", "stature": 1960}, {"sex": "female", "stature": 1650}]
    check = told(worked, "sleep.length", sleeper=two, bed={"length": 2000})
    assert (check.value, check.verdict) == (40.0, Verdict.FAIL)


@pytest.mark.parametrize(
    ("width", "verdict"), [(700, Verdict.PASS), (699, Verdict.CAUTION), (610, Verdict.CAUTION), (609, Verdict.FAIL)]
)
def test_width_for_one(worked: Make, width: int, verdict: Verdict) -> None:
    assert told(worked, "sleep.width", bed={"width": width}).verdict is verdict


def test_width_for_two_is_at_least_their_shoulders(worked: Make) -> None:
    two = [{"sex": "male", "stature": 1900}, {"sex": "female", "stature": 1650}]
    bodies = size(worked(sleeper=two)).people.bodies
    shoulders = sum(b.mean["bideltoid_breadth"] for b in bodies)
    assert 850.0 < shoulders < 1100.0
    narrow = told(worked, "sleep.width", sleeper=two, bed={"width": 850})
    assert narrow.verdict is Verdict.FAIL
    assert narrow.min == pytest.approx(shoulders)
    assert told(worked, "sleep.width", sleeper=two, bed={"width": 1150}).verdict is Verdict.CAUTION
    assert told(worked, "sleep.width", sleeper=two, bed={"width": 1220}).verdict is Verdict.PASS


@pytest.mark.parametrize(("ceiling", "value", "verdict"), [(1320, 798.0, Verdict.PASS), (1100, 578.0, Verdict.CAUTION)])
def test_head_room_over_the_mattress(worked: Make, ceiling: int, value: float, verdict: Verdict) -> None:
    check = told(worked, "sleep.head_room", van={"ceiling": ceiling})
    assert (check.value, check.verdict) == (value, verdict)  # slat top 422, mattress 100


def test_slat_gaps_are_those_of_the_wider_spaced_lid(worked: Make) -> None:
    check = told(worked, "sleep.slat_gap")
    assert check.value is not None
    assert 20.0 < check.value <= 45.0
    assert check.verdict is Verdict.PASS


def test_the_joint_between_slats_and_panel_is_too_small_for_a_finger(worked: Make) -> None:
    assert told(worked, "sleep.joint").value == pytest.approx(3.0)


@pytest.mark.parametrize(("mat", "verdict"), [(0, Verdict.CAUTION), (8, Verdict.PASS)])
def test_a_closed_panel_wants_an_air_mat(worked: Make, mat: int, verdict: Verdict) -> None:
    assert told(worked, "sleep.ventilation", bed={"mattress": {"air_mat": mat}}).verdict is verdict
