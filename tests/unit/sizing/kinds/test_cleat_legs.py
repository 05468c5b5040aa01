from __future__ import annotations

import pytest

from parametric.core.errors import RefusedError
from parametric.sizing.kinds import cleat_legs as rules

SIZES = [(210.0, 500.0), (404.4, 754.4), (404.4, 774.4), (500.0, 845.0), (500.0, 845.2), (600.0, 754.4), (700.0, 720.0)]


@pytest.mark.parametrize(("section", "overlap"), [(25.0, 100.0), (30.0, 100.0), (33.4, 100.2), (40.0, 120.0)])
def test_stages_overlap_by_100_and_three_sections(section: float, overlap: float) -> None:
    assert rules.least_overlap(section) == pytest.approx(overlap)


def test_stages_of_the_worked_layout_are_exchanged() -> None:
    # night 422 - 17.6 = 404.4; upper 404.4 - 25 fittings - 5 showing; highest desk step 772 - 17.6 = 754.4
    legs = rules.stages(404.4, 754.4, 30.0)
    assert legs.kind == "exchange"
    assert legs.upper == pytest.approx(374.4)
    assert legs.lower_desk == pytest.approx(754.4 - 25.0 - 374.4 + 100.0)
    assert legs.lower_night == 105.0
    assert legs.overlap == 100.0


def test_a_high_platform_lets_one_stage_do_both() -> None:
    legs = rules.stages(600.0, 754.4, 30.0)
    assert (legs.kind, legs.lower_night) == ("telescopic", 0.0)
    assert legs.upper == 570.0
    assert legs.lower_desk == pytest.approx(259.4)


@pytest.mark.parametrize(("desk_high", "kind"), [(842.0, "telescopic"), (842.1, "exchange")])
def test_one_stage_does_both_up_to_the_plug(desk_high: float, kind: str) -> None:
    # upper 470: the lower stage may be 470 - 25 plug - 3 clear + 5 showing long
    assert rules.stages(500.0, desk_high, 30.0).kind == kind


@pytest.mark.parametrize(("night", "desk_high"), SIZES)
def test_the_stages_reach_night_and_highest_step(night: float, desk_high: float) -> None:
    legs = rules.stages(night, desk_high, 30.0)
    fittings = rules.HEAD + rules.FOOT
    assert fittings + legs.upper + legs.lower_desk - legs.overlap == pytest.approx(desk_high)
    lower = legs.lower_night or legs.lower_desk
    inside = fittings + legs.upper + lower - night
    assert lower - inside == pytest.approx(rules.SHOW)  # that much of it shows at night
    if legs.kind == "telescopic":
        assert inside <= legs.upper - rules.PLUG + 1e-9


def test_a_low_platform_is_refused_with_what_it_takes() -> None:
    with pytest.raises(RefusedError, match="the panel is 209 above the floor at night, a two-stage leg needs 210"):
        rules.stages(209.0, 600.0, 30.0)
    assert rules.stages(210.0, 600.0, 30.0).upper == 180.0


def test_legs_stand_clear_of_seat_and_stiffener() -> None:
    # overlap 249 + half a leg 15 + 15; depth 560 - stiffener 20 - gap 5 - half a leg 15 - half the rest of its foot 10
    assert rules.near_leg(249.0, 30.0) == 279.0
    assert rules.far_leg(560.0, 20.0, 30.0) == 510.0


@pytest.mark.parametrize("overlap", [0.0, 150.0, 249.0, 400.0])
def test_the_least_depth_leaves_just_150_between_the_legs(overlap: float) -> None:
    depth = rules.depth_for(overlap, 20.0, 30.0)
    assert rules.far_leg(depth, 20.0, 30.0) - rules.near_leg(overlap, 30.0) == pytest.approx(rules.LEAST_APART)
