from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest

from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.kinds.cleat_legs import BOLT_HIGH, BOLT_LOW, LIP
from parametric.mechanism.model import VAN, ContactKind
from parametric.mechanism.modes import DESKS
from parametric.mechanism.part import Bar, Board, Pocket


def box(built: Any, name: str, mode: str) -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


def groove(built: Any) -> Pocket:
    """The groove of the desk cleat."""
    cleat = built.mechanism.parts["desk_cleat"]
    assert isinstance(cleat, Bar)
    (pocket,) = cleat.pockets
    return pocket


def uprights(built: Any) -> list[str]:
    """Names of the uprights."""
    return [n for n in built.mechanism.parts if n.startswith("upright_")]


@pytest.mark.parametrize("mode", DESKS)
def test_the_panels_wall_edge_runs_in_the_groove(built: Any, mode: str) -> None:
    pose, pocket, panel = built.assembly.poses[mode]["desk_cleat"], groove(built), box(built, "panel", mode)
    lo, hi = pose.point(pocket.lo), pose.point(pocket.hi)
    assert panel[0][2] == pytest.approx(lo[2])  # lies on the lip
    assert hi[2] - panel[1][2] == pytest.approx(1.0)  # and keeps 1 above
    assert panel[0][1] - lo[1] == pytest.approx(3.0)
    assert hi[1] - panel[0][1] == pytest.approx(22.0)  # so much of it is held
    assert lo[0] - 1e-6 <= panel[0][0] < panel[1][0] <= hi[0] + 1e-6  # from near to parked


def test_the_groove_leaves_a_lip_above_and_below(exchange: Any) -> None:
    cleat, pocket = exchange.mechanism.parts["desk_cleat"], groove(exchange)
    assert pocket.lo[2] == LIP == 30.0
    assert cleat.height - pocket.hi[2] == pytest.approx(70.0 - 30.0 - 17.6 - 1.0)
    assert cleat.width - (pocket.hi[1] - pocket.lo[1]) == 20.0


def test_the_cleat_is_round_over_the_sleeper(exchange: Any) -> None:
    cleat = exchange.mechanism.parts["desk_cleat"]
    # the two long edges away from the wall
    assert cleat.radii == (0.0, 10.0, 10.0, 0.0)


def test_uprights_stand_on_the_wall_where_it_is_narrowest(built: Any) -> None:
    assert len(uprights(built)) in (2, 3)
    for name in uprights(built):
        lo, hi = box(built, name, "desk")
        assert lo[1] == pytest.approx(built.dims.widths.wall_desk)
        assert hi[1] == pytest.approx(box(built, "desk_cleat", "desk")[0][1])


def rows(built: Any, upright: str) -> list[tuple[float, float]]:
    """Places (x, z) of the holes of an upright in the van."""
    design = built.mechanism.parts[upright]
    assert isinstance(design, Board)
    pose = built.assembly.poses["desk"][upright]
    found = (pose.point(h.at) for h in design.holes if h.purpose.startswith("M8"))
    return [(x, z) for x, _, z in found]


def test_every_step_finds_holes_for_both_bolts_in_every_upright(built: Any) -> None:
    dims = built.dims
    for k, upright in enumerate(uprights(built), start=1):
        holes = rows(built, upright)
        x = built.assembly.poses["desk"][f"cleat_bolt_{k}_low"].translation[0]
        for step in dims.steps:
            under = step - dims.heights.panel - LIP
            for up in (BOLT_LOW, BOLT_HIGH):
                assert any(math.dist((x, under + up), hole) < 1e-6 for hole in holes), (upright, step)


def test_rows_have_the_pitch_of_the_steps_and_none_to_spare(built: Any) -> None:
    dims = built.dims
    heights = sorted(z for _, z in rows(built, "upright_1"))
    assert [b - a for a, b in pairwise(heights)] == pytest.approx([20.0] * (len(heights) - 1))
    assert heights[-1] - heights[0] == pytest.approx(dims.steps[-1] - dims.steps[0] + BOLT_HIGH - BOLT_LOW)


@pytest.mark.parametrize("mode", ["desk", "desk/low", "desk/high"])
def test_bolts_pass_cleat_and_upright_on_one_axis(built: Any, mode: str) -> None:
    cleat, poses = built.mechanism.parts["desk_cleat"], built.assembly.poses[mode]
    bores = [poses["desk_cleat"].point(h.at) for h in cleat.holes if h.purpose == "M8"]
    for k, upright in enumerate(uprights(built), start=1):
        for row in ("low", "high"):
            x, _, z = poses[f"cleat_bolt_{k}_{row}"].translation
            assert any(math.dist((x, z), (bx, bz)) < 1e-6 for bx, _, bz in bores)
            assert any(math.dist((x, z), hole) < 1e-6 for hole in rows(built, upright))


@pytest.mark.parametrize("mode", DESKS)
def test_the_locking_pin_passes_cleat_and_panel_on_one_axis(built: Any, mode: str) -> None:
    poses = built.assembly.poses[mode]
    pin = poses["locking_pin"].translation
    panel = built.mechanism.parts["panel"]
    (hole,) = (h for h in panel.holes if h.purpose == "locking pin")
    assert math.dist(poses["panel"].point(hole.at)[:2], pin[:2]) < 1e-6
    cleat = built.mechanism.parts["desk_cleat"]
    lined = [
        h for h in cleat.holes if h.purpose == "pin" and math.dist(poses["desk_cleat"].point(h.at)[:2], pin[:2]) < 1e-6
    ]
    assert len(lined) == 2  # through the upper lip, into the lower
    assert {h.through for h in lined} == {True, False}


def test_the_panel_is_held_at_the_desk_but_for_its_slide(built: Any) -> None:
    (slides,) = (c for c in built.mechanism.contacts if (c.a, c.b) == ("panel", "desk_cleat"))
    assert slides.kind is ContactKind.SLIDES
    assert slides.travel == built.dims.lengths.parked - built.dims.lengths.near
    assert {"+n", "-n"} <= slides.resists
    pins = [c for c in built.mechanism.contacts if (c.a, c.b) == ("panel", "locking_pin")]
    assert [c.resists for c in pins] == [frozenset({"u", "v"})]


def test_the_cleat_goes_with_the_step_and_stays_otherwise(built: Any) -> None:
    poses, dims = built.assembly.poses, built.dims
    for mode in built.mechanism.modes:
        z = poses[mode]["desk_cleat"].translation[2]
        assert z == pytest.approx(dims.desk_at(mode) - dims.heights.panel - LIP)


def test_uprights_are_screwed_to_the_wall(built: Any) -> None:
    for name in uprights(built):
        (contact,) = (c for c in built.mechanism.contacts if (c.a, c.b) == (name, VAN))
        assert sum(f.count for f in contact.fasteners) == 2
