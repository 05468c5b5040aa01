from __future__ import annotations

import pytest

from parametric.brief.lines import key_lines, line_of

TEXT = '''\
# comment with [van] and "quotes"
name = "a # b"
note = """
[not.a.table]
x = 1
"""
other = \'\'\'
[[nor.this]]
\'\'\'

[van]
"length day" = 1.5
wall = [
    [0, 1500],   # first
    # a comment between
    [500, 1500],
]
lining.wall = 3
roof = { x = [1, 2], y = [
  -5, 5] }

[[van.fixed]]
name = "a"
[[van.fixed]]
name = "b"
[van.fixed.inner]
deep = 1

[[sleeper]]
[sleeper.measured]
elbow = 1
[[sleeper]]
sex = "x"
[sleeper.measured]
elbow = 2
'''


@pytest.mark.parametrize(
    ("key", "line"),
    [
        (("name",), 2),
        (("note",), 3),
        (("other",), 7),
        (("van",), 11),
        (("van", "length day"), 12),
        (("van", "wall"), 13),
        (("van", "wall", 0), 14),
        (("van", "wall", 1), 16),
        (("van", "wall", 1, 1), 16),
        (("van", "lining", "wall"), 18),
        (("van", "roof", "x", 1), 19),
        (("van", "roof", "y", 0), 20),
        (("van", "fixed", 0), 22),
        (("van", "fixed", 0, "name"), 23),
        (("van", "fixed", 1), 24),
        (("van", "fixed", 1, "name"), 25),
        (("van", "fixed", 1, "inner", "deep"), 27),
        (("sleeper", 0, "measured", "elbow"), 31),
        (("sleeper", 1, "sex"), 33),
        (("sleeper", 1, "measured", "elbow"), 35),
    ],
)
def test_line_of_every_kind_of_key(key: tuple[str | int, ...], line: int) -> None:
    assert key_lines(TEXT)[key] == line


def test_text_in_strings_is_no_table() -> None:
    tops = {key[0] for key in key_lines(TEXT)}
    assert tops == {"name", "note", "other", "van", "sleeper"}


def test_a_missing_key_gets_the_line_of_its_table() -> None:
    assert line_of(("van", "fixed", 1, "x", 0), key_lines(TEXT)) == 24


def test_no_line_where_nothing_is_known() -> None:
    assert line_of(("bed",), key_lines(TEXT)) is None


def test_windows_line_ends_count_once() -> None:
    assert key_lines("a = 1\r\n[b]\r\nc = 2\r\n")[("b", "c")] == 3


@pytest.mark.parametrize("text", ["", "\n\n", "# only a comment", "a = 1", "a = []", "a = {}", "a.b.c = 1", "a = ''"])
def test_small_texts_end_and_name_lines_they_have(text: str) -> None:
    last = text.count("\n") + 1
    assert all(1 <= line <= last for line in key_lines(text).values())
