from __future__ import annotations

import math
from typing import Any

import pytest

from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.model import VAN, ContactKind, Release
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Bar, Board


def box(built: Any, name: str, mode: str) -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


@pytest.mark.parametrize("mode", NIGHTS)
def test_at_night_it_is_flush_with_the_slats_and_3_off_them(built: Any, mode: str) -> None:
    le, lo, hi = built.dims.lengths, *box(built, "panel", mode)
    assert hi[2] == pytest.approx(built.dims.heights.platform)
    assert lo[0] == le.front + 3.0
    assert hi[0] == pytest.approx(le.rear + le.bed)
    assert hi[1] == pytest.approx(built.dims.widths.left)


def test_its_wall_edge_keeps_fingers_whole_at_night(built: Any) -> None:
    lo, _ = box(built, "panel", "night")
    assert lo[1] - built.dims.widths.wall_night == pytest.approx(25.0)
    assert box(built, "night_cleat", "night")[1][1] - lo[1] >= 20.0 - 1e-9


@pytest.mark.parametrize("mode", DESKS)
def test_at_the_desk_its_top_is_the_desk(built: Any, mode: str) -> None:
    lo, hi = box(built, "panel", mode)
    assert hi[2] == pytest.approx(built.dims.desk_at(mode))
    assert lo[0] == (built.dims.lengths.parked if mode == "desk/parked" else built.dims.lengths.near)


@pytest.mark.parametrize("mode", PANEL_STOWED)
def test_stowed_it_lies_on_the_rear_lid_short_of_the_hinges(built: Any, mode: str) -> None:
    lo, hi = box(built, "panel", mode)
    assert lo[2] == built.dims.heights.platform
    assert hi[0] <= built.dims.lengths.middle - 22.5 - 35.0 + 1e-9
    stiffener = box(built, "stiffener", mode)
    assert stiffener[1][2] == pytest.approx(lo[2])
    assert 0.0 < stiffener[0][0] < stiffener[1][0] < built.dims.lengths.rear


def test_ledger_and_night_cleat_carry_it_at_its_measured_thickness(built: Any) -> None:
    under = built.dims.heights.platform - built.dims.heights.panel
    for holder in ("ledger", "night_cleat"):
        assert box(built, holder, "night")[1][2] == pytest.approx(under)
        (contact,) = (
            c for c in built.mechanism.contacts if (c.a, c.b) == ("panel", holder) and c.kind is ContactKind.RESTS
        )
        assert contact.modes == set(NIGHTS)
        assert contact.release is Release.HAND
    bearing = box(built, "ledger", "night")[1][0] - box(built, "panel", "night")[0][0]
    assert bearing >= 20.0


def test_the_ledger_is_round_where_calves_touch_it(exchange: Any) -> None:
    ledger = exchange.mechanism.parts["ledger"]
    assert isinstance(ledger, Bar)
    assert sorted(ledger.radii) == [0.0, 0.0, 10.0, 10.0]
    pose = exchange.assembly.poses["desk"]["ledger"]
    # the rounded long edges are the two that face the legs
    edges = ((0.0, 0.0), (ledger.width, 0.0), (ledger.width, ledger.height), (0.0, ledger.height))
    front = [pose.point((0.0, y, z))[0] for (y, z), r in zip(edges, ledger.radii, strict=True) if r > 0.0]
    assert front == pytest.approx([exchange.dims.lengths.seat_front] * 2)


def test_face_grain_runs_along_the_long_side(built: Any) -> None:
    panel = built.mechanism.parts["panel"]
    assert isinstance(panel, Board)
    assert panel.grain == ("y" if built.dims.widths.panel_length > built.dims.lengths.panel_depth else "x")


def test_the_stiffener_is_on_the_far_edge_beyond_the_knees(built: Any) -> None:
    lo, hi = box(built, "stiffener", "desk")
    panel = box(built, "panel", "desk")
    assert hi[0] == pytest.approx(panel[1][0])
    assert hi[2] == pytest.approx(panel[0][2])
    assert hi[2] - lo[2] == 60.0
    assert lo[0] > built.dims.lengths.near + 400.0


def test_two_dowels_stop_it_shifting_at_night(built: Any) -> None:
    for k in (1, 2):
        name = f"ledger_dowel_{k}"
        lo, hi = box(built, name, "night")
        panel = box(built, "panel", "night")
        assert hi[2] - panel[0][2] == pytest.approx(12.0)
        assert panel[0][0] < lo[0] < hi[0] < panel[1][0]
        x, y = (lo[0] + hi[0]) / 2.0, (lo[1] + hi[1]) / 2.0
        home = built.assembly.poses["night"]["panel"]
        over = [h for h in built.mechanism.parts["panel"].holes if h.purpose == "over dowel"]
        assert any(math.dist(home.point(h.at)[:2], (x, y)) < 1e-6 and h.diameter > 10.0 for h in over)


def test_latches_hold_it_down_at_night_and_their_keepers_travel_with_it(built: Any) -> None:
    latched = [c for c in built.mechanism.contacts if c.kind is ContactKind.LATCHED and c.a.endswith("_keeper")]
    assert len(latched) == 3
    for contact in latched:
        assert contact.modes == set(NIGHTS)
        assert "+n" in contact.resists
        for mode in built.mechanism.modes:
            keeper, panel = box(built, contact.a, mode), box(built, "panel", mode)
            assert all(panel[0][i] < keeper[0][i] < keeper[1][i] < panel[1][i] for i in range(3))


def test_keeper_pockets_leave_the_underside_flat(built: Any) -> None:
    """A keeper is let in under flush: the stowed panel rests on wood."""
    for k in (1, 2, 3):
        panel, keeper = box(built, "panel", "drive"), box(built, f"latch_{k}_keeper", "drive")
        assert keeper[0][2] - panel[0][2] == pytest.approx(2.1)


def test_straps_hold_panel_and_mattress_on_the_road_only(built: Any) -> None:
    strapped = [c for c in built.mechanism.contacts if c.kind is ContactKind.STRAPPED]
    assert {c.a for c in strapped} == {"panel", "mattress_end", "mattress_front"}
    assert all(c.modes == {"drive"} for c in strapped)


def test_the_slide_leads_from_desk_to_parked(built: Any) -> None:
    (joint,) = (j for j in built.mechanism.joints if j.name == "panel_slide")
    poses = built.assembly.poses
    for value, mode in ((joint.low, "desk"), (joint.high, "desk/parked")):
        slid = joint.pose(value) @ poses["desk"]["panel"]
        assert slid.matrix == pytest.approx(poses[mode]["panel"].matrix, abs=2e-6)


def test_the_night_cleat_is_screwed_to_the_wall_four_times(built: Any) -> None:
    (contact,) = (c for c in built.mechanism.contacts if (c.a, c.b) == ("night_cleat", VAN))
    assert sum(f.count for f in contact.fasteners) == 4
    assert box(built, "night_cleat", "night")[0][0] > built.dims.lengths.seat_front
