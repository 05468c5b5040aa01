"""A small valid brief, and a way to spoil it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.loader import parse
from parametric.brief.model import Brief
from parametric.core.errors import BriefError

MINIMAL = """\
name = "small"
[van]
length_day = 2600
ceiling = 1320
wall = [[0, 1500], [500, 1500], [1320, 1420]]
[[sleeper]]
sex = "male"
stature = 1960
[bed]
width = 1150
"""


@pytest.fixture
def minimal() -> str:
    return MINIMAL


@pytest.fixture
def read() -> Callable[..., Brief]:
    """Read the small brief after replacing (old, new) texts."""

    def reader(*edits: tuple[str, str]) -> Brief:
        text = MINIMAL
        for old, new in edits:
            assert old in text
            text = text.replace(old, new, 1)
        return parse(text, "small.toml")

    return reader


@pytest.fixture
def refused(read: Callable[..., Brief]) -> Callable[..., list[str]]:
    """The messages the small brief earns after replacing (old, new) texts."""

    def messages(*edits: tuple[str, str]) -> list[str]:
        with pytest.raises(BriefError, match=r"small\.toml") as caught:
            read(*edits)
        return caught.value.lines()

    return messages
