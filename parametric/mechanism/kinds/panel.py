"""Extension `panel`: ledger, night cleat, the board itself with its stiffener, dowels and hold-downs."""

from __future__ import annotations

import math
from typing import Final

from parametric.catalogue.screws import wall_screw
from parametric.core.pose import Vec3, at
from parametric.core.shape import Box, Cylinder, Shape, rounded, stadium
from parametric.mechanism.draft import Draft, Y, bar, laid
from parametric.mechanism.lids import Lid
from parametric.mechanism.materials import STEEL, Materials
from parametric.mechanism.model import VAN, ContactKind, Fastener, Joint, JointKind, Release
from parametric.mechanism.modes import NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Board, Bought, Hole, Pocket
from parametric.mechanism.places import panel_place
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import JOINT, REAR_GAP, STRAP_OUT

CORNER, WALL_CORNER = 20.0, 5.0
LEDGER_SCREWS: Final = 6  # spaces between its screws; the dowels stand in the outer two
LEDGER_IN: Final = 110.0  # outer screws to its ends
LEDGER_RADIUS: Final = 10.0  # calves touch it
GRIP: Final = (110.0, 32.0)
GRIP_AT: Final = (150.0, 60.0)  # from the near edge, from the aisle edge
STIFFENER_IN: Final = 35.0  # from the wall edge: clear of both cleats and of the bolt heads
DOWEL, DOWEL_LENGTH, DOWEL_UP = 10.0, 40.0, 12.0
DOWEL_IN: Final = 11.0  # from the panel's near edge
CLOSE_SLAT: Final = 5.0  # a slat that ends this close before the stowed panel counts as under it
LATCH: Final = (28.0, 12.0, 30.0)  # along the edge, out, down
LATCH_DOWN: Final = 2.1  # latch body under the panel; its hook bridges the way to the keeper
KEEPER: Final = (30.0, 14.0, 2.0)
KEEPER_SUNK: Final = 2.1  # under flush, so that the stowed panel rests on wood
_UP: Vec3 = (0.0, 0.0, 1.0)
_DOWN: Vec3 = (0.0, 0.0, -1.0)


def build(draft: Draft, dims: Dimensions, stuff: Materials, lids: tuple[Lid, Lid]) -> None:
    """Add the extension and how it is held at night and stowed."""
    _ledger(draft, dims, stuff)
    _night_cleat(draft, dims, stuff)
    _panel(draft, dims, stuff)
    _stiffener(draft, dims, stuff)
    _dowels(draft, dims)
    _latches(draft, dims)
    _stowed(draft, dims, lids[0])


