"""Millimetres of storage, aisle, door and lids of the layout worked through by hand."""

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


def test_storage_wished_higher_than_the_seat_lets_it(size: Size) -> None:
    # rails and bearers are 95 deep: 340 + 95 against slats at 422
    clash = found(size, "storage height", bed={"storage_height": 340})
    assert clash.demands == ("storage 340", "frame and slats 95")
    assert (clash.need, clash.have, clash.short) == (435.0, 422.0, 13.0)
    assert ways(clash) == ["storage_height 327", "seat 505", "a mattress of 87, seat 492"]


def test_with_the_platform_wished_too_the_mattress_alone_changes_nothing(size: Size) -> None:
    clash = found(size, "storage height", bed={"storage_height": 340, "platform_height": 422})
    assert ways(clash) == ["storage_height 327", "platform_height 435, seat 505"]


def test_a_seat_past_its_band_is_no_way_to_more_storage(size: Size) -> None:
    # 53 more would put the seat at 545; 517 is the most
    clash = found(size, "storage height", bed={"storage_height": 380})
    assert clash.short == 53.0
    assert ways(clash) == ["storage_height 327"]


def test_the_way_out_of_bed(size: Size) -> None:
    # aisle 750 - 745 + 1200, less straps of 28: 267; 2450 - 30 - 2110 = 310 beyond the foot
    clash = found(size, "way out of bed", bed={"width": 1200})
    assert clash.demands == ("bed width 1200", "aisle 330")
    assert (clash.need, clash.have) == (1530.0, 1467.0)
    assert ways(clash) == ["a bed 1137 wide", "20 more floor length at night"]


def test_room_beyond_the_foot_is_a_way_out(size: Size) -> None:
    told = {c.about for c in size(bed={"width": 1200}, van={"length_night": 2470}).clashes}
    assert "way out of bed" not in told


def test_a_bed_squeezed_by_the_floor_grows_before_its_foot_is_free(size: Size) -> None:
    # 2100: the bed has 2065 of 2110; 330 beyond the foot need 30 + 2110 + 330
    clash = found(size, "way out of bed", bed={"width": 1200}, van={"length_day": 2100})
    assert "370 more floor length at night" in ways(clash)


@pytest.mark.parametrize(("width", "clashes"), [(560, False), (559, True)])
def test_the_panel_goes_in_through_the_widest_opening(size: Size, width: int, clashes: bool) -> None:
    hatch = {"name": "hatch", "kind": "side", "width": width, "height": 300}
    sized = size(van={"opening": [hatch]})
    assert ("door" in {c.about for c in sized.clashes}) == clashes


def test_a_shallower_desk_goes_in(size: Size) -> None:
    hatch = {"name": "hatch", "kind": "side", "width": 520, "height": 300}
    clash = found(size, "door", van={"opening": [hatch]})
    assert (clash.need, clash.have) == (560.0, 520.0)
    assert ways(clash) == ["platform_length 1587, desk depth 520"]


def test_lids_stand_under_the_ceiling(size: Size) -> None:
    # slats 422 and 23 for hinge and play: a lid of 832.5 needs 1277.5
    assert "lids under the ceiling" not in {c.about for c in size(van={"ceiling": 1280}).clashes}
    low = size(van={"ceiling": 1100})
    clash = next((c for c in low.clashes if c.about == "lids under the ceiling"), None)
    le = low.dimensions.lengths
    longest = max(le.middle - 22.5 - le.rear - 45.0, le.front - 45.0 - 22.5 - le.middle)
    assert (clash is not None) == (422.0 + longest + 23.0 > 1100.0)
