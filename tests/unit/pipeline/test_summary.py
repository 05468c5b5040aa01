from __future__ import annotations

from collections.abc import Callable

from parametric.brief.model import Brief
from parametric.core.check import Verdict
from parametric.pipeline.check import Checked, check
from parametric.pipeline.summary import WIDTH, summary
from parametric.pipeline.words import CAUTIONS


def flat(text: str) -> str:
    """Text without its line breaks."""
    return " ".join(text.split())


def test_it_fits_a_page_80_wide(checked: Checked) -> None:
    assert max(len(line) for line in summary(checked).splitlines()) <= WIDTH


def test_it_says_the_heights_the_verdict_and_every_caution(checked: Checked) -> None:
    text = flat(summary(checked))
    count = sum(c.verdict is Verdict.CAUTION for c in checked.checks)
    assert text.startswith("compact_van: ")
    assert f"0 fail, {count} caution" in text
    assert "DO NOT BUILD" not in text
    assert "desk height 746" in text
    for caution in CAUTIONS:
        assert caution in text
    assert "comfort.back_support [desk]" in text


def test_a_design_that_fails_says_do_not_build_and_why(demo: Callable[..., Brief]) -> None:
    text = flat(summary(check(demo(sitting={"desk_height": 660}))))
    assert "DO NOT BUILD" in text
    assert "FAIL" in text
    assert "fit.body [desk" in text
    assert "CLASH thigh room" in text


def test_it_ends_with_a_line_break(checked: Checked) -> None:
    assert summary(checked).endswith(".\n")
