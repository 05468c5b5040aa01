from __future__ import annotations

import math
from dataclasses import replace

import pytest

from parametric.core.pose import at
from parametric.core.shape import Box, Cylinder, LineTo, Outline, Shape, circle, rectangle, stadium
from parametric.mechanism.part import Bar, Board, Bought, Hole, PartDesign, Pocket, Soft, Tube, area, is_soft, mass
from parametric.meshes.mesh import solid

DOWN, UP = (0.0, 0.0, -1.0), (0.0, 0.0, 1.0)


def bar(**more: object) -> Bar:
    """A metre of 45 x 70."""
    return Bar(
        name="bar",
        material="C24",
        stock="45 x 70",
        density=420.0,
        length=1000.0,
        width=45.0,
        height=70.0,
        **more,  # type: ignore[arg-type]
    )


def board(**more: object) -> Board:
    """A sheet of 600 x 400 x 18."""
    return Board(
        name="board",
        material="birch_plywood",
        stock="18",
        density=680.0,
        outline=rectangle(0.0, 0.0, 600.0, 400.0),
        thickness=18.0,
        **more,  # type: ignore[arg-type]
    )


def test_a_hole_takes_a_cylinder() -> None:
    hole = Hole(at=(0.0, 0.0, 0.0), into=UP, diameter=8.0, depth=25.0)
    assert hole.sink == 0.0
    assert hole.volume == pytest.approx(math.pi * 16.0 * 25.0)


def test_a_countersink_takes_a_cone_at_the_mouth() -> None:
    # 9 to 4.5 at 90 degrees: 2.25 deep; frustum pi * 2.25 * (4.5^2 + 4.5 * 2.25 + 2.25^2) / 3 = 83.498
    hole = Hole(at=(0.0, 0.0, 20.0), into=DOWN, diameter=4.5, depth=20.0, through=True, head=9.0)
    assert hole.sink == 2.25
    assert hole.volume == pytest.approx(math.pi * 2.25**2 * 17.75 + 83.4976, rel=1e-6)


def test_a_blind_hole_keeps_its_floor_and_a_through_hole_comes_out() -> None:
    def bore(through: bool) -> Cylinder:
        (cylinder,) = Hole(at=(0.0, 0.0, 20.0), into=DOWN, diameter=5.0, depth=20.0, through=through).cuts()
        assert isinstance(cylinder, Cylinder)
        return cylinder

    for through, end in ((False, 0.0), (True, -1.0)):
        cylinder = bore(through)
        assert cylinder.pose.point((0.0, 0.0, 0.0)) == (0.0, 0.0, 21.0)
        assert cylinder.pose.point((0.0, 0.0, cylinder.height))[2] == pytest.approx(end)


def test_a_hole_may_run_any_way() -> None:
    slant = (0.6, 0.0, -0.8)
    (bore,) = Hole(at=(10.0, 0.0, 0.0), into=slant, diameter=5.0, depth=49.0).cuts()
    assert isinstance(bore, Cylinder)
    assert bore.pose.point((0.0, 0.0, 50.0)) == pytest.approx((10.0 + 29.4, 0.0, -39.2))


def test_a_pocket_reaches_past_the_faces_it_opens_only() -> None:
    pocket = Pocket(lo=(0.0, 20.0, 30.0), hi=(100.0, 45.0, 48.0), open_to=("-x", "+y"))
    assert pocket.cut() == Box((-1.0, 20.0, 30.0), (100.0, 46.0, 48.0))
    assert pocket.volume == 100.0 * 25.0 * 18.0


def test_a_bar_loses_corners_holes_and_grooves() -> None:
    plain = 1000.0 * 45.0 * 70.0
    assert bar().volume == plain
    hole = Hole(at=(50.0, 0.0, 35.0), into=(0.0, 1.0, 0.0), diameter=8.4, depth=45.0, through=True)
    groove = Pocket(lo=(0.0, 20.0, 30.0), hi=(1000.0, 45.0, 48.0), open_to=("+y",))
    lost = (4.0 - math.pi) / 4.0 * 2.0 * 10.0**2 * 1000.0
    found = bar(radii=(10.0, 0.0, 0.0, 10.0), holes=(hole,), pockets=(groove,)).volume
    assert found == pytest.approx(plain - lost - math.pi * 4.2**2 * 45.0 - 1000.0 * 25.0 * 18.0)


