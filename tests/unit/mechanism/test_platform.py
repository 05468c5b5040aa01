from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.core.errors import RefusedError
from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.platform import FARTHEST, frame_of

Make = Callable[..., Any]


def arch(x0: float, x1: float, y: tuple[float, float] = (-760, -600), top: float = 240) -> dict[str, Any]:
    """A wheel arch under the right rail."""
    return {"van": {"fixed": [{"name": "arch", "x": [x0, x1], "y": list(y), "z": [0, top]}]}}


def box(built: Any, name: str) -> Extent:
    """Box round a part at night."""
    return extent(built.mechanism.parts[name], built.assembly.poses["night"][name])


def test_faces_of_the_frame(exchange: Any) -> None:
    faces, dims = frame_of(exchange.dims), exchange.dims
    # slats 20 and battens 45 inside rails 28 x 95
    assert faces.top == dims.heights.platform
    assert faces.bottom == faces.top - 95.0
    assert faces.inside == pytest.approx(1100.0 - 56.0)
    assert faces.seat_of_batten == faces.top - 65.0
    assert faces.rear_bay == (30.0 + 45.0, dims.lengths.middle - 22.5)
    assert faces.front_bay == (dims.lengths.middle + 22.5, dims.lengths.front - 45.0)


def test_rails_and_bearers_are_flush_with_the_slats(built: Any) -> None:
    top = built.dims.heights.platform
    for name in ("right_rail", "left_rail", "rear_bearer", "middle_bearer", "front_bearer", "rear_lid_slat_1"):
        assert box(built, name)[1][2] == pytest.approx(top)


def test_the_frame_is_as_long_and_wide_as_the_platform(built: Any) -> None:
    le, w = built.dims.lengths, built.dims.widths
    right, left = box(built, "right_rail"), box(built, "left_rail")
    assert (right[0][0], right[1][0]) == (le.rear, le.front)
    assert [right[0][1], left[1][1]] == pytest.approx([w.right, w.left])
    assert box(built, "front_bearer")[1][0] == le.front
    assert box(built, "rear_bearer")[0][0] == le.rear


def test_bearers_fill_the_width_between_the_rails(built: Any) -> None:
    right, left = box(built, "right_rail"), box(built, "left_rail")
    for name in ("rear_bearer", "middle_bearer", "front_bearer"):
        lo, hi = box(built, name)
        assert [lo[1], hi[1]] == pytest.approx([right[1][1], left[0][1]])


def test_posts_stand_on_the_floor_in_the_corners(exchange: Any) -> None:
    for name, bearer in (("rear", "rear_bearer"), ("middle", "middle_bearer"), ("front", "front_bearer")):
        for side in ("right", "left"):
            lo, hi = box(exchange, f"{name}_{side}_post")
            assert (lo[2], hi[2]) == (0.0, exchange.dims.heights.platform - 25.0)
            against = box(exchange, bearer)
            assert lo[0] in (against[1][0], against[0][0] - 45.0)
    assert not any("corner_block" in name for name in exchange.mechanism.parts)


@pytest.mark.parametrize(
    ("x", "blocked"),
    [
        ((60, 150), "rear_right"),
        ((800, 910), "middle_right"),
        ((1530, 1580), "front_right"),
        ((1480, 1500), "front_right"),
    ],
)
def test_a_post_moves_off_a_wheel_arch_and_leaves_a_block_in_its_corner(
    make: Make, exchange: Any, x: tuple[float, float], blocked: str
) -> None:
    built = make(**arch(*x))
    (block,) = (name for name in built.mechanism.parts if name.endswith("corner_block"))
    assert block == f"{blocked}_corner_block"
    home, post, corner = box(exchange, f"{blocked}_post"), box(built, f"{blocked}_post"), box(built, block)
    assert post[1][0] <= x[0] or post[0][0] >= x[1]
    assert 0.0 < abs(post[0][0] - home[0][0]) <= FARTHEST
    assert (corner[0][0], corner[0][1]) == (home[0][0], home[0][1])
    assert corner[0][2] == built.dims.heights.platform - 95.0
    # clear of each other, however little the arch asked for
    assert post[1][0] + 3.0 <= corner[0][0] or corner[1][0] + 3.0 <= post[0][0]
    assert {c.b for c in built.mechanism.contacts if c.a == "right_rail"} >= {block, f"{blocked}_post"}


def test_the_other_posts_stay(make: Make, exchange: Any) -> None:
    built = make(**arch(60, 150))
    for name in ("rear_left_post", "middle_right_post", "front_right_post"):
        assert box(built, name) == box(exchange, name)


def test_over_a_long_wheel_arch_the_rail_hangs_on_a_wall_cleat(make: Make) -> None:
    built = make(**arch(60, 400))
    assert "rear_right_post" not in built.mechanism.parts
    cleat, rail = box(built, "rear_right_rail_cleat"), box(built, "right_rail")
    assert cleat[1][2] == rail[0][2]
    assert cleat[0][1] == -750.0  # the wall
    assert cleat[1][1] > rail[0][1] + 20.0
    assert cleat[0][2] >= 240.0
    pairs = {(c.a, c.b) for c in built.mechanism.contacts}
    assert {("rear_right_rail_cleat", "van"), ("right_rail", "rear_right_rail_cleat")} <= pairs


@pytest.mark.parametrize(
    ("thing", "says"),
    [
        (arch(60, 400, (250, 760)), "post rear_left: no free floor within 150 of x .* and no wall to hang the rail on"),
        (arch(60, 400, top=330), "post rear_right: no free floor .* and no room for a wall cleat over arch; shorten"),
    ],
)
def test_where_neither_floor_nor_wall_helps_it_is_refused_by_name(make: Make, thing: dict[str, Any], says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        make(**thing)


def test_what_hangs_over_the_posts_is_no_matter(make: Make, exchange: Any) -> None:
    high = {"van": {"fixed": [{"name": "shelf", "x": [60, 400], "y": [-760, -600], "z": [900, 1100]}]}}
    assert box(make(**high), "rear_right_post") == box(exchange, "rear_right_post")


def test_strips_carry_the_battens_between_the_posts(built: Any) -> None:
    seat = frame_of(built.dims).seat_of_batten
    for name in ("rear_strip", "middle_rear_strip", "middle_front_strip", "front_strip"):
        lo, hi = box(built, name)
        assert hi[2] == pytest.approx(seat)
        assert box(built, "rear_right_post")[1][1] + 3.0 == pytest.approx(lo[1])
        assert hi[1] + 3.0 == pytest.approx(box(built, "rear_left_post")[0][1])


def test_storage_is_clear_below_everything_under_the_slats(built: Any) -> None:
    names = [n for n in built.mechanism.parts if n.endswith(("rail", "bearer", "strip")) or "batten" in n]
    assert min(box(built, n)[0][2] for n in names) == pytest.approx(built.dims.heights.storage)
