from __future__ import annotations

from typing import Any

import pytest

from parametric.core.pose import at
from parametric.mechanism.modes import PANEL_STOWED
from parametric.mechanism.places import panel_place


def test_the_panel_is_where_the_rule_says_in_every_mode(built: Any) -> None:
    for mode in built.mechanism.modes:
        found = built.assembly.poses[mode]["panel"].matrix
        assert found == pytest.approx(panel_place(built.dims, mode).matrix, abs=2e-6)


def test_its_near_edge_faces_the_person_and_its_wall_edge_the_wall(exchange: Any) -> None:
    dims = exchange.dims
    desk = dims.heights.desk - dims.heights.panel
    assert panel_place(dims, "desk") == at(dims.lengths.near, dims.widths.panel_desk, desk)
    assert panel_place(dims, "desk/parked") == at(dims.lengths.parked, dims.widths.panel_desk, desk)
    assert panel_place(dims, "desk/high").translation[2] == dims.heights.desk_high - dims.heights.panel


@pytest.mark.parametrize("mode", PANEL_STOWED)
def test_stowed_it_is_turned_round(exchange: Any, mode: str) -> None:
    pose = panel_place(exchange.dims, mode)
    assert pose.direction((1.0, 0.0, 0.0)) == (-1.0, 0.0, 0.0)
    assert pose.direction((0.0, 0.0, 1.0)) == (0.0, 0.0, 1.0)