def _ledger(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    w, h = dims.sections.ledger
    r = LEDGER_RADIUS
    length = dims.widths.left - dims.widths.right
    design = bar("ledger", length, (w, h), stuff.timber, stuff.timber_density, radii=(r, 0.0, 0.0, r))
    z = dims.heights.platform - dims.heights.panel - h
    draft.add("ledger", design, laid(design, (dims.lengths.front, dims.widths.right, z), Y, (-1.0, 0.0, 0.0)))
    face = dims.lengths.front + w
    start, span = dims.widths.right + LEDGER_IN, length - 2.0 * LEDGER_IN
    heads = [(face, start + span * k / LEDGER_SCREWS, z + h / 2.0) for k in range(LEDGER_SCREWS + 1)]
    joined = draft.screw("5x70", "ledger", "front_bearer", heads, (-1.0, 0.0, 0.0))
    draft.touch(ContactKind.SCREWED, "ledger", "front_bearer", fasteners=(joined,))
    for side in ("right", "left"):
        draft.touch(ContactKind.RESTS, "ledger", f"{side}_rail", resists=frozenset({"-n"}))


def _night_cleat(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    w, h = dims.sections.post
    start = dims.lengths.seat_front + JOINT
    length = dims.lengths.front + JOINT + dims.lengths.panel_depth - start
    design = bar("night_cleat", length, (w, h), stuff.timber, stuff.timber_density)
    z = dims.heights.platform - dims.heights.panel - h
    wall = dims.widths.wall_night
    draft.add("night_cleat", design, laid(design, (start, wall, z)))
    heads = [(start + length * k, wall + w, z + h / 2.0) for k in (0.1, 0.37, 0.63, 0.9)]
    joined = draft.screw(wall_screw(w), "night_cleat", VAN, heads, (0.0, -1.0, 0.0))
    draft.touch(ContactKind.SCREWED, "night_cleat", VAN, normal=Y, fasteners=(joined,), release=Release.TOOL)


def _panel(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    depth, length, t = dims.lengths.panel_depth, dims.widths.panel_length, dims.heights.panel
    corners = ((0.0, 0.0), (depth, 0.0), (depth, length), (0.0, length))
    design = Board(
        name="panel",
        material=stuff.sheet,
        stock=stuff.sheet,
        density=stuff.sheet_density,
        outline=rounded(corners, (WALL_CORNER, WALL_CORNER, CORNER, CORNER)),
        thickness=t,
        grain="y",
        cutouts=(stadium(GRIP_AT[0], length - GRIP_AT[1], *GRIP),),
        pockets=tuple(_keeper_pocket(y, x, turned) for y, x, turned in _keeper_spots(dims)),
    )
    draft.add("panel", design, panel_place(dims, "night"))
    for mode in draft.modes:
        if mode not in NIGHTS:
            draft.move("panel", (mode,), panel_place(dims, mode))
    draft.touch(ContactKind.RESTS, "panel", "ledger", NIGHTS, release=Release.HAND)
    draft.touch(ContactKind.RESTS, "panel", "night_cleat", NIGHTS, release=Release.HAND)


def _stiffener(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    w, h = dims.sections.stiffener
    length = dims.widths.panel_length - STIFFENER_IN - 5.0
    design = bar("stiffener", length, (w, h), stuff.timber, stuff.timber_density)
    panel = draft.usual("panel")
    x, y, z = panel.point((dims.lengths.panel_depth - w, STIFFENER_IN, -h))
    draft.add("stiffener", design, laid(design, (x, y, z), Y, (-1.0, 0.0, 0.0)), "panel")
    top = z + h + dims.heights.panel
    count = math.ceil(length / 200.0)
    heads = [(x + w / 2.0, y + length * (k + 0.5) / count, top) for k in range(count)]
    joined = draft.screw("4x45", "panel", "stiffener", heads, _DOWN)
    draft.touch(ContactKind.SCREWED, "stiffener", "panel", fasteners=(joined,))


def _dowels(draft: Draft, dims: Dimensions) -> None:
    """Two dowels stand in the ledger; the panel drops over them and cannot shift along or across."""
    w, t = dims.widths, dims.heights.panel
    top = dims.heights.platform - t
    x = dims.lengths.front + JOINT + DOWEL_IN
    down = DOWEL_LENGTH - DOWEL_UP
    design = Bought(
        name="dowel",
        material="beech",
        stock="dowel 10 x 40",
        density=720.0,
        designation="beech dowel 10 x 40, DIN 68150",
        mass=0.0,
        shape=Shape((Cylinder(DOWEL / 2.0, DOWEL_LENGTH),)),
        envelope_volume=math.pi / 4.0 * DOWEL**2 * DOWEL_LENGTH,
    )
    between = (w.left - w.right - 2.0 * LEDGER_IN) / LEDGER_SCREWS / 2.0
    for k, y in enumerate((w.right + LEDGER_IN + between, w.left - LEDGER_IN - between), start=1):
        draft.bore("ledger", Hole(at=(x, y, top), into=_DOWN, diameter=DOWEL, depth=down, purpose="dowel, glued"))
        over = Hole(at=(x, y, top), into=_UP, diameter=DOWEL + 0.4, depth=DOWEL_UP + 1.0, purpose="over dowel")
        draft.bore("panel", over)
        dowel = draft.add(f"ledger_dowel_{k}", design, at(x, y, top - down))
        draft.touch(ContactKind.SCREWED, dowel, "ledger", resists=frozenset({"+n", "-n", "u", "v", "m"}))
        draft.touch(ContactKind.PINNED, "panel", dowel, NIGHTS, gap=0.2, release=Release.HAND)


def _latch_spots(dims: Dimensions) -> tuple[tuple[str, str, float, float], ...]:
    """Holder, then centre of the latch: place along the edge and face it is screwed to."""
    w, le = dims.widths, dims.lengths
    face = le.seat_front
    middle = le.front + JOINT + le.panel_depth * 0.6
    inner = w.wall_night + dims.sections.post[0]
    return (
        ("ledger", "x", w.right + 80.0, face),
        ("ledger", "x", w.left - 80.0, face),
        ("night_cleat", "y", middle, inner),
    )


def _keeper_spots(dims: Dimensions) -> tuple[tuple[float, float, bool], ...]:
    """Centre of each keeper in the panel's frame (y, x) and whether it lies along x."""
    home = panel_place(dims, "night").inverse()
    out = []
    for _, facing, along, face in _latch_spots(dims):
        centre = face + LATCH[1] / 2.0
        x, y, _ = home.point((centre, along, 0.0) if facing == "x" else (along, centre, 0.0))
        out.append((y, x, facing == "y"))
    return tuple(out)


def _keeper_pocket(y: float, x: float, along_x: bool) -> Pocket:
    a, b = (KEEPER[0], KEEPER[1]) if along_x else (KEEPER[1], KEEPER[0])
    deep = KEEPER[2] + KEEPER_SUNK
    return Pocket(
        lo=(x - a / 2.0, y - b / 2.0, 0.0), hi=(x + a / 2.0, y + b / 2.0, deep), open_to=("-z",), purpose="keeper"
    )


def _latches(draft: Draft, dims: Dimensions) -> None:
    """Toggle latches pull the panel down at night; their keepers are let into its underside."""
    top = dims.heights.platform - dims.heights.panel
    home = draft.usual("panel")
    for k, ((holder, facing, along, face), (y, x, along_x)) in enumerate(
        zip(_latch_spots(dims), _keeper_spots(dims), strict=True), start=1
    ):
        a, out, down = LATCH
        low = top - down - LATCH_DOWN
        latch = _block("toggle_latch", (a, out, down), 0.06, _LATCH_SAYS)
        lo = (face, along - a / 2.0, low) if facing == "x" else (along - a / 2.0, face, low)
        name = draft.add(f"latch_{k}", latch, laid(latch, lo, *_facing(facing == "y")))
        draft.touch(ContactKind.SCREWED, name, holder, fasteners=(_SMALL,))
        p, q = (KEEPER[0], KEEPER[1]) if along_x else (KEEPER[1], KEEPER[0])
        keeper = _block("keeper", KEEPER, 0.01, "keeper plate of the toggle latch, 30 x 14 x 2")
        spot = home.point((x - p / 2.0, y - q / 2.0, KEEPER_SUNK))
        plate = draft.add(f"latch_{k}_keeper", keeper, laid(keeper, spot, *_facing(along_x)), "panel")
        draft.touch(ContactKind.SCREWED, plate, "panel", fasteners=(_SMALL,))
        draft.touch(ContactKind.LATCHED, plate, name, NIGHTS, gap=KEEPER_SUNK + LATCH_DOWN, release=Release.HAND)


def _facing(along_x: bool) -> tuple[Vec3, Vec3]:
    """Directions of a block's x and y when it lies along x or along y."""
    return ((1.0, 0.0, 0.0), Y) if along_x else (Y, (-1.0, 0.0, 0.0))


def _stowed(draft: Draft, dims: Dimensions, lid: Lid) -> None:
    """By day off the desk the panel rides on the rear lid, its stiffener behind the rear bearer, strapped down."""
    edge = REAR_GAP + dims.lengths.panel_depth
    for part in draft.parts:
        if part in ("rear_bearer", "right_rail", "left_rail"):
            draft.touch(ContactKind.RESTS, "panel", part, PANEL_STOWED, release=Release.HAND)
        elif part.startswith(f"{lid.name}_slat"):
            beyond = draft.usual(part).translation[0] - dims.sections.slat[0] - edge
            if beyond < CLOSE_SLAT:
                gap = max(0.0, beyond)
                draft.touch(ContactKind.RESTS, "panel", part, PANEL_STOWED, gap=gap, release=Release.HAND)
    for k, x in enumerate((0.3, 0.75), start=1):
        _strap(draft, dims, f"strap_{k}", REAR_GAP + dims.lengths.panel_depth * x)
        draft.touch(ContactKind.STRAPPED, "panel", f"strap_{k}", ("drive",), release=Release.HAND)
    front = (dims.lengths.middle + dims.lengths.front) / 2.0
    _strap(draft, dims, "strap_3", front)
    draft.joint(
        Joint(
            name="panel_slide",
            kind=JointKind.SLIDE,
            moving="panel",
            base="desk_cleat",
            origin=(dims.lengths.near, dims.widths.panel_desk, dims.heights.desk_under),
            axis=(1.0, 0.0, 0.0),
            low=0.0,
            high=dims.lengths.parked - dims.lengths.near,
        )
    )


def _strap(draft: Draft, dims: Dimensions, name: str, x: float) -> None:
    """A retracting strap: its case on the left rail; the webbing, not shown, hooks into a hole in the right rail."""
    length, out, tall = 60.0, STRAP_OUT, 40.0
    case = _block("strap", (length, out, tall), 0.35, "retracting lashing strap 25 wide with hook, 2.5 kN")
    z = dims.heights.platform - 75.0
    draft.add(name, case, at(x - length / 2.0, dims.widths.left, z))
    draft.touch(ContactKind.SCREWED, name, "left_rail", fasteners=(_SMALL,))
    hole = Hole(
        at=(x, dims.widths.right, z + 45.0),
        into=Y,
        diameter=16.0,
        depth=dims.sections.rail[0],
        through=True,
        purpose="strap hook",
    )
    draft.bore("right_rail", hole)


_LATCH_SAYS = "toggle latch 28 x 30, steel, adjustable, with keeper"
_SMALL = Fastener(designation="wood screw 3.5 x 16, countersunk, EN 14592", count=2)


def _block(name: str, size: Vec3, mass: float, designation: str) -> Bought:
    a, b, c = size
    return Bought(
        name=name,
        material="steel",
        stock=designation,
        density=STEEL,
        designation=designation,
        mass=mass,
        shape=Shape((Box((0.0, 0.0, 0.0), size),)),
        envelope_volume=a * b * c,
    )
