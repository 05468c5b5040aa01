from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from parametric.core.errors import RefusedError
from parametric.core.pose import Pose
from parametric.mechanism.draft import Draft, bar
from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.model import ContactKind
from parametric.mechanism.modes import modes_of
from parametric.mechanism.platform import frame_of
from parametric.mechanism.stowage import Item, stow


def item(part: str, length: float) -> Item:
    """A tube with a foot of 15."""
    return Item(part=part, length=length, side=25.0, before=0.0, after=15.0, modes=("drive",))


def stowed(built: Any, *items: Item) -> Draft:
    """A draft with nothing in it but rails and tubes, stowed."""
    draft = Draft(modes_of(built.brief.van, built.dims))
    for name in ("left_rail", "right_rail"):
        draft.add(name, built.mechanism.parts[name], built.assembly.poses["night"][name])
    for each in items:
        draft.add(each.part, bar("tube", each.length, (25.0, 25.0), "aluminium", 2700.0), Pose())
    stow(draft, built.dims, frame_of(built.dims), items)
    return draft


def test_over_all_counts_what_sticks_out() -> None:
    assert replace(item("t", 400.0), before=23.0).over_all == 438.0


def test_a_tube_lies_along_a_rail_over_its_underside(exchange: Any) -> None:
    draft = stowed(exchange, item("t", 400.0))
    lo, hi = extent(draft.design("t"), draft.world("t", "drive"))
    faces = frame_of(exchange.dims)
    assert hi[0] - lo[0] == 400.0
    assert faces.bottom < lo[2] < hi[2] < faces.top
    assert hi[1] == pytest.approx(faces.left - 5.0)  # a clip of 5 between rail and tube


def test_a_tube_longer_than_every_bay_is_refused_with_both_lengths(exchange: Any) -> None:
    faces = frame_of(exchange.dims)
    longest = faces.rear_bay[1] - faces.rear_bay[0] - 2.0 * (45.0 + 4.0)
    with pytest.raises(RefusedError, match=f"stowage: pole is 915 long and the longest free place .* is {longest:.0f}"):
        stowed(exchange, item("pole", 900.0))


def test_the_last_that_finds_no_lane_is_refused(exchange: Any) -> None:
    # two lanes on each side of the rear bay take one of 500 each; the front bay is too short
    tubes = [item(f"t{k}", 500.0) for k in range(5)]
    stowed(exchange, *tubes[:4])
    with pytest.raises(RefusedError, match="stowage: t4 is 515 long"):
        stowed(exchange, *tubes)


def test_short_ones_share_a_lane_end_to_end(exchange: Any) -> None:
    draft = stowed(exchange, item("a", 300.0), item("b", 300.0))
    a, b = (extent(draft.design(n), draft.world(n, "drive")) for n in ("a", "b"))
    assert a[0][1:] == b[0][1:]
    assert b[0][0] - a[1][0] == pytest.approx(15.0 + 4.0)


def test_each_is_held_by_two_clips_screwed_to_the_rail(exchange: Any) -> None:
    mechanism = stowed(exchange, item("t", 400.0)).freeze()
    clips = [n for n in mechanism.parts if n.startswith("t_clip")]
    assert len(clips) == 2
    held = {(c.a, c.b) for c in mechanism.contacts}
    assert held == {*(("t", c) for c in clips), *((c, "left_rail") for c in clips)}
    assert {c.modes for c in mechanism.contacts if c.kind is ContactKind.LATCHED} == {frozenset({"drive"})}


def test_all_leg_stages_lie_inside_the_frame_when_not_in_use(built: Any) -> None:
    faces = frame_of(built.dims)
    spare = {
        "night": "leg_near_lower_desk",
        "desk": "leg_near_lower_night",
        "drive": "leg_far_upper",
    }
    for mode, part in spare.items():
        if part not in built.mechanism.parts:
            continue
        lo, hi = box(built, part, mode)
        assert faces.right <= lo[1] < hi[1] <= faces.left
        assert faces.bottom <= lo[2] < hi[2] <= faces.top
        assert built.dims.lengths.rear <= lo[0] < hi[0] <= built.dims.lengths.front


def box(built: Any, name: str, mode: str) -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])
