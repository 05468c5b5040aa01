"""A kind of extension, seat or support is one file of the same name in every room that knows about it."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "parametric"


def kinds(room: str) -> set[str]:
    """Names of the kinds a room knows."""
    return {path.stem for path in (PACKAGE / room / "kinds").glob("[a-z]*.py")}


def test_every_kind_is_sized_and_every_sized_kind_has_parts_or_a_posture() -> None:
    assert kinds("sizing") == kinds("mechanism") | kinds("posture")
