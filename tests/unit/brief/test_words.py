from __future__ import annotations

import datetime

import pytest

from parametric.brief.words import choices, clipped, figure, near, shown


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (True, "true"),
        ("a", '"a"'),
        (1.5, "1.5"),
        ({"a": 1}, "a table"),
        ([1, 2], "a list of 2"),
        (datetime.date(2024, 1, 2), "2024-01-02"),
        ("\x1b[31mred\n", '"\\x1b[31mred\\n"'),
    ],
)
def test_shown(value: object, expected: str) -> None:
    assert shown(value) == expected


def test_long_text_is_clipped() -> None:
    assert clipped("x" * 1000) == "x" * 57 + "..."


def test_figure_drops_needless_digits() -> None:
    assert (figure(1980.0), figure(0.1 + 0.2), figure(12_500_000.0)) == ("1980", "0.3", "12500000")


def test_choices() -> None:
    assert choices(["a"]) == '"a"'
    assert choices(["a", "b", "c"]) == '"a", "b" or "c"'


def test_near_by_spelling_by_part_or_not_at_all() -> None:
    assert near("widht", ["width", "height"]) == '; did you mean "width"?'
    assert near("elbow", ["elbow_height_sitting", "foot"]) == '; did you mean "elbow_height_sitting"?'
    assert near("zzz", ["width"]) == ""
