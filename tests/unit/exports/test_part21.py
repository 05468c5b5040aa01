"""Clear text of ISO 10303-21."""

from __future__ import annotations

import pytest

from parametric.exports.part21 import Entities, listed, real, reals, text


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (0.0, "0."),
        (-0.0, "0."),
        (5.0, "5."),
        (-12.5, "-12.5"),
        (1e-13, "0."),
        (1.5e-7, "1.5E-07"),
        (1e15, "1.E+15"),
        (0.1 + 0.2, "0.3"),
    ],
)
def test_real_has_a_decimal_point(value: float, expected: str) -> None:
    assert real(value) == expected


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ("leg #2", "'leg #2'"),
        ("driver's side", "'driver''s side'"),
        ("a\\b", "'a\\\\b'"),
        ("né", "'n\\X4\\000000E9\\X0\\'"),
        ("", "''"),
    ],
)
def test_text_is_quoted_and_escaped(value: str, expected: str) -> None:
    assert text(value) == expected


def test_lists() -> None:
    assert listed(["#1", "#2"]) == "(#1,#2)"
    assert reals((1.0, 2.5)) == "(1.,2.5)"


def test_block_is_renumbered_and_plain_entities_are_not() -> None:
    entities = Entities()
    entities.add("A('#1')")
    assert entities.add_block(("B(#2)", "C(#1)")) == "#2"
    lines = entities.text(["H()"]).splitlines()
    assert lines[5:8] == ["#1=A('#1');", "#2=B(#3);", "#3=C(#2);"]
