from __future__ import annotations

from collections.abc import Callable

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.pipeline.check import Checked, check, of_mode


def one(mode: str | None) -> Check:
    """A check in a mode."""
    return Check(id="a.b", says="s", verdict=Verdict.PASS, source="x", mode=mode)


def test_numbers_come_first_then_supports_openings_and_fit(checked: Checked) -> None:
    families = list(dict.fromkeys(c.id.split(".")[0] for c in checked.checks))
    assert families[:3] == ["comfort", "sleep", "access"]
    assert families[-3:] == ["support", "fit", "ride"]
    assert checked.checks[: len(checked.sized.checks)] == checked.sized.checks


def test_a_scene_for_every_mode(checked: Checked) -> None:
    assert [s.mode.id for s in checked.scenes] == list(checked.assembly.mechanism.modes)


def test_the_demo_holds(checked: Checked) -> None:
    assert [c for c in checked.checks if c.verdict is Verdict.FAIL] == []


def test_every_check_names_its_source_and_no_unknown_part_or_mode(checked: Checked) -> None:
    known = set(checked.assembly.mechanism.parts)
    modes = set(checked.assembly.mechanism.modes)
    for c in checked.checks:
        assert c.source
        assert c.says
        assert c.mode is None or c.mode in modes
        assert set(c.parts) <= known


def test_progress_is_told(demo: Callable[..., Brief]) -> None:
    told: list[str] = []
    check(demo(), told.append)
    assert told[:2] == ["sizes", "parts"]
    assert told[-1] == "fit"
    assert "mode desk/low" in told


def test_one_mode_with_its_variants_and_what_concerns_all() -> None:
    checks = tuple(one(m) for m in (None, "desk", "desk/low", "night", "access/front", "desktop"))
    assert [c.mode for c in of_mode(checks, "desk")] == [None, "desk", "desk/low"]
    assert [c.mode for c in of_mode(checks, "desk/low")] == [None, "desk/low"]
    assert [c.mode for c in of_mode(checks, "access")] == [None, "access/front"]
