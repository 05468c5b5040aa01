from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from itertools import pairwise
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.core.errors import RefusedError
from parametric.pipeline.size import Sized
from parametric.sizing.solve import people

Make = Callable[..., Brief]
Size = Callable[..., Sized]


def found(sized: Sized, id: str, mode: str | None = None) -> Check:
    """The one check of an id (in a mode)."""
    (check,) = (c for c in sized.checks if c.id == id and mode in (None, c.mode))
    return check


class TestWorkedLayout:
    """The layout worked through by hand: a man of 1960, measured, bed along the right wall of a small van."""

    def test_heights(self, size: Size) -> None:
        heights = size().dimensions.heights
        assert heights.seat == 492.0
        assert heights.platform == 422.0
        assert heights.desk == 752.0
        assert heights.panel == 17.6  # 18 nominal
        assert heights.desk_under == pytest.approx(734.4)
        assert heights.desk_under - heights.thigh == pytest.approx(67.4)
        assert heights.knee == 638.0  # 628 and slippers
        assert heights.desk_under - heights.knee == pytest.approx(96.4)

    def test_head(self, size: Size) -> None:
        sized = size()
        (clash,) = (c for c in sized.clashes if c.about == "head room")
        assert sized.dimensions.heights.head == 1493.0
        assert (clash.need, clash.have) == (1543.0, 1320.0)

    def test_lengths(self, size: Size) -> None:
        lengths = size().dimensions.lengths
        assert lengths.bed == 2110.0  # 1960 + 150
        assert lengths.panel_depth == 560.0
        assert lengths.extension == 563.0
        assert lengths.platform == 1547.0
        # seat front: rear face 30, platform, ledger 35
        assert lengths.seat_front == 30.0 + 1547.0 + 35.0
        assert lengths.back == 1612.0 + 60.0 - 565.0
        assert lengths.belly == 1107.0 + 226.0
        assert lengths.near == 1333.0 + 30.0
        assert lengths.knee == 1107.0 + 691.0
        # two mattress pieces of 100 between the propped lid and the back, half a bearer of 45
        assert lengths.middle == round(1612.0 - 505.0 - 200.0 + 22.5)

    def test_the_panel_reaches_about_250_over_the_seat(self, size: Size) -> None:
        dims = size().dimensions
        overlap = dims.lengths.seat_front - dims.lengths.near
        assert overlap == 249.0
        assert dims.legs.near == overlap + 15.0 + 15.0
        assert dims.legs.far == 510.0

    def test_legs_and_steps(self, size: Size) -> None:
        dims = size().dimensions
        assert dims.steps == (732.0, 752.0, 772.0)  # the elbow is measured, so one step either way
        assert dims.legs.kind == "exchange"
        # night: the panel's underside at 404.4, less fittings 25 and 5 showing
        assert dims.legs.upper == pytest.approx(374.4)
        assert dims.legs.lower_desk == pytest.approx(455.0)
        assert dims.legs.lower_night == 105.0

    def test_widths(self, size: Size) -> None:
        widths = size().dimensions.widths
        assert (widths.right, widths.left) == (-745.0, 405.0)
        assert widths.panel_length == 1130.0
        assert widths.aisle == 750.0 - 405.0 - 28.0  # strap cases on the left rail

    def test_getting_in_needs_57_more_than_the_van_has(self, size: Size) -> None:
        sized = size()
        (clash,) = (c for c in sized.clashes if c.about == "way in to the seat")
        # seat front 1612, slot 330, panel 560 and 5 to spare: 2507 of 2450
        assert (clash.need, clash.have) == (2507.0, 2450.0)
        assert found(sized, "access.entry_slot").value == 2450.0 - 5.0 - 560.0 - 1612.0


def test_a_measured_thickness_replaces_the_mean(size: Size) -> None:
    dims = size(stock={"panel_measured": 18.1}).dimensions
    assert dims.heights.panel == 18.1
    assert dims.heights.desk == 752.0
    assert dims.legs.upper == pytest.approx(422.0 - 18.1 - 30.0)


def test_an_air_mat_counts_as_mattress(size: Size) -> None:
    heights = size(bed={"mattress": {"air_mat": 10}}).dimensions.heights
    assert (heights.mattress, heights.platform, heights.seat) == (110.0, 412.0, 492.0)


