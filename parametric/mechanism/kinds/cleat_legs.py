"""Desk support `cleat_legs`: a grooved wall cleat on stepped uprights, and two plug-in legs in two stages."""

from __future__ import annotations

import math
from typing import Final

from parametric.brief.interior import narrowest
from parametric.brief.van import Van
from parametric.core.pose import Pose, Vec3, at, frame
from parametric.core.shape import Cylinder, Shape, rectangle
from parametric.mechanism import legs
from parametric.mechanism.draft import Draft, Y, Z, bar, laid
from parametric.mechanism.materials import STEEL, Materials
from parametric.mechanism.model import VAN, ContactKind, Fastener, Release
from parametric.mechanism.modes import DESKS
from parametric.mechanism.part import Board, Bought, Hole, Pocket
from parametric.mechanism.platform import Frame
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import GROOVE, GROOVE_PLAY

PIN_EDGE: Final = 11.0  # locking pin from the panel's wall edge
LIP: Final = 30.0  # material under the groove
GROOVE_SPARE: Final = 1.0
BOLT_LOW, BOLT_HIGH = 18.0, 58.0  # over the cleat's underside: two steps of 20 apart, clear of the groove
BOLT, BOLT_HOLE = 8.0, 8.4
BOLTS: Final = (50.0, 55.0, 60.0, 65.0, 70.0, 80.0, 90.0, 100.0, 120.0, 140.0)  # lengths of ISO 4762 M8
UPRIGHT: Final = 60.0
UPRIGHT_IN: Final = 90.0  # from the cleat's ends
PIN, PIN_HOLE, PIN_IN = 8.0, 8.4, 60.0  # locking pin, its place from the panel's near edge
CLEAT_RADIUS: Final = 10.0


def build(draft: Draft, dims: Dimensions, stuff: Materials, faces: Frame, van: Van) -> None:
    """Add cleat, uprights, locking pin, legs and the clips that hold their stages when they are not in use."""
    _uprights(draft, dims, stuff, van)
    _cleat(draft, dims, stuff)
    _locking_pin(draft, dims)
    legs.build(draft, dims, faces)


def _cleat_under(dims: Dimensions, mode: str) -> float:
    return dims.desk_at(mode) - dims.heights.panel - LIP


def _cleat_length(dims: Dimensions) -> float:
    return dims.lengths.parked + dims.lengths.panel_depth - dims.lengths.near


def _upright_places(dims: Dimensions) -> tuple[float, ...]:
    """Centres of the uprights along the cleat, from its near end: two, or three under a long cleat."""
    length = _cleat_length(dims)
    ends = (UPRIGHT_IN, length - UPRIGHT_IN)
    if length <= 900.0:
        return ends
    middle, parked = length / 2.0, dims.lengths.parked - dims.lengths.near + PIN_IN
    if abs(middle - parked) < 40.0:
        middle = parked + 40.0
    return ends[0], middle, ends[1]


def _uprights(draft: Draft, dims: Dimensions, stuff: Materials, van: Van) -> None:
    """Uprights on the wall with rows of holes, one step apart, for the cleat's bolts.

    They stand in one line, off the narrowest place of the wall; where it recedes they are packed out.
    """
    t = dims.heights.panel
    low = dims.heights.desk_low - t - LIP
    rows = round((dims.heights.desk_high - dims.heights.desk_low + BOLT_HIGH - BOLT_LOW) / dims.pitch)
    bottom = low + BOLT_LOW - 25.0
    height = 50.0 + dims.pitch * rows
    holes = tuple(
        Hole(
            at=(UPRIGHT / 2.0, 25.0 + dims.pitch * k, 0.0),
            into=Z,
            diameter=BOLT_HOLE,
            depth=t,
            through=True,
            purpose="M8, tee nut behind",
        )
        for k in range(rows + 1)
    )
    design = Board(
        name="upright",
        material=stuff.sheet,
        stock=stuff.sheet,
        density=stuff.sheet_density,
        outline=rectangle(0.0, 0.0, UPRIGHT, height, 5.0),
        thickness=t,
        grain="y",
        holes=holes,
    )
    for k, centre in enumerate(_upright_places(dims), start=1):
        x = dims.lengths.near + centre - UPRIGHT / 2.0
        name = draft.add(f"upright_{k}", design, laid(design, (x, dims.widths.wall_desk, bottom), (1.0, 0.0, 0.0), Z))
        face = dims.widths.wall_desk + t
        heads = [(x + 14.0, face, bottom + 12.0), (x + UPRIGHT - 14.0, face, bottom + height - 12.0)]
        joined = draft.screw("4x40", name, VAN, heads, (0.0, -1.0, 0.0))
        wall = narrowest(van, "right", x, x + UPRIGHT, bottom, bottom + height)
        packing = max(0.0, dims.widths.wall_desk - wall)
        draft.touch(ContactKind.SCREWED, name, VAN, normal=Y, fasteners=(joined,), release=Release.TOOL, gap=packing)


