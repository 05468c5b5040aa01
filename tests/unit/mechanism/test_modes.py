from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.mechanism.model import Use
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED

Make = Callable[..., Any]


def test_all_uses_and_their_variants(exchange: Any) -> None:
    modes = exchange.mechanism.modes
    assert set(modes) == {
        "night", "lounge", "desk", "desk/low", "desk/high", "desk/parked", "drive", "access/front", "access/rear"
    }  # fmt: skip
    assert all(id == mode.id for id, mode in modes.items())
    assert sorted((*DESKS, *NIGHTS, *PANEL_STOWED)) == sorted(modes)


@pytest.mark.parametrize(
    ("mode", "use"),
    [
        ("night", Use.LYING),
        ("lounge", Use.SITTING),
        ("desk/high", Use.SITTING),
        ("desk/parked", Use.NOBODY),
        ("drive", Use.NOBODY),
        ("access/rear", Use.NOBODY),
    ],
)
def test_who_is_in_it(exchange: Any, mode: str, use: Use) -> None:
    assert exchange.mechanism.modes[mode].use is use


def test_a_lifting_roof_is_up_for_sitting_only(exchange: Any) -> None:
    up = {id for id, mode in exchange.mechanism.modes.items() if mode.van.roof_up}
    assert up == {"lounge", *DESKS}


def test_a_fixed_high_roof_is_always_up(make: Make) -> None:
    modes = make(van={"roof": {"lifts": False}}).mechanism.modes
    assert all(mode.van.roof_up for mode in modes.values())


def test_front_seats_are_in_night_place_where_the_bed_is_made(make: Make) -> None:
    modes = make(van={"length_night": 2900}).mechanism.modes
    assert {id for id, m in modes.items() if m.van.length == 2900.0} == set(NIGHTS)
    assert {m.van.length for id, m in modes.items() if id not in NIGHTS} == {2600.0}


def test_only_drive_may_move(exchange: Any) -> None:
    assert [id for id, m in exchange.mechanism.modes.items() if m.van.driving] == ["drive"]


def test_each_desk_mode_says_its_height(exchange: Any) -> None:
    modes, heights = exchange.mechanism.modes, exchange.dims.heights
    assert modes["desk/low"].settings == {"desk_height": heights.desk_low}
    assert modes["desk/high"].settings == {"desk_height": heights.desk_high}
    assert modes["desk/parked"].settings == modes["desk"].settings == {"desk_height": heights.desk}
    assert modes["night"].settings == {}
