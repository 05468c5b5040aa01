from __future__ import annotations

from typing import Any

import pytest

from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.mattress import PIECES
from parametric.mechanism.modes import DESKS, PANEL_STOWED
from parametric.mechanism.part import Soft


def box(built: Any, name: str, mode: str) -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


def test_three_pieces_cut_at_the_middle_bearer_and_the_platforms_end(built: Any) -> None:
    le = built.dims.lengths
    ends = [(box(built, p, "night")[0][0], box(built, p, "night")[1][0]) for p in PIECES]
    assert ends == [
        pytest.approx(e) for e in ((le.rear, le.middle), (le.middle, le.front), (le.front, le.rear + le.bed))
    ]


def test_by_night_they_make_one_surface_as_wide_as_the_bed(built: Any) -> None:
    h, w = built.dims.heights, built.dims.widths
    for piece in PIECES:
        lo, hi = box(built, piece, "night")
        assert (lo[2], hi[2]) == (h.platform, h.platform + h.mattress)
        assert [lo[1], hi[1]] == pytest.approx([w.right, w.left])


def test_foam_knows_how_far_people_sink(exchange: Any) -> None:
    piece = exchange.mechanism.parts["mattress_front"]
    assert isinstance(piece, Soft)
    assert (piece.sink_seated, piece.sink_lying, piece.density) == (30.0, 25.0, 35.0)


@pytest.mark.parametrize("mode", DESKS)
def test_at_the_desk_the_end_piece_lies_on_the_rear_one(built: Any, mode: str) -> None:
    end, rear = box(built, "mattress_end", mode), box(built, "mattress_rear", mode)
    assert end[0][2] == rear[1][2]
    assert end[1][0] < built.dims.lengths.back


@pytest.mark.parametrize("mode", PANEL_STOWED)
def test_with_the_panel_stowed_two_pieces_lie_on_it(built: Any, mode: str) -> None:
    panel, rear, end = (box(built, n, mode) for n in ("panel", "mattress_rear", "mattress_end"))
    assert rear[0][2] == pytest.approx(panel[1][2])
    assert end[0][2] == pytest.approx(rear[1][2])


@pytest.mark.parametrize(
    ("mode", "piece", "below"),
    [("access/front", "mattress_front", "mattress_end"), ("access/rear", "mattress_rear", "mattress_front")],
)
def test_the_piece_of_an_opened_lid_lies_on_its_neighbour(built: Any, mode: str, piece: str, below: str) -> None:
    assert box(built, piece, mode)[0][2] == pytest.approx(box(built, below, mode)[1][2])


def test_pieces_never_share_space(built: Any) -> None:
    for mode in built.mechanism.modes:
        boxes = [box(built, p, mode) for p in PIECES]
        for i, a in enumerate(boxes):
            for b in boxes[i + 1 :]:
                apart = max(max(a[0][k] - b[1][k], b[0][k] - a[1][k]) for k in range(3))
                assert apart >= -1e-6, mode


def test_knuckles_and_open_lids_press_only_so_deep(built: Any) -> None:
    thickness = built.dims.heights.mattress
    depths = {c.depth for c in built.mechanism.contacts if c.kind == "presses"}
    assert depths == {6.0, 0.2 * thickness}
