from __future__ import annotations

import pytest

from parametric.posture.scoring.rhythm import Kind, rhythm, rules


@pytest.mark.parametrize(
    ("grand", "spell", "pause", "stir"),
    [(1, 60, 5, 30), (2, 60, 5, 30), (3, 50, 10, 30), (4, 50, 10, 30), (5, 30, 5, None), (6, 30, 5, None)],
)
def test_a_worse_score_means_shorter_spells(grand: int, spell: float, pause: float, stir: float | None) -> None:
    found = rhythm("feet_down", grand=grand, hours=6.0, back_rest=True)
    assert (found.spell, found.pause, found.stir_every) == (spell, pause, stir)


def test_a_posture_to_change_now_is_none_to_work_in() -> None:
    found = rhythm("footwell", grand=7, hours=6.0, back_rest=True)
    assert (found.spell, found.breaks, found.stir_every) == (0, 0, None)
    assert "change it now" in found.source


@pytest.mark.parametrize(
    ("kind", "back_rest", "spell", "source"),
    [
        ("feet_down", False, 60, "HSE"),
        ("footwell", False, 60, "HSE"),
        ("crossed", True, 40, "common practice, no source"),
        ("crossed", False, 30, "own estimate"),
        ("stretched", True, 60, "HSE"),
        ("stretched", False, 30, "own estimate"),
    ],
)
def test_the_platform_has_rules_of_its_own(kind: Kind, back_rest: bool, spell: float, source: str) -> None:
    found = rhythm(kind, grand=2, hours=6.0, back_rest=back_rest)
    assert found.spell == spell
    assert source in found.source


def test_the_strictest_rule_decides() -> None:
    assert rhythm("crossed", grand=6, hours=6.0, back_rest=True).spell == 30
    assert rhythm("crossed", grand=7, hours=6.0, back_rest=False).spell == 0


@pytest.mark.parametrize(
    ("hours", "breaks", "day"),
    [(0.0, 0, 0), (0.5, 0, 30), (50 / 60, 0, 50), (1.0, 1, 70), (2.5, 2, 170), (250 / 60, 4, 290), (6.0, 7, 430)],
)
def test_breaks_of_a_day_in_spells_of_50_minutes(hours: float, breaks: int, day: float) -> None:
    found = rhythm("feet_down", grand=3, hours=hours, back_rest=True)
    assert found.breaks == breaks
    assert found.day == pytest.approx(day)


@pytest.mark.parametrize("grand", [0, 8])
def test_a_score_outside_the_method_is_refused(grand: int) -> None:
    with pytest.raises(ValueError, match="grand score is 1 to 7"):
        rhythm("feet_down", grand=grand, hours=6.0, back_rest=True)


def test_negative_hours_are_refused() -> None:
    with pytest.raises(ValueError, match="0 or more, not -1"):
        rhythm("feet_down", grand=1, hours=-1.0, back_rest=True)


def test_every_rule_names_its_source() -> None:
    assert all(rule.source for rule in rules().values())
