"""`parametric new`: a file that was not there before, and that the other commands take."""

from __future__ import annotations

import errno
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from parametric.brief.loader import load

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]


@pytest.mark.parametrize(
    ("file", "name"),
    [("my_van.toml", "my_van"), ("my van.toml", "my_van"), ("ünï.toml", "n"), ("-x.toml", "x"), (".toml", "toml")],
)
def test_the_template_can_be_sized_as_it_stands(run: Run, tmp_path: Path, file: str, name: str) -> None:
    code, out, err = run("new", "--", file)
    assert (code, err) == (0, "")
    assert out == f"Wrote {file}. Fill in your van and yourself, then: parametric size {file}\n"
    assert load(tmp_path / file).name == name
    assert run("size", "--", file).code == 0
    assert run("size", "--json", "--", file).code == 0
    assert [p.name for p in tmp_path.iterdir()] == [file]


def test_what_is_there_is_left_alone(run: Run, tmp_path: Path) -> None:
    (tmp_path / "van.toml").write_text("mine")
    assert run("new", "van.toml") == (2, "", "van.toml is there already; name a new file\n")
    assert (tmp_path / "van.toml").read_text() == "mine"


def test_a_link_to_nowhere_is_left_alone(run: Run, tmp_path: Path) -> None:
    (tmp_path / "van.toml").symlink_to("elsewhere.toml")
    code, _, err = run("new", "van.toml")
    assert (code, err) == (2, "van.toml is there already; name a new file\n")
    assert not (tmp_path / "elsewhere.toml").exists()


@pytest.mark.parametrize(
    ("file", "says"),
    [
        ("folder", "folder is there already"),
        (".", ". is there already"),
        ("nowhere/van.toml", "nowhere/van.toml: cannot be written: No such file or directory"),
        ("file/van.toml", "file/van.toml: cannot be written: Not a directory"),
        ("/proc/van.toml", "/proc/van.toml: cannot be written"),
        ("x" * 300, "cannot be written: File name too long"),
    ],
)
def test_what_cannot_be_written(run: Run, tmp_path: Path, file: str, says: str) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").touch()
    code, out, err = run("new", file)
    assert (code, out) == (2, "")
    assert says in err
    assert err.count("\n") == 1
    assert sorted(p.name for p in tmp_path.rglob("*")) == ["file", "folder"]


def test_a_full_disc_leaves_no_half_of_a_file(run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(self: Path, text: str, encoding: str) -> int:
        self.write_bytes(b"half")
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(Path, "write_text", full)
    code, _, err = run("new", "van.toml")
    assert (code, err) == (
        2,
        "van.toml: cannot be written: No space left on device; name a file in a folder you can write to\n",
    )
    assert list(tmp_path.iterdir()) == []
