from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from parametric.assembly.placed import Assembly, assemble
from parametric.brief.model import Brief
from parametric.checks.access import opening_checks
from parametric.core.check import Check, Verdict
from parametric.mechanism.model import Mechanism, frozen_map
from parametric.pipeline.size import size

Make = Callable[..., Brief]


def told(worked: Make, id: str, **tables: Any) -> Check:
    """What a check says of the worked layout, changed as asked."""
    (check,) = (c for c in size(worked(**tables)).checks if c.id == id)
    return check


@pytest.mark.parametrize(
    ("length", "slot", "verdict"),
    [(2450, 273.0, Verdict.FAIL), (2507, 330.0, Verdict.CAUTION), (2627, 450.0, Verdict.PASS)],
)
def test_the_slot_behind_the_parked_panel(worked: Make, length: int, slot: float, verdict: Verdict) -> None:
    # seat front 1612, panel 560, 5 to spare
    check = told(worked, "access.entry_slot", van={"length_day": length})
    assert (check.value, check.verdict) == (slot, verdict)


def test_a_wide_aisle_is_a_way_in(worked: Make) -> None:
    # the wall at 750, the platform from -745, strap cases of 28
    check = told(worked, "access.entry_slot", bed={"width": 1017})
    assert (check.value, check.verdict) == (450.0, Verdict.PASS)
    assert told(worked, "access.entry_slot", bed={"width": 1018}).value == 273.0


def test_the_user_may_ask_for_more(worked: Make) -> None:
    check = told(worked, "access.entry_slot", van={"length_day": 2700}, rules={"entry_slot": 550})
    assert (check.value, check.min, check.verdict) == (523.0, 550.0, Verdict.FAIL)
    assert (check.proposal or "").startswith("27 more floor length by day")


@pytest.mark.parametrize(
    ("tables", "way", "verdict"),
    [
        ({}, 317.0, Verdict.FAIL),  # the aisle; 310 beyond the foot
        ({"bed": {"width": 1100}}, 367.0, Verdict.CAUTION),
        ({"van": {"length_night": 2600}}, 460.0, Verdict.PASS),
        ({"bed": {"width": 1200}}, 310.0, Verdict.FAIL),  # now the foot
    ],
)
def test_the_way_out_of_bed(worked: Make, tables: dict[str, Any], way: float, verdict: Verdict) -> None:
    check = told(worked, "access.leave_bed", **tables)
    assert (check.value, check.verdict) == (way, verdict)


@pytest.mark.parametrize(
    ("bed", "verdict"),
    [
        ({}, Verdict.PASS),
        ({"storage_height": 327}, Verdict.PASS),
        ({"storage_height": 328}, Verdict.FAIL),
        ({"mattress": {"thickness": 130}}, Verdict.CAUTION),  # 297 clear, nothing wished
    ],
)
def test_storage(worked: Make, bed: dict[str, Any], verdict: Verdict) -> None:
    assert told(worked, "access.storage_height", bed=bed).verdict is verdict


def door(name: str, width: int, height: int, way_out: bool = True) -> dict[str, Any]:
    """An opening."""
    return {"name": name, "kind": "side", "width": width, "height": height, "way_out": way_out}


@pytest.mark.parametrize(
    ("openings", "verdict"),
    [
        ([door("a", 900, 1100), door("b", 457, 914)], Verdict.PASS),
        ([door("a", 900, 1100), door("b", 914, 457)], Verdict.PASS),
        ([door("a", 900, 1100), door("b", 456, 914)], Verdict.CAUTION),
        ([door("a", 900, 1100), door("b", 900, 1100, False)], Verdict.CAUTION),
        ([door("a", 900, 1100), door("b", 457, 914), door("hatch", 400, 400)], Verdict.PASS),
        ([], Verdict.CAUTION),
    ],
)
def test_two_ways_out_of_the_vehicle(worked: Make, openings: list[dict[str, Any]], verdict: Verdict) -> None:
    assert told(worked, "access.way_out", van={"opening": openings}).verdict is verdict


@pytest.fixture
def assembled(mechanism: Mechanism) -> Assembly:
    return assemble(mechanism)


def judged(demo: Make, assembled: Assembly, *openings: dict[str, Any]) -> list[Check]:
    """Does everything go in through these."""
    return opening_checks(demo(van={"opening": list(openings)}), assembled)


def test_parts_go_in_through_the_opening_that_suits(demo: Make, assembled: Assembly) -> None:
    (check,) = judged(demo, assembled, door("slit", 1200, 130), door("hatch", 300, 300))
    assert check.verdict is Verdict.PASS


def test_the_longest_side_goes_in_first(demo: Make, assembled: Assembly) -> None:
    # the panel is 560 by 1083: 560 decides
    assert judged(demo, assembled, door("hatch", 561, 130))[0].verdict is Verdict.PASS
    (check,) = judged(demo, assembled, door("hatch", 559, 130))
    assert (check.verdict, check.parts) == (Verdict.FAIL, ("panel",))


def test_foam_bends_but_timber_does_not(demo: Make, assembled: Assembly, mechanism: Mechanism) -> None:
    stuck = {c.parts[0] for c in judged(demo, assembled, door("slot", 100, 100))}
    assert "panel" in stuck
    assert not {p for p in stuck if p.startswith("mattress")}
    soft_only = {n: d for n, d in mechanism.parts.items() if n.startswith("mattress")}
    foam = replace(assembled, items=frozen_map({k: i for k, i in assembled.items.items() if k.startswith("mattress")}))
    assert len(soft_only) == 3
    assert judged(demo, foam, door("slot", 100, 100))[0].verdict is Verdict.PASS


def test_a_roof_hatch_is_no_way_in_for_parts(demo: Make, assembled: Assembly) -> None:
    (check,) = judged(demo, assembled, {**door("hatch", 900, 900), "kind": "roof"})
    assert check.verdict is Verdict.CAUTION
    assert check.proposal == "add [[van.opening]] tables"
