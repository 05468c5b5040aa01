"""A brief that cannot be used: what is wrong is said once, the same by every command, and nothing is written."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]

COMMANDS = ["size", "check", "build"]
CEILING = "ceiling = 1320"


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize(
    ("new", "message"),
    [
        ("cieling = 1320", 'van.toml:7: van.cieling: is not a known key; did you mean "ceiling"'),
        ("ceiling = -1320", "van.toml:7: van.ceiling: read -1320; allowed are 900 to 2600 mm"),
        ("ceiling = nan", "van.toml:7: van.ceiling: read nan; write a length from 900 to 2600 mm"),
        ("ceiling = inf", "van.toml:7: van.ceiling: read inf; write a length from 900 to 2600 mm"),
        ("ceiling = 13200000", "van.toml:7: van.ceiling: read 13200000; allowed are 900 to 2600 mm"),
        ("ceiling = true", "van.toml:7: van.ceiling: read true; write 1980"),
        ('ceiling = "132 bananas"', 'van.toml:7: van.ceiling: cannot read "bananas" as the unit of a length'),
        ('ceiling = "132 kg"', 'van.toml:7: van.ceiling: cannot read "kg" as the unit of a length'),
        ("ceiling = 1.32 m", "van.toml:7: is not valid TOML: "),
        ("ceiling = [", "is not valid TOML: "),
    ],
)
def test_one_mistake_one_message(
    run: Run, changed: Callable[..., str], tmp_path: Path, command: str, new: str, message: str
) -> None:
    brief = changed((CEILING, new))
    code, out, err = run(command, brief)
    assert (code, out) == (2, "")
    said = [line for line in err.splitlines() if "van.ceiling: is missing" not in line]
    assert len(said) == 1
    assert message in said[0]
    assert [p.name for p in tmp_path.iterdir()] == [brief]


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("name", ["../../x", "/etc/x", "a/b", "", ".", ".."])
def test_a_name_cannot_lead_out_of_the_output_folder(
    run: Run, changed: Callable[..., str], tmp_path: Path, command: str, name: str
) -> None:
    brief = changed(("compact_van", name))
    code, out, err = run(command, brief)
    assert (code, out) == (2, "")
    assert err.startswith(f'van.toml:2: name: read "{name}"; write 1 to 64 letters')
    assert err.count("\n") == 1
    assert [p.name for p in tmp_path.iterdir()] == [brief]


@pytest.mark.parametrize("command", COMMANDS)
def test_all_mistakes_are_told_at_once_in_the_order_of_the_file(
    run: Run, changed: Callable[..., str], tmp_path: Path, command: str
) -> None:
    brief = changed((CEILING, "ceiling = -1"), ("shoes = 10", "shoos = 10"))
    code, out, err = run(command, brief)
    assert (code, out) == (2, "")
    first, second = err.splitlines()
    assert first.startswith("van.toml:7: van.ceiling: read -1; ")
    assert second.startswith("van.toml:")
    assert 'sleeper[0].shoos: is not a known key; did you mean "shoes"?' in second
    assert [p.name for p in tmp_path.iterdir()] == [brief]


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize(
    ("content", "says"),
    [
        (None, "x.toml: there is no such file; `parametric new FILE` writes one to fill in"),
        (b"\x89PNG\r\n\x1a\n\x00\xff", "x.toml:1: is not UTF-8 text"),
        (b"\x00\x01\x02", "x.toml:1: is not valid TOML: "),
        (b"<html>", "x.toml:1: is not valid TOML: "),
    ],
    ids=["missing", "picture", "zeros", "page"],
)
def test_what_is_no_brief_at_all(run: Run, tmp_path: Path, command: str, content: bytes | None, says: str) -> None:
    if content is not None:
        (tmp_path / "x.toml").write_bytes(content)
    before = list(tmp_path.iterdir())
    code, out, err = run(command, "x.toml")
    assert (code, out) == (2, "")
    assert err.startswith(says)
    assert err.count("\n") == 1
    assert list(tmp_path.iterdir()) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_an_empty_brief_is_told_what_it_needs(run: Run, tmp_path: Path, command: str) -> None:
    (tmp_path / "x.toml").touch()
    code, out, err = run(command, "x.toml")
    assert (code, out) == (2, "")
    keys = [line.split(": ")[1] for line in err.splitlines()]
    assert keys == ["name", "van", "sleeper", "bed"]


@pytest.mark.parametrize("command", COMMANDS)
def test_a_folder_is_no_brief(run: Run, tmp_path: Path, command: str) -> None:
    assert run(command, ".") == (2, "", ".: is a folder; name the brief in it\n")
