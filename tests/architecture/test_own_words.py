"""The repository stands on its own: it names no folder and no paper outside itself, and leaves nothing to do."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SUFFIXES = {".py", ".toml", ".csv", ".md", ".txt", ".typed"}
FOREIGN = re.compile(
    r"""
    \bshared/ | (?<!\w)/work\b | (?<!\w)/tmp\b
    | \b(design|review|spikes|style|ergonomics|structures)\.md\b
    | \b(TODO | FIXME | XXX)\b
    """,
    re.VERBOSE,
)
FOLDERS = ("parametric", "configs", "tests", "outputs")


def pages() -> list[Path]:
    """Text files of the project, but for this one and what builds have left."""
    inside = (p for folder in FOLDERS for p in (ROOT / folder).rglob("*"))
    builds = ROOT / "outputs"
    return sorted(
        p
        for p in [*ROOT.iterdir(), ROOT / ".ci" / "run", *inside]
        if p.is_file()
        and (p.suffix in SUFFIXES or p.name == "run")
        and p != Path(__file__)
        and (builds not in p.parents or p == builds / "README.md")
    )


@pytest.mark.parametrize("path", pages(), ids=lambda path: str(path.relative_to(ROOT)))
def test_a_file_names_nothing_outside_the_project(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    assert [f"{n}: {line}" for n, line in enumerate(lines, 1) if FOREIGN.search(line)] == []


@pytest.mark.parametrize("line", ["see ../shared/x", "in /work/main", "# TODO", "design.md 8a"])
def test_foreign_words_are_recognised(line: str) -> None:
    assert FOREIGN.search(line)


@pytest.mark.parametrize("line", ["a shared edge", "hours/workday", "/workshop", "todo = []"])
def test_ordinary_words_are_left_alone(line: str) -> None:
    assert not FOREIGN.search(line)
