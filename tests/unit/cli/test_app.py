"""The command as a whole: help, versions, errors, and the ways of being stopped."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest

from parametric import __version__
from parametric.cli import size

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]

COMMANDS = ["new", "body", "size", "check", "build"]


def test_alone_it_says_what_to_do_first(run: Run) -> None:
    code, out, err = run()
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert [line.split()[1] for line in lines if line.startswith("  parametric")] == [
        "body",
        "new",
        "size",
        "check",
        "build",
    ]
    assert max(map(len, lines)) <= 80


def test_version(run: Run) -> None:
    assert run("--version") == (0, f"parametric {__version__}\n", "")


@pytest.mark.parametrize("option", ["--help", "-h"])
def test_help_names_every_command(run: Run, option: str) -> None:
    code, out, err = run(option)
    assert (code, err) == (0, "")
    assert [c for c in COMMANDS if re.search(rf"^\W*{c} ", out, re.MULTILINE)] == COMMANDS


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help(run: Run, command: str) -> None:
    code, out, err = run(command, "--help")
    assert (code, err) == (0, "")
    assert "Usage" in out


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["nonsense"], "No such command"),
        (["size"], "Missing argument"),
        (["size", "--nope", "x"], "No such option"),
        (["size", "x", "y"], "unexpected extra argument"),
        (["body"], "Missing option"),
        (["body", "--stature", "1960", "--sex", "x"], "is not one of"),
    ],
)
def test_a_command_that_cannot_be_read(run: Run, arguments: list[str], says: str) -> None:
    code, out, err = run(*arguments)
    assert (code, out) == (2, "")
    assert says in err
    assert "Traceback" not in err


def _planted(monkeypatch: pytest.MonkeyPatch, error: BaseException) -> None:
    def fails(*_: object) -> None:
        raise error

    monkeypatch.setattr(size, "_print", fails)


def test_a_bug_is_one_message_and_exit_code_3(
    run: Run, changed: Callable[..., str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _planted(monkeypatch, ZeroDivisionError("planted"))
    code, out, err = run("size", changed())
    assert (code, out) == (3, "")
    assert err.startswith("parametric has a bug: ZeroDivisionError: planted (test_app.py:")
    assert "PARAMETRIC_DEBUG=1" in err
    assert "Traceback" not in err


def test_a_bug_tells_all_when_asked(run: Run, changed: Callable[..., str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PARAMETRIC_DEBUG", "1")
    _planted(monkeypatch, ZeroDivisionError("planted"))
    code, _, err = run("size", changed())
    assert code == 3
    assert "Traceback" in err


def test_ctrl_c_is_told_and_is_no_failed_check(
    run: Run, changed: Callable[..., str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _planted(monkeypatch, KeyboardInterrupt())
    assert run("size", changed()) == (130, "", "stopped; nothing was changed\n")
