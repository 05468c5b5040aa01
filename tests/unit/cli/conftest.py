"""The command line run in this process."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from parametric.cli.app import main

DEMO = Path(__file__).parents[3] / "configs" / "compact_van.toml"


class Answer(NamedTuple):
    """What a command gave."""

    code: int
    out: str
    err: str


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Callable[..., Answer]:
    """Runs a command in an empty folder: ``run("size", "x.toml")``."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str) -> Answer:
        monkeypatch.setattr(sys, "argv", ["parametric", *arguments])
        with pytest.raises(SystemExit) as ended:
            main()
        assert isinstance(ended.value.code, int)
        return Answer(ended.value.code, *capsys.readouterr())

    return run


@pytest.fixture
def changed(tmp_path: Path) -> Callable[..., str]:
    """Writes the demo brief with some text replaced, and gives its name: ``changed(("1320", "-1"))``."""

    def changed(*edits: tuple[str, str], name: str = "van.toml") -> str:
        text = DEMO.read_text(encoding="utf-8")
        for old, new in edits:
            assert old in text
            text = text.replace(old, new, 1)
        (tmp_path / name).write_text(text, encoding="utf-8")
        return name

    return changed