def test_a_board_loses_cutouts_through_its_thickness() -> None:
    grip = stadium(300.0, 350.0, 110.0, 32.0)
    found = board(cutouts=(grip,), pockets=(Pocket(lo=(0.0, 0.0, 0.0), hi=(30.0, 14.0, 4.0), open_to=("-z",)),))
    assert found.volume == pytest.approx((240_000.0 - 78.0 * 32.0 - math.pi * 256.0) * 18.0 - 1680.0)


def test_a_tube_is_hollow_and_its_holes_pass_two_walls() -> None:
    tube = Tube(
        name="t", material="aluminium", stock="s", density=2700.0, length=400.0, width=30.0, height=30.0, wall=2.0
    )
    assert tube.volume == 400.0 * (900.0 - 676.0)
    hole = Hole(at=(50.0, 0.0, 15.0), into=(0.0, 1.0, 0.0), diameter=6.2, depth=30.0, through=True)
    assert replace(tube, holes=(hole,)).volume == pytest.approx(tube.volume - math.pi * 3.1**2 * 4.0)


def test_mass_is_volume_by_density_unless_it_is_known() -> None:
    assert mass(bar()) == pytest.approx(1.323)  # 0.00315 m3 of 420 kg/m3
    bolt = Bought(
        name="bolt",
        material="steel",
        stock="M8",
        density=7850.0,
        designation="M8",
        mass=0.0,
        shape=Shape((Cylinder(4.0, 60.0),)),
        envelope_volume=3000.0,
    )
    assert mass(bolt) == pytest.approx(0.02355)
    assert mass(replace(bolt, mass=0.045)) == 0.045


def test_foam_and_webbing_give_way() -> None:
    foam = Soft(
        name="m",
        material="foam",
        stock="s",
        density=35.0,
        length=2.0,
        width=3.0,
        thickness=4.0,
        sink_seated=1.0,
        sink_lying=1.0,
    )
    strap = Bought(
        name="s",
        material="webbing",
        stock="25",
        density=900.0,
        designation="strap",
        mass=0.1,
        shape=Shape((Box((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)),)),
        envelope_volume=1.0,
        flexible=True,
    )
    assert (foam.volume, is_soft(foam), is_soft(strap)) == (24.0, True, True)
    assert not is_soft(replace(strap, flexible=False))
    assert not is_soft(bar())


def test_the_area_of_a_path_run_clockwise_is_negative() -> None:
    square = Outline((0.0, 0.0), (LineTo((0.0, 5.0)), LineTo((5.0, 5.0)), LineTo((5.0, 0.0)), LineTo((0.0, 0.0))))
    assert area(square) == -25.0
    assert area(circle(3.0, 4.0, 2.0)) == pytest.approx(4.0 * math.pi)


@pytest.mark.parametrize(
    "design",
    [
        bar(holes=(Hole(at=(50.0, 20.0, 70.0), into=DOWN, diameter=4.5, depth=70.0, through=True, head=9.0),)),
        bar(radii=(10.0, 0.0, 0.0, 10.0)),
        board(holes=(Hole(at=(50.0, 20.0, 0.0), into=UP, diameter=16.0, depth=14.1),)),
    ],
    ids=["countersunk bar", "rounded bar", "bored board"],
)
def test_the_shape_is_as_big_as_the_volume_says(design: PartDesign) -> None:
    # the mesh cuts circles into chords, so a little more or less is left
    assert float(solid(design.shape).volume()) == pytest.approx(design.volume, rel=2e-4)


def test_a_bought_part_is_its_envelope() -> None:
    shape = Shape((Cylinder(4.0, 60.0), Cylinder(6.5, 8.0, at(0.0, 0.0, -8.0))))
    bolt = Bought(
        name="bolt",
        material="steel",
        stock="M8",
        density=7850.0,
        designation="M8",
        mass=0.0,
        shape=shape,
        envelope_volume=math.pi * (16.0 * 60.0 + 6.5**2 * 8.0),
    )
    assert bolt.volume == pytest.approx(float(solid(shape).volume()), rel=1e-3)
