"""`parametric build`: options that are refused before anything is worked out. The rest is in tests/integration."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]


@pytest.mark.parametrize("only", ["nonsense", "step,nonsense", "", ",", "STEP", "step;stl"])
def test_only_files_there_are(run: Run, changed: Callable[..., str], tmp_path: Path, only: str) -> None:
    code, out, err = run("build", changed(), "--only", only)
    assert (code, out) == (2, "")
    assert err == f"--only {only}: there are step, stl, context\n"
    assert [p.name for p in tmp_path.iterdir()] == ["van.toml"]


@pytest.mark.parametrize("date", ["yesterday", "2026-13-01", "25.11.2026", ""])
def test_a_date_is_a_date(run: Run, changed: Callable[..., str], tmp_path: Path, date: str) -> None:
    code, out, err = run("build", changed(), "--date", date)
    assert (code, out) == (2, "")
    assert err == f"--date {date}: write a date such as 2026-11-25\n"
    assert [p.name for p in tmp_path.iterdir()] == ["van.toml"]


@pytest.mark.parametrize(
    ("target", "says"),
    [
        ("file", "file is a file; name a folder"),
        ("file/x", "file/x cannot be written: "),
        ("foreign", "foreign holds other things and no design.json; name a new or an empty folder"),
        (".", "is the folder you are in or above it; start from outside it or name another"),
        ("link", "link is a link; name the folder it points to, "),
        ("/proc/x", "/proc/x cannot be written: "),
    ],
)
def test_a_place_that_cannot_be_taken(
    run: Run, changed: Callable[..., str], tmp_path: Path, target: str, says: str
) -> None:
    brief = changed()
    (tmp_path / "file").write_text("mine")
    (tmp_path / "foreign").mkdir()
    (tmp_path / "foreign" / "letter.txt").write_text("mine")
    (tmp_path / "link").symlink_to("foreign")
    before = sorted(tmp_path.rglob("*"))
    code, out, err = run("build", brief, "-o", target)
    assert (code, out) == (2, "")
    assert says in err
    assert err.count("\n") == 1
    assert sorted(tmp_path.rglob("*")) == before
    assert (tmp_path / "foreign" / "letter.txt").read_text() == "mine"
