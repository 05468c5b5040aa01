"""Millimetres along the floor of the layout worked through by hand."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.pipeline.size import Sized
from parametric.sizing.clash import Clash

Size = Callable[..., Sized]


def found(size: Size, about: str, **tables: Any) -> Clash:
    """The one clash about something."""
    (clash,) = (c for c in size(**tables).clashes if c.about == about)
    return clash


def ways(clash: Clash) -> list[str]:
    """Ways out in words."""
    return [w.says for w in clash.ways]


def test_sleeping_length_against_the_floor_at_night(size: Size) -> None:
    # 2100 less the rear face 30 and 5
    clash = found(size, "sleeping length", van={"length_day": 2100})
    assert clash.demands == ("stature 1960", "allowance 150")
    assert (clash.need, clash.have) == (2110.0, 2065.0)
    assert ways(clash) == ["45 more floor length at night", "length_allowance 105"]


def test_a_wish_longer_than_the_floor(size: Size) -> None:
    clash = found(size, "sleeping length", bed={"length": 2440})
    assert (clash.demands, clash.need, clash.have) == (("bed 2440",), 2440.0, 2415.0)
    assert ways(clash) == ["25 more floor length at night", "bed length 2415"]
    assert clash.says.startswith("sleeping length: bed 2440 needs 2440; there are 2415: 25 short")


def test_a_wish_too_short_for_the_sleeper(size: Size) -> None:
    clash = found(size, "bed too short", bed={"length": 2000})
    assert (clash.need, clash.have) == (2030.0, 2000.0)
    assert ways(clash) == ["bed length 2030"]


def test_the_way_in_past_the_parked_panel(size: Size) -> None:
    clash = found(size, "way in to the seat")
    assert clash.demands == ("seat front 1612", "slot 330", "desk depth 560")
    assert (clash.need, clash.have) == (2507.0, 2450.0)
    # 2110 - 57 is still 93 longer than the sleeper; 1017 wide leaves 450 beside straps of 28
    assert ways(clash) == ["57 more floor length by day", "bed length 2053", "a bed 1017 wide, aisle 450"]


@pytest.mark.parametrize(
    ("slot", "width", "clashes"), [(330, 1017, False), (330, 1018, True), (500, 1017, True), (500, 967, False)]
)
def test_an_aisle_is_a_way_in_if_it_is_450_and_as_wide_as_wished(
    size: Size, slot: int, width: int, clashes: bool
) -> None:
    told = {c.about for c in size(bed={"width": width}, rules={"entry_slot": slot}).clashes}
    assert ("way in to the seat" in told) == clashes


def test_feet_against_a_thing_that_stays(size: Size) -> None:
    step = {"name": "step", "x": [2000, 2300], "y": [-300, 0], "z": [0, 90]}
    clash = found(size, "foot room", van={"fixed": [step]})
    assert clash.demands == ("seat front 1612", "feet 450")
    assert (clash.need, clash.have) == (2062.0, 2000.0)
    assert ways(clash) == ["platform_length 1485"]


def test_enough_floor_is_no_clash(size: Size) -> None:
    step = {"name": "step", "x": [2062, 2300], "y": [-300, 0], "z": [0, 90]}
    assert "foot room" not in {c.about for c in size(van={"fixed": [step]}).clashes}
