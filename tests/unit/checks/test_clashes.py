"""Clashes as checks: a design with one never passes."""

from __future__ import annotations

from parametric.checks.clashes import clash_checks
from parametric.core.check import Verdict
from parametric.sizing.clash import Clash, Way


def _clash(about: str, *ways: Way) -> Clash:
    return Clash(about=about, demands=("seat 500", "head 1000"), need=1500.0, have=1480.0, ways=ways)


def test_a_clash_is_a_fail_by_its_millimetres() -> None:
    (check,) = clash_checks([_clash("head room", Way(says="a roof 20 higher", changes={}))])
    assert (check.id, check.mode, check.verdict) == ("clash.head_room", "desk", Verdict.FAIL)
    assert (check.value, check.max, check.margin) == (1500.0, 1480.0, -20.0)
    assert check.proposal == "a roof 20 higher"
    assert "Any one of" not in check.says


def test_what_a_way_opens_is_told_with_it() -> None:
    way = Way(says="seat 480", changes={}, opens=("seat too low 12 short",))
    (check,) = clash_checks([_clash("head room", way)])
    assert check.proposal == "seat 480 (but then seat too low 12 short)"


def test_the_mode_is_where_it_hurts() -> None:
    modes = [c.mode for c in clash_checks([_clash("sleeping length"), _clash("way in to the seat"), _clash("door")])]
    assert modes == ["night", "desk/parked", None]
    assert clash_checks([_clash("way in to the seat")])[0].variant == "parked"


def test_no_way_out_is_said() -> None:
    (check,) = clash_checks([_clash("head room")])
    assert check.proposal is None
