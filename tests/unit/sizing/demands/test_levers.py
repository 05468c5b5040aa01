from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.size import size
from parametric.sizing.clash import State
from parametric.sizing.demands.levers import desk_lever, platform_key, seat_lever

Make = Callable[..., Brief]


def state(brief: Brief) -> State:
    """What came of a brief."""
    sized = size(brief)
    return State(brief=brief, who=sized.people, dims=sized.dimensions)


@pytest.mark.parametrize(
    ("bed", "key"), [({}, "sitting.seat_height"), ({"platform_height": 430}, "bed.platform_height")]
)
def test_the_seat_is_moved_by_the_wish_that_sets_it(worked: Make, bed: dict[str, Any], key: str) -> None:
    brief = worked(bed=bed)
    assert platform_key(brief) == key
    lever = seat_lever(state(brief), 400.0)
    assert set(lever.changes(440.0)) == {key}


def test_lowering_the_seat_gives_up_storage_that_was_wished(worked: Make) -> None:
    at = state(worked(bed={"storage_height": 320}))
    changes = seat_lever(at, 300.0).changes(470.0)
    # slats at 400 leave 305
    assert changes == {"sitting.seat_height": 470.0, "bed.storage_height": 305.0}
    assert seat_lever(at, 300.0).says(470.0, at).endswith(", storage 305")


def test_the_desk_starts_where_it_is(worked: Make) -> None:
    lever = desk_lever(state(worked()), 900.0)
    assert (lever.start, lever.limit) == (752.0, 900.0)
    assert lever.changes(760.0) == {"sitting.desk_height": 760.0}
