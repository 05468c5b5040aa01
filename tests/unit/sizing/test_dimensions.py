from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.pipeline.size import Sized


def test_what_follows_from_other_figures(size: Callable[..., Sized]) -> None:
    dims = size().dimensions
    assert dims.heights.desk_under == pytest.approx(752.0 - 17.6)
    assert dims.lengths.front == dims.lengths.rear + dims.lengths.platform == 1577.0
    assert dims.lengths.extension == 2110.0 - 1547.0
    assert dims.legs.fittings == 25.0


@pytest.mark.parametrize(
    ("mode", "desk"),
    [("desk", 752.0), ("desk/low", 732.0), ("desk/high", 772.0), ("desk/parked", 752.0), ("night", 752.0)],
)
def test_each_mode_has_its_desk_height(size: Callable[..., Sized], mode: str, desk: float) -> None:
    assert size().dimensions.desk_at(mode) == desk
