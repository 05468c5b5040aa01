"""The solved posture as checks."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from parametric.brief.change import changed
from parametric.brief.loader import load
from parametric.brief.model import Brief
from parametric.checks.posture import Work, posture_checks, work_place
from parametric.core.check import Check, Verdict
from parametric.pipeline.size import size

CONFIGS = Path(__file__).parents[3] / "configs"


def _work(brief: Brief) -> Work:
    sized = size(brief)
    return work_place(brief, sized.people, sized.dimensions)


def _checks(brief: Brief) -> dict[str, Check]:
    return {c.id: c for c in posture_checks(brief, _work(brief))}


def _demo(**changes: object) -> Brief:
    brief = changed(load(CONFIGS / "compact_van.toml"), {k.replace("__", "."): v for k, v in changes.items()})
    assert brief is not None
    return brief


def test_the_demo_sits_upright_with_level_thighs() -> None:
    checks = _checks(_demo())
    assert checks["posture.knee"].value == pytest.approx(92.0, abs=5.0)
    assert checks["posture.hip"].value == pytest.approx(90.0, abs=5.0)
    assert checks["posture.elbow"].value == pytest.approx(88.0, abs=8.0)
    assert checks["posture.trunk"].value == pytest.approx(0.0, abs=5.0)
    assert all(c.verdict is Verdict.PASS for i, c in checks.items() if i not in ("posture.gaze", "posture.rula"))


def test_a_laptop_alone_is_looked_down_at_and_a_riser_mends_it() -> None:
    alone = _checks(_demo())["posture.gaze"]
    assert alone.verdict is Verdict.CAUTION
    assert alone.proposal is not None
    lifted = _work(_demo(sitting__screen="laptop_on_riser", sitting__keyboard=True))
    assert lifted.riser > 50.0
    assert float(lifted.solved.angles.gaze) == pytest.approx(17.5, abs=4.0)


def test_hours_move_the_verdict_of_rula() -> None:
    verdicts = [_checks(_demo(sitting__hours=h))["posture.rula"].verdict for h in (6.0, 2.0)]
    assert verdicts == [Verdict.CAUTION, Verdict.PASS]


def test_a_low_seat_closes_the_hip() -> None:
    """A platform 130 mm under the one the body asks for: the thighs slope up to the knees."""
    hips = [_checks(_demo(bed__platform_height=h))["posture.hip"].value for h in (428.0, 360.0, 300.0)]
    good, lower, lowest = (h for h in hips if h is not None)
    assert good > lower + 2.0
    assert lower > lowest + 2.0


def test_no_posture_is_one_fail_with_a_reason() -> None:
    work = _work(_demo())
    none = replace(work, solved=replace(work.solved, exists=False, reason=10, shortfall=37.0))
    (only,) = posture_checks(_demo(), none)
    assert only.verdict is Verdict.FAIL
    assert "by 37" in only.says
