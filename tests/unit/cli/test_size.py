"""`parametric size`: figures, clashes and exit codes."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]

TALL_STORAGE = ("[bed]", "[bed]\nstorage_height = 420")


def test_heights_come_first_and_in_mm(run: Run, changed: Callable[..., str]) -> None:
    code, out, err = run("size", changed())
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[0].startswith("compact_van: ")
    assert lines[1].split()[:3] == ["loaded", "seat", "height"]
    assert "  all lengths in mm" in lines
    assert max(map(len, lines)) <= 80


def test_a_clash_is_explained_and_fails(run: Run, changed: Callable[..., str]) -> None:
    code, out, err = run("size", changed(TALL_STORAGE))
    assert (code, err) == (1, "")
    assert out.startswith("compact_van: DO NOT BUILD")
    assert "CLASH storage height" in out
    assert max(map(len, out.splitlines())) <= 80


def test_the_document_says_the_same(run: Run, changed: Callable[..., str]) -> None:
    brief = changed(TALL_STORAGE)
    code, out, err = run("size", "--json", brief)
    assert (code, err) == (1, "")
    document = json.loads(out)
    assert document["schema"] == "parametric.design/1"
    assert document["name"] == "compact_van"
    assert document["verdict"] == "fail"
    clash = next(c for c in document["clashes"] if c["about"] == "storage height")
    assert clash["short"] > 0.0
    assert clash["ways"]
    printed = " ".join(run("size", brief).out.split())
    assert clash["says"] in printed
    assert f"loaded seat height {document['dimensions']['heights']['seat']:.0f}" in printed