def _cleat(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    """The cleat: the panel's wall edge runs in its groove, under a lip, and cannot lift or drop."""
    w, h = dims.sections.cleat
    t, r, length = dims.heights.panel, CLEAT_RADIUS, _cleat_length(dims)
    groove = Pocket(
        lo=(0.0, w - GROOVE, LIP),
        hi=(length, w, LIP + t + GROOVE_SPARE),
        open_to=("-x", "+x", "+y"),
        purpose="groove for the panel",
    )
    design = bar(
        "desk_cleat", length, (w, h), stuff.timber, stuff.timber_density, radii=(0.0, r, r, 0.0), pockets=(groove,)
    )
    y = dims.widths.wall_desk + t

    def pose(mode: str) -> Pose:
        return at(dims.lengths.near, y, _cleat_under(dims, mode))

    draft.add("desk_cleat", design, pose("desk"))
    for mode in ("desk/low", "desk/high"):
        draft.move("desk_cleat", (mode,), pose(mode))
    _bolts(draft, dims, y)
    draft.touch(
        ContactKind.SLIDES,
        "panel",
        "desk_cleat",
        DESKS,
        travel=dims.lengths.parked - dims.lengths.near,
        gap=GROOVE_SPARE,
        release=Release.HAND,
    )


def _bolts(draft: Draft, dims: Dimensions, y: float) -> None:
    w, t = dims.sections.cleat[0], dims.heights.panel
    shank, head = w + t - 1.0, 6.5
    volume = math.pi / 4.0 * (BOLT**2 * shank + (2.0 * head) ** 2 * 8.0)
    design = Bought(
        name="cleat_bolt",
        material="steel",
        stock="M8",
        density=STEEL,
        designation=f"ISO 4762 M8 x {next(n for n in BOLTS if n >= w + t):.0f} with tee nut M8",
        mass=0.045,
        shape=Shape((Cylinder(BOLT / 2.0, shank), Cylinder(head, 8.0, at(0.0, 0.0, -8.0)))),
        envelope_volume=volume,
    )
    for k, centre in enumerate(_upright_places(dims), start=1):
        x = dims.lengths.near + centre
        for row, up in (("low", BOLT_LOW), ("high", BOLT_HIGH)):
            face: Vec3 = (x, y + w, _cleat_under(dims, "desk") + up)
            bore = Hole(at=face, into=(0.0, -1.0, 0.0), diameter=BOLT_HOLE, depth=w, through=True, purpose="M8")
            draft.bore("desk_cleat", bore)
            pose = frame(face, (1.0, 0.0, 0.0), Z)
            bolt = draft.add(f"cleat_bolt_{k}_{row}", design, pose, "desk_cleat")
            draft.touch(ContactKind.SCREWED, bolt, "desk_cleat", release=Release.TOOL)
            draft.touch(ContactKind.PINNED, bolt, f"upright_{k}", gap=0.2, release=Release.TOOL)
    for k in range(1, len(_upright_places(dims)) + 1):
        bolts = Fastener(designation=design.designation, count=2)
        draft.touch(ContactKind.SCREWED, "desk_cleat", f"upright_{k}", fasteners=(bolts,), release=Release.TOOL)


def _locking_pin(draft: Draft, dims: Dimensions) -> None:
    """A drop-in pin through lip, panel and cleat fixes the panel where it works and where it is parked."""
    w, h = dims.sections.cleat
    t = dims.heights.panel
    under = _cleat_under(dims, "desk")
    x = dims.lengths.near + PIN_IN
    y = dims.widths.wall_desk + t + w - GROOVE + GROOVE_PLAY + PIN_EDGE
    lip = h - LIP - t - GROOVE_SPARE
    travel = dims.lengths.parked - dims.lengths.near
    down: Vec3 = (0.0, 0.0, -1.0)
    for dx in (0.0, travel) if travel > 20.0 else (0.0,):
        top = Hole(at=(x + dx, y, under + h), into=down, diameter=PIN_HOLE, depth=lip, through=True, purpose="pin")
        seat = Hole(at=(x + dx, y, under + LIP), into=down, diameter=PIN_HOLE, depth=15.0, purpose="pin")
        draft.bore("desk_cleat", top)
        draft.bore("desk_cleat", seat)
    draft.bore("panel", _pin_hole(draft, dims))
    length = h - LIP + 14.0
    design = Bought(
        name="locking_pin",
        material="steel",
        stock="pin 8",
        density=STEEL,
        designation="locking pin 8 x 55 with ring and lanyard",
        mass=0.03,
        shape=Shape((Cylinder(PIN / 2.0, length, at(0.0, 0.0, -length)), Cylinder(9.0, 6.0))),
        envelope_volume=math.pi / 4.0 * (PIN**2 * length + 18.0**2 * 6.0),
    )
    draft.add("locking_pin", design, at(x, y, under + h), "desk_cleat")
    draft.move("locking_pin", ("desk/parked",), at(x + travel, y, under + h))
    draft.touch(ContactKind.RESTS, "locking_pin", "desk_cleat", release=Release.HAND)
    resists = frozenset({"u", "v"})
    draft.touch(ContactKind.PINNED, "panel", "locking_pin", DESKS, gap=0.2, resists=resists, release=Release.HAND)


def _pin_hole(draft: Draft, dims: Dimensions) -> Hole:
    """The pin hole of the panel, in the van frame with the panel in its usual place."""
    home = draft.usual("panel")
    t = dims.heights.panel
    mouth = home.point((PIN_IN, PIN_EDGE, t))
    return Hole(at=mouth, into=(0.0, 0.0, -1.0), diameter=PIN_HOLE, depth=t, through=True, purpose="locking pin")
