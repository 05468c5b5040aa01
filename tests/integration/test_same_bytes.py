"""The same brief gives the same bytes, whatever the process, its hash seed, its folder, time zone and language."""

from __future__ import annotations

from concurrent.futures import Future
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.integration.conftest import Build


def _content(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def test_two_builds_give_the_same_tree(built: Build, builds: dict[str, Future[Build]]) -> None:
    one, other = _content(built.folder), _content(builds["again"].result().folder)
    assert {Path(name).parts[0] for name in one} == {"design.json", "checks.json", "summary.txt", "step", "stl"}
    assert list(one) == list(other)
    assert [name for name in one if one[name] != other[name]] == []


def test_no_file_names_the_machine_or_the_hour(built: Build) -> None:
    for name, data in _content(built.folder).items():
        assert str(built.folder).encode() not in data, name
        assert str(Path.home()).encode() + b"/" not in data, name
        assert b"T00:00:00" in data or not name.endswith(".step"), name
