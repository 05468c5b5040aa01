from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest

from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.legs import LEGS, PINS_AT
from parametric.mechanism.model import VAN, ContactKind
from parametric.mechanism.modes import DESKS, NIGHTS
from parametric.mechanism.part import Tube
from parametric.sizing.kinds.cleat_legs import least_overlap

STANDING = (*DESKS, *NIGHTS)


def box(built: Any, name: str, mode: str) -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


def lower(built: Any, leg: str, mode: str) -> str:
    """The lower stage a leg stands on in a mode."""
    if built.dims.legs.kind == "telescopic":
        return f"leg_{leg}_lower"
    return f"leg_{leg}_lower_{'night' if mode in NIGHTS else 'desk'}"


def axes(built: Any, name: str, mode: str) -> list[tuple[float, float]]:
    """Places (y, z) of the holes of an upright tube: they run along the vehicle."""
    design, pose = built.mechanism.parts[name], built.assembly.poses[mode][name]
    assert isinstance(design, Tube)
    assert all(abs(pose.direction(h.into)[0]) == 1.0 for h in design.holes)
    return [(y, z) for _, y, z in (pose.point(h.at) for h in design.holes)]


@pytest.mark.parametrize(("name", "kind"), [("exchange", "exchange"), ("telescopic", "telescopic")])
def test_both_kinds_occur(request: pytest.FixtureRequest, name: str, kind: str) -> None:
    built = request.getfixturevalue(name)
    assert built.dims.legs.kind == kind
    stages = [
        n
        for n in built.mechanism.parts
        if n.startswith("leg_near_lower") and n.count("_") == (3 if kind == "exchange" else 2)
    ]
    assert len(stages) == (2 if kind == "exchange" else 1)


def test_two_legs_stand_apart_clear_of_the_seat(built: Any) -> None:
    near, far = (box(built, f"leg_{leg}_upper", "desk") for leg in LEGS)
    assert (far[0][0] + far[1][0] - near[0][0] - near[1][0]) / 2.0 >= 150.0 - 1e-6
    assert near[0][0] >= built.dims.lengths.seat_front + 14.0  # half a millimetre of rounding on the near edge


@pytest.mark.parametrize("mode", STANDING)
@pytest.mark.parametrize("leg", LEGS)
def test_a_leg_reaches_from_floor_to_panel(built: Any, leg: str, mode: str) -> None:
    stage = lower(built, leg, mode)
    assert box(built, f"{stage}_foot", mode)[0][2] == pytest.approx(0.0, abs=1e-6)
    upper, panel = box(built, f"leg_{leg}_upper", mode), box(built, "panel", mode)
    assert upper[1][2] + 10.0 == pytest.approx(panel[0][2])  # the flange between
    assert panel[1][1] - (upper[0][1] + upper[1][1]) / 2.0 == pytest.approx(25.0)


@pytest.mark.parametrize("mode", STANDING)
@pytest.mark.parametrize("leg", LEGS)
def test_the_lower_stage_is_inside_the_upper_one(built: Any, leg: str, mode: str) -> None:
    upper, stage = box(built, f"leg_{leg}_upper", mode), box(built, lower(built, leg, mode), mode)
    overlap = stage[1][2] - upper[0][2]
    assert overlap >= least_overlap(30.0) - 1e-6
    assert stage[1][2] <= upper[1][2] - 25.0 + 1e-6  # short of the plug of the head
    for i in (0, 1):
        assert upper[0][i] + 2.0 < stage[0][i]
        assert stage[1][i] < upper[1][i] - 2.0


@pytest.mark.parametrize("mode", STANDING)
@pytest.mark.parametrize("leg", LEGS)
def test_both_pins_pass_both_stages(built: Any, leg: str, mode: str) -> None:
    upper, stage = axes(built, f"leg_{leg}_upper", mode), axes(built, lower(built, leg, mode), mode)
    for k in (1, 2):
        pin = box(built, f"leg_{leg}_pin_{k}", mode)
        y, z = (pin[0][1] + pin[1][1]) / 2.0, (pin[0][2] + pin[1][2]) / 2.0
        assert any(math.dist((y, z), hole) < 1e-6 for hole in upper)
        assert any(math.dist((y, z), hole) < 1e-6 for hole in stage)
        assert pin[1][0] - pin[0][0] > 30.0


def heights(tube: Tube, top: float) -> list[float]:
    """Heights of the holes of a tube that hangs down from a height."""
    return [top - h.at[0] for h in tube.holes]


def test_pin_holes_line_up_at_every_step_and_at_night(built: Any) -> None:
    """Worked out anew from the floor: the foot is 15 high, the flange 10."""
    dims, parts = built.dims, built.mechanism.parts
    surfaces = [(step, "desk") for step in dims.steps] + [(dims.heights.platform, "night")]
    for surface, mode in surfaces:
        upper, stage = parts["leg_near_upper"], parts[lower(built, "near", mode)]
        assert isinstance(upper, Tube)
        assert isinstance(stage, Tube)
        above = heights(upper, surface - dims.heights.panel - 10.0)
        below = heights(stage, 15.0 + stage.length)
        assert len(above) == len(PINS_AT) == 2
        for z in above:
            assert min(abs(z - other) for other in below) < 2e-3, (surface, z)


def test_no_hole_of_a_lower_stage_is_idle(built: Any) -> None:
    dims, parts = built.dims, built.mechanism.parts
    for mode in ("desk", "night"):
        stage = parts[lower(built, "near", mode)]
        upper = parts["leg_near_upper"]
        surfaces = (
            [*dims.steps, dims.heights.platform]
            if dims.legs.kind == "telescopic"
            else ([*dims.steps] if mode == "desk" else [dims.heights.platform])
        )
        used = {round(z, 2) for s in surfaces for z in heights(upper, s - dims.heights.panel - 10.0)}
        assert {round(z, 2) for z in heights(stage, 15.0 + stage.length)} == used


def test_holes_of_a_stage_leave_metal_between_them(built: Any) -> None:
    for name in ("leg_near_upper", lower(built, "near", "desk"), lower(built, "near", "night")):
        tube = built.mechanism.parts[name]
        along = sorted(h.at[0] for h in tube.holes)
        assert min(b - a for a, b in pairwise([-3.0, *along, tube.length + 3.0])) >= 6.2 + 3.0, name


def test_legs_are_screwed_into_inserts_of_the_panel(built: Any) -> None:
    for leg in LEGS:
        for mode in STANDING:
            insert, head = box(built, f"leg_{leg}_insert", mode), box(built, f"leg_{leg}_head", mode)
            assert [(a + b) / 2.0 for a, b in zip(insert[0][:2], insert[1][:2], strict=True)] == pytest.approx(
                [(a + b) / 2.0 for a, b in zip(head[0][:2], head[1][:2], strict=True)]
            )
            panel = box(built, "panel", mode)
            assert panel[0][2] < insert[0][2] < insert[1][2] < panel[1][2]


def test_feet_rest_on_the_floor_where_their_stage_stands(built: Any) -> None:
    on_floor = {
        (c.a, mode)
        for c in built.mechanism.contacts
        if c.b == VAN and c.kind is ContactKind.RESTS and c.a.endswith("_foot")
        for mode in built.mechanism.modes
        if c.holds_in(mode)
    }
    assert on_floor == {(f"{lower(built, leg, mode)}_foot", mode) for leg in LEGS for mode in STANDING}
