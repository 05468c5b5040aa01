"""Invented parts of every family, and a small piece of furniture made of them."""

from __future__ import annotations

import math

import pytest
from hypothesis import settings

from parametric.assembly.placed import Assembly, assemble
from parametric.core.pose import Pose, at, turn
from parametric.core.shape import Cylinder, Shape, rectangle, rounded, stadium
from parametric.mechanism.model import VAN, Mechanism, Mode, Placement, Use, VanState, frozen_map
from parametric.mechanism.part import Bar, Board, Bought, Hole, PartDesign, Pocket, Soft, Tube

# the same examples every time: a red run means the change, not the draw
settings.register_profile("steady", derandomize=True, deadline=None)
settings.load_profile("steady")

UP = (0.0, 0.0, 1.0)
DOWN = (0.0, 0.0, -1.0)
ALONG_Y = (0.0, 1.0, 0.0)


def sample_designs() -> dict[str, PartDesign]:
    """One design of every family, with every kind of hole and recess."""
    bolt = (Cylinder(4.0, 60.0), Cylinder(6.5, 5.3, at(0.0, 0.0, -5.3)))
    strap = (Cylinder(10.0, 2.0, turn((0.0, 1.0, 0.0), 90.0)),)
    designs: tuple[PartDesign, ...] = (
        Board(
            name="panel",
            material="birch_plywood",
            stock="18",
            density=680.0,
            outline=rectangle(0.0, 0.0, 600.0, 400.0, 20.0),
            thickness=17.6,
            cutouts=(stadium(300.0, 350.0, 110.0, 35.0),),
            holes=(
                Hole(at=(40.0, 40.0, 17.6), into=DOWN, diameter=4.5, depth=17.6, through=True, head=9.0),
                Hole(at=(560.0, 40.0, 0.0), into=UP, diameter=8.0, depth=12.0),
            ),
            pockets=(Pocket(lo=(100.0, 0.0, 10.0), hi=(130.0, 80.0, 17.6), open_to=("+z", "-y")),),
        ),
        Board(
            name="notched board",
            material="birch_plywood",
            stock="12",
            density=680.0,
            outline=rounded(
                ((0.0, 0.0), (300.0, 0.0), (300.0, 100.0), (200.0, 100.0), (200.0, 60.0), (0.0, 60.0)),
                (5.0, 0.0, 8.0, 8.0, 10.0, 5.0),
            ),
            thickness=12.0,
        ),
        Bar(
            name="rail",
            material="C24",
            stock="45x70",
            density=420.0,
            length=700.0,
            width=45.0,
            height=70.0,
            radii=(0.0, 0.0, 4.0, 4.0),
            holes=(Hole(at=(30.0, 0.0, 35.0), into=ALONG_Y, diameter=8.5, depth=45.0, through=True),),
            pockets=(Pocket(lo=(300.0, 0.0, 0.0), hi=(345.0, 45.0, 20.0), open_to=("-z", "-y", "+y")),),
        ),
        Bar(
            name="slat",
            material="C24",
            stock="20x70",
            density=420.0,
            length=600.0,
            width=70.0,
            height=20.0,
            holes=(Hole(at=(20.0, 35.0, 20.0), into=DOWN, diameter=4.5, depth=20.0, through=True, head=9.0),),
        ),
        Tube(
            name="leg",
            material="aluminium",
            stock="30x30x2",
            density=2700.0,
            length=400.0,
            width=30.0,
            height=30.0,
            wall=2.0,
            holes=(Hole(at=(50.0, 0.0, 15.0), into=ALONG_Y, diameter=8.5, depth=30.0, through=True),),
        ),
        Bought(
            name="bolt",
            material="steel",
            stock="M8",
            density=7850.0,
            designation="bolt M8x60",
            mass=0.0,
            shape=Shape(bolt),
            envelope_volume=math.pi * (4.0**2 * 60.0 + 6.5**2 * 5.3),
        ),
        Bought(
            name="strap",
            material="webbing",
            stock="25",
            density=900.0,
            designation="strap 25 mm",
            mass=0.05,
            shape=Shape(strap),
            envelope_volume=math.pi * 10.0**2 * 2.0,
            flexible=True,
        ),
        Soft(
            name="mattress",
            material="foam",
            stock="100",
            density=40.0,
            length=600.0,
            width=400.0,
            thickness=100.0,
            sink_seated=30.0,
            sink_lying=20.0,
        ),
    )
    return {design.name: design for design in designs}


def sample_assembly() -> Assembly:
    """Two rails, a panel on them, a leg, a strap and a mattress, by day and by night."""
    designs = sample_designs()
    parts = {
        "rail left": designs["rail"],
        "rail right": designs["rail"],
        "panel": designs["panel"],
        "leg": designs["leg"],
        "strap": designs["strap"],
        "mattress é": designs["mattress"],
    }
    night = {
        "rail left": Placement("rail left", VAN, at(0.0, 0.0, 300.0)),
        "rail right": Placement("rail right", VAN, at(0.0, 355.0, 300.0)),
        "panel": Placement("panel", "rail left", at(0.0, 0.0, 70.0)),
        "leg": Placement("leg", VAN, Pose((650.0, 100.0, 0.0)) @ turn((0.0, 1.0, 0.0), -90.0)),
        "strap": Placement("strap", VAN, at(900.0, 0.0, 100.0)),
        "mattress é": Placement("mattress é", "panel", at(0.0, 0.0, 17.6)),
    }
    day = {**night, "panel": Placement("panel", VAN, at(0.0, 0.0, 700.0) @ turn((1.0, 2.0, 0.5), 33.0))}
    modes = {
        name: Mode(
            id=name,
            van=VanState(roof_up=True, length=2000.0),
            use=Use.NOBODY,
            placements=frozen_map(placements),
            settings=frozen_map({}),
        )
        for name, placements in (("night", night), ("desk/low", day))
    }
    return assemble(
        Mechanism(parts=frozen_map(parts), contacts=(), joints=(), modes=frozen_map(modes), change_overs=())
    )


@pytest.fixture(scope="session")
def designs() -> dict[str, PartDesign]:
    """One design of every family."""
    return sample_designs()


@pytest.fixture(scope="session")
def assembly() -> Assembly:
    """The small piece of furniture."""
    return sample_assembly()
