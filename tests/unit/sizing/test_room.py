from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.brief.van import Van
from parametric.sizing.room import aisle, blocked, clear_length

Make = Callable[..., Brief]

FRIDGE = {"name": "fridge", "x": [1900, 2300], "y": [-400, 100], "z": [0, 500]}
SHELF = {"name": "shelf", "x": [1800, 2450], "y": [500, 750], "z": [600, 900]}


@pytest.fixture
def van(worked: Make) -> Callable[..., Van]:
    def made(*fixed: dict[str, Any]) -> Van:
        return worked(van={"fixed": list(fixed)}).van

    return made


def test_an_empty_floor_is_clear_to_its_end(van: Callable[..., Van]) -> None:
    assert clear_length(van(), 1600.0, 2450.0, (-400.0, 100.0), (0.0, 100.0)) == 2450.0


@pytest.mark.parametrize(
    ("y", "z", "clear"),
    [
        ((-500.0, -300.0), (0.0, 100.0), 1900.0),
        ((100.0, 300.0), (0.0, 100.0), 2450.0),  # beside it
        ((-500.0, -300.0), (500.0, 700.0), 2450.0),  # over it
        ((-500.0, -300.0), (499.0, 700.0), 1900.0),
    ],
)
def test_what_stands_in_the_window_ends_it(
    van: Callable[..., Van], y: tuple[float, float], z: tuple[float, float], clear: float
) -> None:
    assert clear_length(van(FRIDGE, SHELF), 1600.0, 2450.0, y, z) == clear


def test_what_is_behind_does_not_count(van: Callable[..., Van]) -> None:
    assert clear_length(van(FRIDGE), 2300.0, 2450.0, (-500.0, 0.0), (0.0, 100.0)) == 2450.0


def test_what_begins_behind_and_reaches_in_front_leaves_nothing(van: Callable[..., Van]) -> None:
    assert clear_length(van(FRIDGE), 2000.0, 2450.0, (-500.0, 0.0), (0.0, 100.0)) == 2000.0


def test_the_aisle_is_as_wide_as_the_wall_or_a_cabinet_lets_it(van: Callable[..., Van]) -> None:
    assert aisle(van(), 405.0, (30.0, 2140.0)) == 345.0
    assert aisle(van(SHELF), 405.0, (30.0, 2140.0)) == 95.0
    assert aisle(van(SHELF), 405.0, (30.0, 1800.0)) == 345.0  # before it begins
    assert aisle(van(FRIDGE), 405.0, (30.0, 2140.0)) == 345.0  # on the bed's side


def test_over_a_metre_nothing_narrows_the_aisle(van: Callable[..., Van]) -> None:
    high = {**SHELF, "z": [1000, 1200]}
    assert aisle(van(high), 405.0, (30.0, 2140.0)) == 345.0
    assert aisle(van(high), 405.0, (30.0, 2140.0), top=1100.0) == 95.0


def test_a_tapering_van_counts_where_it_is_narrowest(worked: Make) -> None:
    def station(x: int, y: int) -> dict[str, Any]:
        return {"x": x, "left": [[0, y], [1900, y]], "right": [[0, -y], [1900, -y]]}

    tapered = worked(van={"wall": None, "station": [station(0, 700), station(2000, 800)]}).van
    # left wall at x 500: 725
    assert aisle(tapered, 405.0, (500.0, 1500.0)) == 320.0


def test_a_blocked_place_names_what_blocks_it(van: Callable[..., Van]) -> None:
    fixed = van(FRIDGE, SHELF).fixed
    assert blocked(fixed, (1890.0, 1935.0), (0.0, 45.0), (0.0, 300.0)) == "fridge"
    assert blocked(fixed, (1855.0, 1900.0), (0.0, 45.0), (0.0, 300.0)) is None
    assert blocked(fixed, (1900.0, 2000.0), (600.0, 700.0), (0.0, 700.0)) == "shelf"
    assert blocked((), (0.0, 1.0), (0.0, 1.0), (0.0, 1.0)) is None