def test_an_unmeasured_elbow_asks_for_more_steps(size: Size) -> None:
    steps = size(sleeper={"measured": {"elbow_height_sitting": None}}).dimensions.steps
    assert len(steps) > 3
    assert {b - a for a, b in pairwise(steps)} == {20.0}


def test_no_step_presses_the_thigh(size: Size) -> None:
    # elbow 225 over a thigh of 175 + 20 + 17.6: 12.4 to spare, so no lower step
    dims = size(sleeper={"measured": {"elbow_height_sitting": 225}}).dimensions
    assert dims.heights.desk == 717.0
    assert dims.steps == (717.0, 737.0)
    assert dims.heights.desk_low == dims.heights.desk


def test_no_step_presses_the_knee(size: Size) -> None:
    # a seat 72 lower than the legs want: the desk comes down with it and the knee at 638 stays
    dims = size(sitting={"seat_height": 420}).dimensions
    assert dims.heights.desk == 680.0
    assert dims.heights.desk - 17.6 - dims.heights.knee == pytest.approx(24.4)
    assert dims.steps == (660.0, 680.0, 700.0)
    lower = size(sitting={"seat_height": 415}).dimensions
    assert lower.heights.desk_under - lower.heights.knee == pytest.approx(19.4)
    assert lower.steps == (675.0, 695.0)


@pytest.mark.parametrize("thigh", [174.5, 175.0, 175.3])
def test_rounding_to_whole_mm_never_eats_the_thigh_gap(size: Size, thigh: float) -> None:
    sized = size(sleeper={"measured": {"elbow_height_sitting": 180, "thigh_clearance": thigh}})
    assert found(sized, "comfort.thigh_gap", "desk").verdict is Verdict.PASS
    assert sized.dimensions.heights.desk.is_integer()


class TestWishes:
    """What the brief asks for is kept, and judged."""

    def test_platform_height(self, size: Size) -> None:
        sized = size(bed={"platform_height": 470})
        assert sized.dimensions.heights.platform == 470.0
        assert sized.dimensions.heights.seat == 540.0
        check = found(sized, "comfort.seat_height")
        assert (check.value, check.verdict) == (38.0, Verdict.FAIL)
        assert check.proposal == "slat top at 422"

    def test_platform_length(self, size: Size) -> None:
        sized = size(bed={"platform_length": 1500})
        assert sized.dimensions.lengths.platform == 1500.0
        assert sized.dimensions.lengths.panel_depth == 2110.0 - 1500.0 - 3.0

    def test_a_long_platform_leaves_a_shallow_desk(self, size: Size) -> None:
        check = found(size(bed={"platform_length": 1600}), "comfort.desk_depth")
        assert (check.value, check.verdict) == (507.0, Verdict.CAUTION)

    def test_desk_height(self, size: Size) -> None:
        sized = size(sitting={"desk_height": 700})
        assert sized.dimensions.heights.desk == 700.0
        assert found(sized, "comfort.desk_height", "desk").verdict is Verdict.FAIL  # 52 under the elbow
        assert found(sized, "comfort.thigh_gap", "desk").value == pytest.approx(15.4)

    def test_seat_height(self, size: Size) -> None:
        sized = size(sitting={"seat_height": 450})
        assert (sized.dimensions.heights.seat, sized.dimensions.heights.platform) == (450.0, 380.0)
        check = found(sized, "comfort.seat_height")
        assert (check.value, check.verdict) == (-52.0, Verdict.FAIL)

    def test_bed_length(self, size: Size) -> None:
        sized = size(bed={"length": 2050})
        assert sized.dimensions.lengths.bed == 2050.0
        check = found(sized, "sleep.length")
        assert (check.value, check.verdict) == (90.0, Verdict.CAUTION)

    def test_a_bed_longer_than_the_floor_is_cut_to_it(self, size: Size) -> None:
        sized = size(bed={"length": 2440})
        assert sized.dimensions.lengths.bed == 2450.0 - 30.0 - 5.0
        assert any(c.about == "sleeping length" for c in sized.clashes)

    def test_storage_height(self, size: Size) -> None:
        sized = size(bed={"storage_height": 340})
        assert sized.dimensions.heights.storage == 327.0
        assert found(sized, "access.storage_height").verdict is Verdict.FAIL

    @pytest.mark.parametrize("slot", [250, 600, 700])
    def test_entry_slot(self, size: Size, slot: int) -> None:
        sized = size(van={"length_day": 3200}, rules={"entry_slot": slot})
        assert found(sized, "access.entry_slot").verdict is Verdict.PASS


