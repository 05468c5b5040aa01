"""The millimetres are those of the layout worked through by hand; that ways out are tight is in `test_clash`."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest

from parametric.pipeline.size import Sized
from parametric.sizing.clash import Clash

Size = Callable[..., Sized]

ROOMY = {"length_day": 3200, "ceiling": 1900}


def found(size: Size, about: str, **tables: Any) -> Clash:
    """The one clash about something."""
    (clash,) = (c for c in size(**tables).clashes if c.about == about)
    return clash


def ways(clash: Clash) -> list[str]:
    """Ways out in words."""
    return [w.says for w in clash.ways]


def test_head_room_of_the_worked_layout(size: Size) -> None:
    clash = found(size, "head room")
    assert clash.demands == ("seat 492", "sitting height 1001", "clearance 50")
    assert (clash.need, clash.have, clash.short) == (1543.0, 1320.0, 223.0)
    # 223 is more than a lower seat or leaning back can give
    assert ways(clash) == ["a roof raised to 1543 over the head while working"]


def test_82_short_is_a_lower_seat_with_knees_at_80_or_24_degrees_back(size: Size) -> None:
    """By hand: 82 over a thigh of 430 to 490 is 9.6 to 11 degrees, over the trunk from hip to crown about 24."""
    measured = {"sitting_height": 1017, "popliteal_height": 505}
    clash = found(size, "head room", van={"ceiling": 1490}, sleeper={"stature": 1980, "measured": measured})
    assert clash.demands == ("seat 505", "sitting height 1017", "clearance 50")
    assert (clash.need, clash.have, clash.short) == (1572.0, 1490.0, 82.0)
    assert "a roof raised to 1572 over the head while working" in ways(clash)
    (seat,) = (w for w in ways(clash) if w.startswith("seat"))
    (recline,) = (w for w in ways(clash) if w.startswith("recline"))
    assert re.fullmatch(r"seat 423 with knees at (79|80) degrees", seat)
    assert re.fullmatch(r"recline (23|24) degrees", recline)
    assert "head room: seat 505, sitting height 1017 and clearance 50 need 1572; there are 1490: 82 short" in clash.says


def test_a_little_short_may_be_taken_from_the_clearance(size: Size) -> None:
    clash = found(size, "head room", van={"ceiling": 1530})
    assert clash.short == 13.0
    assert {"seat 479 with knees at 88 degrees", "head clearance 37"} <= set(ways(clash))


def test_a_roof_not_over_the_whole_head_is_no_roof(size: Size) -> None:
    # the crown is near x 1230 and 200 long
    roof = {"x": [300, 1250], "y": [-600, 500], "front": 1700, "rear": 1700}
    assert found(size, "head room", van={"roof": roof}).have == 1320.0
    wider = {**roof, "x": [300, 1450]}
    assert not [c for c in size(van={"roof": wider}).clashes if c.about == "head room"]


def test_a_sloping_roof_counts_where_it_is_lowest_over_the_head(size: Size) -> None:
    roof = {"x": [300, 1700], "y": [-600, 500], "front": 1330, "rear": 1900, "lifts": False}
    sized = size(van={"roof": roof})
    (check,) = (c for c in sized.checks if c.id == "comfort.head_room" and c.mode == "desk")
    clash = next(c for c in sized.clashes if c.about == "head room")
    assert check.margin == pytest.approx(-clash.short)


@pytest.mark.parametrize(
    ("seat", "about", "need", "have"),
    [(455, "seat too low", 462.0, 455.0), (530, "seat too high", 530.0, 517.0)],
)
def test_the_seat_against_popliteal_height_and_slippers(
    size: Size, seat: int, about: str, need: float, have: float
) -> None:
    # 492 + 10, less 40 at most, more 15 at most
    clash = found(size, about, van=ROOMY, sitting={"seat_height": seat})
    assert (clash.need, clash.have) == (need, have)
    assert ways(clash)[0] == ("seat 462" if seat < 480 else "seat 517")


def test_a_wish_for_the_platform_is_what_moves_the_seat(size: Size) -> None:
    clash = found(size, "seat too high", van=ROOMY, bed={"platform_height": 460})
    assert clash.have == 517.0
    assert ways(clash)[0] == "platform_height 447, seat 517"


def test_thigh_gap_and_board_under_a_desk_wished_low(size: Size) -> None:
    # thigh 667 + 20 + 17.6
    clash = found(size, "thigh room", van=ROOMY, sitting={"desk_height": 700})
    assert clash.demands == ("seat 492", "thigh 175", "gap 20", "board 17.6")
    assert clash.need == pytest.approx(704.6)
    assert clash.have == 700.0
    assert {"desk_height 705", "seat 487", "thigh_gap 15"} <= set(ways(clash))


def test_a_thigh_that_lifts_the_desk_over_the_elbow(size: Size) -> None:
    # elbow 190: within 15 is 492 + 205; the thigh wants 704.6, whole mm 705
    measured = {"elbow_height_sitting": 190}
    clash = found(size, "desk over the elbow", van=ROOMY, sleeper={"measured": measured})
    assert (clash.need, clash.have) == (705.0, 697.0)
    assert ways(clash) == ["thigh_gap 12"]


def test_no_way_out_asks_for_less_than_nothing(size: Size) -> None:
    # 60 too much cannot be taken out of a gap of 20
    measured = {"elbow_height_sitting": 150, "thigh_clearance": 190}
    clash = found(size, "desk over the elbow", van=ROOMY, sleeper={"measured": measured})
    assert clash.short > 20.0
    assert not [w for w in ways(clash) if "gap" in w]


def test_a_desk_wished_over_or_under_the_elbow(size: Size) -> None:
    over = found(size, "desk over the elbow", van=ROOMY, sitting={"desk_height": 790})
    assert (over.need, over.have) == (790.0, 767.0)
    assert "desk_height 767" in ways(over)
    under = found(size, "desk under the elbow", van=ROOMY, sitting={"desk_height": 730})
    assert (under.need, under.have) == (737.0, 730.0)
    assert "desk_height 737" in ways(under)


def test_a_knee_under_a_desk_on_a_low_seat(size: Size) -> None:
    # knee 638 with slippers and the board against a desk at 260 over a seat of 390
    clash = found(size, "knee room", van=ROOMY, sitting={"seat_height": 390})
    assert clash.need == pytest.approx(655.6)
    assert clash.have == 650.0
    assert "desk_height 656" in ways(clash)
