"""What is printed fits 80 columns, says everything, and takes no text for a command."""

from __future__ import annotations

import io
import json
import math

import pytest

from parametric.cli import output
from parametric.core.check import Check, Verdict

LONG = "a sentence that goes on and on about a bearer, [a bracket] and a half-lap joint until it is over the edge of it"


def check(verdict: Verdict, **more: object) -> Check:
    """A check with a source."""
    return Check(**{"id": "comfort.knees", "says": LONG, "source": "a book", "verdict": verdict, **more})  # type: ignore[arg-type]


def test_sentences_are_wrapped_and_set_in(capsys: pytest.CaptureFixture[str]) -> None:
    output.print_cautions([LONG])
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == ""
    assert lines[1].startswith("! a sentence")
    assert lines[2].startswith("  ")
    assert max(map(len, lines)) <= 80
    assert " ".join(" ".join(lines).split()) == f"! {LONG}"


def test_fails_are_told_before_cautions_and_with_their_remedy(capsys: pytest.CaptureFixture[str]) -> None:
    output.print_told(
        [
            check(Verdict.CAUTION, id="b.caution"),
            check(Verdict.PASS, id="c.pass"),
            check(Verdict.FAIL, id="a.fail", mode="desk/low", proposal=LONG),
        ]
    )
    out = capsys.readouterr().out
    assert out.index("fail a.fail (desk/low): a sentence") < out.index("caution b.caution: a sentence")
    assert "      to mend: a sentence" in out
    assert "c.pass" not in out
    assert " ".join(out.split()).count("[a bracket]") == 3
    assert max(map(len, out.splitlines())) <= 80


def test_nothing_to_tell_prints_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    output.print_told([check(Verdict.PASS)])
    assert capsys.readouterr().out == ""


def test_every_check_is_in_the_table_or_in_the_tally(capsys: pytest.CaptureFixture[str]) -> None:
    output.print_checks(
        [
            check(Verdict.PASS, id="a.figure", value=1.25, unit="mm", min=1.0, max=2.0, margin=0.25),
            check(Verdict.FAIL, id="b.figure", value=3.0, unit="deg", max=2.0, margin=-1.0, mode="night", chance=0.25),
            check(Verdict.CAUTION, id="c.word"),
            check(Verdict.FAIL, id="fit.van", value=9.0, unit="mm3", mode="desk"),
            check(Verdict.PASS, id="fit.van", mode="night"),
        ]
    )
    lines = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert lines[1:] == [
        "fail",
        "b.figure night 3.0 deg <= 2 -1.0 25%",
        "pass",
        "a.figure 1.2 1 to 2 0.2",
        "c.word 1 caution",
        "fit.van 1 pass, 1 fail in 2 modes",
    ]


def test_each_source_is_named_once(capsys: pytest.CaptureFixture[str]) -> None:
    output.print_sources([check(Verdict.PASS, id="a"), check(Verdict.PASS, id="a"), check(Verdict.PASS, id="b")])
    assert capsys.readouterr().out == "\nwhere the limits come from\n  a, b: a book\n"


def test_a_document_without_a_finite_figure_is_still_json(capsys: pytest.CaptureFixture[str]) -> None:
    output.echo_json({"found": math.nan, "verdict": Verdict.FAIL, "at": (1.0, 2.00000049, 3.0), "name": "é"})
    assert json.loads(capsys.readouterr().out) == {"found": None, "verdict": "fail", "at": [1.0, 2.0, 3.0], "name": "é"}


def test_no_progress_where_nobody_watches(capsys: pytest.CaptureFixture[str]) -> None:
    with output.working(quiet=False) as progress:
        progress("sizes")
    assert capsys.readouterr() == ("", "")


def test_a_pipe_closed_in_the_middle_is_no_failed_check() -> None:
    class Closed(io.StringIO):
        def write(self, _text: str) -> int:
            raise BrokenPipeError

    out = output.console()
    out.file = Closed()
    with pytest.raises(BrokenPipeError):
        out.print("a line")