def test_things_that_stay_take_feet_and_desk_their_room(size: Size) -> None:
    low = {"name": "step", "x": [2100, 2300], "y": [-300, 0], "z": [0, 90]}
    assert size(van={"fixed": [low]}).dimensions.lengths.foot_end == 2100.0
    high = {"name": "cupboard", "x": [2300, 2450], "y": [-700, 0], "z": [600, 1000]}
    lengths = size(van={"fixed": [high]}).dimensions.lengths
    assert lengths.foot_end == 2450.0
    assert lengths.parked == 2300.0 - 5.0 - 560.0


@pytest.mark.parametrize(
    ("tables", "says"),
    [
        ({"arrangement": {"extension": "flap"}}, 'arrangement.extension = "flap" is not built by this version'),
        ({"arrangement": {"support": "trestle"}}, 'write "cleat_legs"'),
        ({"sitting": {"seat": "crossed"}}, 'sitting.seat = "crossed"'),
        ({"bed": {"direction": "across", "length": 1400}}, 'bed.direction = "across"'),
        ({"bed": {"side": "left"}}, 'bed.side = "left" is not built by this version; write "right"'),
        ({"stock": {"panel_thickness": 12}}, "takes 14 to 18.6, so use 15 or 18"),
    ],
)
def test_what_is_not_built_is_refused_with_what_is(size: Size, tables: dict[str, Any], says: str) -> None:
    with pytest.raises(RefusedError, match=says.replace(".", r"\.")):
        size(**tables)


def test_all_refusals_come_together(size: Size) -> None:
    with pytest.raises(RefusedError, match=r"extension.*support.*seat"):
        size(arrangement={"extension": "flap", "support": "post"}, sitting={"seat": "crossed"})


def test_auto_takes_what_is_built(size: Size) -> None:
    auto = size(arrangement={"extension": "auto", "support": "auto"}, sitting={"seat": "auto"})
    assert asdict(auto.dimensions) == asdict(size().dimensions)


def test_a_platform_too_low_for_legs_is_refused(size: Size) -> None:
    with pytest.raises(RefusedError, match="a two-stage leg needs 210; raise the platform"):
        size(bed={"platform_height": 220})


@pytest.mark.parametrize(
    ("depth", "says"),
    [
        (460, r"leaves a panel 460 deep and a desk needs 500; make platform_length 1607 or less"),
        (1100, r"a platform 1007 long has no room for two lids with a panel 1100 deep stowed"),
    ],
)
def test_a_panel_too_shallow_or_too_deep_is_refused(size: Size, depth: int, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        size(bed={"platform_length": 2110 - 3 - depth})


def test_a_panel_with_no_room_between_its_legs_is_refused(size: Size) -> None:
    # a slim belly over a long thigh: the near leg stands 309 from the edge, the far one of 500 deep at 450
    measured = {"buttock_popliteal_length": 595}
    with pytest.raises(RefusedError, match=r"leaves 141 between its legs and 150 are needed; .* shorter by 9"):
        size(bed={"platform_length": 2110 - 3 - 500}, sleeper={"measured": measured})


def test_the_desk_is_sized_for_the_first_who_works(worked: Make) -> None:
    first = {"sex": "female", "stature": 1600, "works": False, "shoes": 30}
    second = {"sex": "male", "stature": 1900, "shoes": 15}
    brief = worked(sleeper=[first, second])
    who = people(brief, ())
    assert (who.worker, who.shoes) == (1, 15.0)


def test_the_bed_is_as_long_as_the_taller_needs(size: Size) -> None:
    worker = {"sex": "female", "stature": 1600}
    sized = size(sleeper=[worker, {"sex": "male", "stature": 1900, "works": False}])
    assert sized.people.at_desk.mean["stature"] == 1600.0
    assert sized.people.tallest == 1900.0
    assert sized.dimensions.lengths.bed == 2050.0
