"""`parametric check`: one mode or all, in words or as a document."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]


@pytest.fixture
def brief(changed: Callable[..., str]) -> str:
    """More storage wanted than there is under the bed."""
    return changed(("[bed]", "[bed]\nstorage_height = 420"))


def test_a_failed_check_is_exit_code_1_and_told_in_words(run: Run, brief: str) -> None:
    code, out, err = run("check", brief)
    assert (code, err) == (1, "")
    assert out.startswith("compact_van: DO NOT BUILD: ")
    assert "\nfail access.storage_height (access/front): " in out
    assert "      to mend: " in out
    assert "\nwhere the limits come from\n" in out
    assert max(map(len, out.splitlines())) <= 80


def test_quiet_tells_only_what_fails(run: Run, brief: str) -> None:
    code, out, err = run("check", "--quiet", brief)
    assert (code, err) == (1, "")
    assert "\nfail access.storage_height (access/front): " in out
    assert "\ncaution " not in out
    assert "all lengths in mm" not in out


def test_another_mode_may_hold_and_says_that_it_is_not_all(run: Run, brief: str) -> None:
    code, out, err = run("check", "--mode", "drive", brief)
    assert (code, err) == (0, "")
    assert out.startswith("compact_van, only drive: ")
    assert "access.storage_height" not in out


def test_a_mode_takes_its_variants_along_and_what_concerns_all(run: Run, brief: str) -> None:
    modes = [
        {c["mode"] for c in json.loads(run("check", "--json", "--mode", mode, brief).out)["checks"]}
        for mode in ("desk", "desk/low", "access")
    ]
    assert modes == [
        {None, "desk", "desk/low", "desk/high", "desk/parked"},
        {None, "desk/low"},
        {None, "access/front", "access/rear"},
    ]


@pytest.mark.parametrize("mode", ["dusk", "", "desk/", "desk/middle", "access/up"])
def test_an_unknown_mode_is_named_with_those_there_are(run: Run, brief: str, mode: str) -> None:
    code, out, err = run("check", "--mode", mode, brief)
    assert (code, out) == (2, "")
    assert err.startswith(f"--mode {mode}: there is no such mode; there are night, ")
    assert "access/rear" in err
    assert err.count("\n") == 1
