from __future__ import annotations

from dataclasses import replace

import pytest

from parametric.core.errors import RefusedError
from parametric.sizing.kinds import panel as rules
from parametric.sizing.kinds.panel import Middle, middle_bearer

# the worked layout: rear face 30, front 1577, a lid under the ceiling of 1320 is at most 875 long
WORKED = Middle(rear=30.0, front=1577.0, bearer=45.0, longest_lid=875.0, depth=560.0, stowed=570.0)


@pytest.mark.parametrize(("keyboard", "depth"), [(False, 560.0), (True, 600.0)])
def test_a_keyboard_asks_for_a_deeper_desk(keyboard: bool, depth: float) -> None:
    assert rules.desk_depth(keyboard) == depth


def test_the_stowed_stiffener_keeps_the_platform_off_the_door() -> None:
    assert rules.rear(20.0) == 30.0


@pytest.mark.parametrize(
    ("length_day", "platform"),
    [
        (2450.0, 1547.0),  # 2110 - 560 - 3
        (2212.0, 1547.0),  # just enough floor: 1547 + 30 + 35 + 600
        (2100.0, 1435.0),  # shorter for the feet: 2100 - 600 - 35 - 30
        (2000.0, 1407.0),  # but no shorter than a panel of 700 leaves
    ],
)
def test_the_platform_gives_way_to_the_feet(length_day: float, platform: float) -> None:
    assert rules.platform_length(2110.0, 560.0, 30.0, 35.0, length_day, 600.0) == platform


def test_the_middle_bearer_makes_the_propped_lid_a_back_rest() -> None:
    # seat front 1550, seat depth 505 and two pieces of 100 behind the back: 845, a bearer without width
    room = Middle(rear=0.0, front=1550.0, bearer=0.0, longest_lid=875.0, depth=560.0, stowed=570.0)
    assert middle_bearer(room, 1550.0, 505.0, 100.0) == 845.0


def test_half_a_bearer_is_added_to_its_centre() -> None:
    assert middle_bearer(WORKED, 1612.0, 505.0, 100.0) == 1612.0 - 505.0 - 200.0 + 22.5


def test_limits_of_the_middle_bearer_by_hand() -> None:
    # low: behind the lids that fit under the ceiling 1577 - 45 - 875 - 22.5, beyond the panel 5 + 560 + 35 + 22.5
    assert WORKED.low == 634.5
    assert replace(WORKED, depth=690.0).low == 752.5
    assert replace(WORKED, longest_lid=1200.0, depth=400.0).low == 30.0 + 45.0 + 390.0 + 22.5
    # high: before the rear lid is too long 30 + 45 + 875 + 22.5, before the front lid is too short
    assert WORKED.high == 972.5
    assert replace(WORKED, longest_lid=1200.0).high == 1577.0 - 45.0 - 390.0 - 22.5


def test_one_piece_behind_the_back_where_two_do_not_fit() -> None:
    # the panel's 690 need the bearer at 752.5 or more; two pieces would put it at 734.5
    room = replace(WORKED, depth=690.0)
    assert middle_bearer(room, 1612.0, 700.0, 100.0) == 1612.0 - 700.0 - 100.0 + 22.5


def test_the_bearer_leaves_a_bay_for_the_leg_stages() -> None:
    room = replace(WORKED, stowed=860.0)
    assert not room.takes(929.5)  # bays of 832 and 580
    assert middle_bearer(room, 1612.0, 505.0, 100.0) == 30.0 + 45.0 + 22.5 + 860.0


def test_where_nothing_suits_it_stands_as_near_as_lids_allow() -> None:
    assert middle_bearer(WORKED, 1612.0, 300.0, 100.0) == WORKED.high
    assert middle_bearer(WORKED, 1612.0, 1200.0, 100.0) == 667.5  # a bay of 570 wins over the lid


def test_under_a_ceiling_too_low_for_any_lid_it_stays_between_them() -> None:
    room = replace(WORKED, longest_lid=300.0)
    assert room.low > room.high
    assert room.first <= middle_bearer(room, 1612.0, 505.0, 100.0) <= room.last


def test_a_platform_too_short_for_two_lids_and_the_stowed_panel_is_refused() -> None:
    # panel 1021 and hinges 40 + half a bearer; the front lid of 390 between two bearers
    with pytest.raises(RefusedError, match=r"a platform 900 long .* a panel 1021 deep .* by 611 together"):
        middle_bearer(replace(WORKED, front=930.0, depth=1021.0), 965.0, 505.0, 100.0)
