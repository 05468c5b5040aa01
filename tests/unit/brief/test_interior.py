from __future__ import annotations

import random

import pytest

from parametric.brief.interior import ceiling_at, narrowest, wall_y
from parametric.brief.van import Van


def van(**changes: object) -> Van:
    base: dict[str, object] = {
        "length_day": 2600,
        "ceiling": 1320,
        "wall": [[0, 1500], [500, 1500], [900, 1480], [1320, 1420]],
    }
    return Van.model_validate(base | changes)


STATIONS = [
    {"x": 0, "left": [[0, 700], [1320, 600]], "right": [[0, -700], [400, -760], [1320, -640]]},
    {"x": 1000, "left": [[0, 800], [800, 780], [1320, 700]], "right": [[0, -800], [1320, -800]]},
    {"x": 2000, "left": [[0, 750], [1320, 650]], "right": [[0, -750], [600, -700], [1320, -650]]},
]


@pytest.mark.parametrize(
    ("z", "y"),
    [(-50, 750), (0, 750), (250, 750), (500, 750), (700, 745), (900, 740), (1110, 725), (1320, 710), (1800, 710)],
)
def test_symmetric_wall_is_straight_between_points_and_goes_on_beyond(z: float, y: float) -> None:
    assert wall_y(van(), "left", 1234.0, z) == pytest.approx(y)
    assert wall_y(van(), "right", 1234.0, z) == pytest.approx(-y)


def test_lining_comes_inwards_and_lifts_the_floor() -> None:
    lined = van(lining={"wall": 20, "floor": 30})
    assert wall_y(lined, "left", 0, 670) == pytest.approx(745 - 20)
    assert wall_y(lined, "right", 0, 670) == pytest.approx(-745 + 20)


@pytest.mark.parametrize(
    ("x", "z", "left", "right"),
    [
        (-10, 0, 700, -700),
        (0, 400, 700 - 100 * 400 / 1320, -760),
        (500, 0, 750, -750),
        (500, 1320, 650, -720),
        (1000, 800, 780, -800),
        (1500, 0, 775, -775),
        (2500, 1320, 650, -650),
    ],
)
def test_walls_between_stations(x: float, z: float, left: float, right: float) -> None:
    measured = van(wall=None, station=STATIONS)
    assert wall_y(measured, "left", x, z) == pytest.approx(left)
    assert wall_y(measured, "right", x, z) == pytest.approx(right)


def test_narrowest_takes_the_top_of_a_tapering_wall() -> None:
    assert narrowest(van(), "left", 0, 2000, 100, 700) == pytest.approx(745)
    assert narrowest(van(), "right", 0, 2000, 100, 700) == pytest.approx(-745)


def test_narrowest_finds_a_bulge_inside_the_patch() -> None:
    bulged = van(wall=[[0, 1500], [300, 1300], [1320, 1500]])
    assert narrowest(bulged, "left", 0, 100, 0, 1320) == pytest.approx(650)
    assert narrowest(bulged, "right", 0, 100, 0, 1320) == pytest.approx(-650)


def test_narrowest_finds_a_pinch_at_a_station_inside_the_patch() -> None:
    pinched = [dict(s, left=[[0, 800 if s["x"] != 1000 else 500], [1320, 800]]) for s in STATIONS]
    assert narrowest(van(wall=None, station=pinched), "left", 500, 1500, 0, 1000) == pytest.approx(500)


@pytest.mark.parametrize("seed", range(20))
def test_narrowest_is_never_beaten_by_any_point_of_the_patch_and_is_reached(seed: int) -> None:
    rng = random.Random(seed)
    measured = van(wall=None, station=STATIONS, lining={"wall": 12, "floor": 25})
    x0, x1 = sorted(rng.uniform(-200, 2600) for _ in range(2))
    z0, z1 = sorted(rng.uniform(0, 1320) for _ in range(2))
    grid = [(x0 + (x1 - x0) * i / 200, z0 + (z1 - z0) * j / 200) for i in range(201) for j in range(201)]
    left = [wall_y(measured, "left", x, z) for x, z in grid]
    right = [wall_y(measured, "right", x, z) for x, z in grid]
    # a grid step can miss a bend by step x slope: below 1 mm here
    assert narrowest(measured, "left", x0, x1, z0, z1) <= min(left) + 1e-9
    assert narrowest(measured, "left", x0, x1, z0, z1) == pytest.approx(min(left), abs=1.0)
    assert narrowest(measured, "right", x0, x1, z0, z1) >= max(right) - 1e-9
    assert narrowest(measured, "right", x0, x1, z0, z1) == pytest.approx(max(right), abs=1.0)


ROOF = {"x": [300, 2300], "y": [-500, 500], "front": 1500, "rear": 1900}


@pytest.mark.parametrize(
    ("x", "y", "up", "height"),
    [
        (1300, 0, False, 1320),
        (300, 0, True, 1900),
        (2300, 0, True, 1500),
        (1300, 0, True, 1700),
        (1300, 500, True, 1700),
        (1300, 501, True, 1320),
        (299, 0, True, 1320),
        (2301, 0, True, 1320),
    ],
)
def test_raised_roof_is_a_wedge_over_its_rectangle(x: float, y: float, up: bool, height: float) -> None:
    assert ceiling_at(van(roof=ROOF), x, y, up) == pytest.approx(height)


def test_a_fixed_high_roof_is_always_up() -> None:
    assert ceiling_at(van(roof=ROOF | {"lifts": False}), 1300, 0, False) == pytest.approx(1700)


def test_no_roof_is_the_ceiling_in_either_state() -> None:
    assert ceiling_at(van(), 1300, 0, True) == ceiling_at(van(), 1300, 0, False) == 1320


@pytest.mark.parametrize(("up", "height"), [(False, 1320), (True, 1700)])
def test_both_linings_lower_the_ceiling(up: bool, height: float) -> None:
    lined = van(roof=ROOF, lining={"ceiling": 15, "floor": 30})
    assert ceiling_at(lined, 1300, 0, up) == pytest.approx(height - 45)
