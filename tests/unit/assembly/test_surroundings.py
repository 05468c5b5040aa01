from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np
import pytest
from manifold3d import Manifold

from parametric.assembly.surroundings import shell, things_that_stay
from parametric.brief.interior import ceiling_at, wall_y
from parametric.brief.model import Brief
from parametric.brief.van import Side
from parametric.core.shape import Shape
from parametric.mechanism.model import VanState
from parametric.meshes.mesh import solid

Make = Callable[..., Brief]
UP, DOWN = VanState(roof_up=True, length=2600.0), VanState(roof_up=False, length=2600.0)


def inside(shapes: Mapping[str, Shape], point: tuple[float, float, float]) -> set[str]:
    """Names of the solids that hold a small cube about a point."""
    cube = Manifold.cube((0.2, 0.2, 0.2), True).translate(point)
    return {name for name, shape in shapes.items() if float((solid(shape) ^ cube).volume()) > 1e-4}


def test_the_floor_lies_under_zero(demo: Make) -> None:
    assert inside(shell(demo().van, DOWN), (1000.0, 0.0, -5.0)) == {"floor"}
    assert inside(shell(demo().van, DOWN), (1000.0, 0.0, 5.0)) == set()


@pytest.mark.parametrize(("x", "name"), [(-5.0, "rear door"), (2605.0, "front end")])
def test_the_ends_of_the_clear_length(demo: Make, x: float, name: str) -> None:
    assert inside(shell(demo().van, DOWN), (x, 0.0, 500.0)) == {name}


def test_the_front_end_goes_with_the_seats(demo: Make) -> None:
    night = VanState(roof_up=False, length=2900.0)
    assert inside(shell(demo().van, night), (2700.0, 0.0, 500.0)) == set()


@pytest.mark.parametrize("z", [1.0, 250.0, 499.0, 700.0, 1100.0, 1319.0])
def test_walls_are_where_the_interior_says(demo: Make, z: float) -> None:
    van = demo().van
    walls = shell(van, DOWN)
    sides: tuple[tuple[Side, float], ...] = (("right", -1.0), ("left", 1.0))
    for side, out in sides:
        y = wall_y(van, side, 1000.0, z)
        assert {n.split()[0] for n in inside(walls, (1000.0, y + out, z))} == {side}
        assert inside(walls, (1000.0, y - out, z)) == set()


def test_walls_between_stations_run_straight(demo: Make) -> None:
    def station(x: int, y: int) -> dict[str, Any]:
        return {"x": x, "left": [[0, y], [1320, y - 40]], "right": [[0, -y], [1320, 40 - y]]}

    van = demo(van={"wall": None, "station": [station(0, 700), station(1300, 760), station(2600, 740)]}).van
    walls = shell(van, DOWN)
    for x in np.linspace(50.0, 2550.0, 11):
        y = wall_y(van, "left", float(x), 600.0)
        assert inside(walls, (float(x), y + 1.0, 600.0))
        assert inside(walls, (float(x), y - 1.0, 600.0)) == set()


def test_with_the_roof_shut_the_ceiling_is_flat(demo: Make) -> None:
    shut = shell(demo().van, DOWN)
    for x in (100.0, 1000.0, 2500.0):
        assert inside(shut, (x, 0.0, 1321.0)) == {"ceiling"}
        assert inside(shut, (x, 0.0, 1319.0)) == set()


def test_with_the_roof_up_it_is_open_inside_its_rectangle_only(demo: Make) -> None:
    van = demo(van={"roof": {"front": 1700, "rear": 1900}}).van
    up = shell(van, UP)
    assert inside(up, (1000.0, 0.0, 1500.0)) == set()
    for x, y in ((200.0, 0.0), (2400.0, 0.0), (1000.0, -600.0), (1000.0, 600.0)):
        (name,) = inside(up, (x, y, 1330.0)) - {"right wall 1.3", "left wall 1.3", "right wall 1.4", "left wall 1.4"}
        assert name.startswith("ceiling")
    # its underside slopes from 1900 at the rear to 1700 at the front
    for x in (400.0, 1300.0, 2200.0):
        z = ceiling_at(van, x, 0.0, True)
        assert inside(up, (x, 0.0, z + 2.0)) == {"raised roof"}
        assert inside(up, (x, 0.0, z - 2.0)) == set()


def test_a_fixed_high_roof_is_up_in_every_state(demo: Make) -> None:
    van = demo(van={"roof": {"lifts": False}}).van
    assert "raised roof" in shell(van, DOWN)
    assert "raised roof" not in shell(demo().van, DOWN)


def test_lining_to_come_lowers_and_narrows(demo: Make) -> None:
    van = demo(van={"lining": {"ceiling": 20, "floor": 15, "wall": 10}}).van
    lined = shell(van, DOWN)
    assert inside(lined, (1000.0, 0.0, 1320.0 - 35.0 + 1.0)) == {"ceiling"}
    assert inside(lined, (1000.0, -739.0, 300.0)) == set()
    assert inside(lined, (1000.0, -741.0, 300.0)) == {"right wall 1.1"}


def test_things_that_stay_are_boxes(demo: Make) -> None:
    fridge = {"name": "fridge", "x": [1900, 2300], "y": [300, 700], "z": [0, 500]}
    things = things_that_stay(demo(van={"fixed": [fridge]}).van)
    assert set(things) == {"fridge"}
    assert inside(things, (1901.0, 301.0, 499.0)) == {"fridge"}
    assert inside(things, (1899.0, 301.0, 499.0)) == set()
    assert things_that_stay(demo().van) == {}


def test_a_floor_to_come_hides_the_foot_of_what_stays(demo: Make) -> None:
    fridge = {"name": "fridge", "x": [1900, 2300], "y": [300, 700], "z": [0, 500]}
    things = things_that_stay(demo(van={"fixed": [fridge], "lining": {"floor": 15}}).van)
    assert inside(things, (2000.0, 500.0, 484.0)) == {"fridge"}
    assert inside(things, (2000.0, 500.0, 486.0)) == set()
