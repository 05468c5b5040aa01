"""Desk support `cleat_legs`: a grooved wall cleat on stepped uprights, and two plug-in legs in two stages."""

from __future__ import annotations

import math
from typing import Final

from parametric.core.pose import Pose, Vec3, at, frame
from parametric.core.shape import Box, Cylinder, Shape, rectangle
from parametric.mechanism.draft import Draft, Y, Z, bar, laid
from parametric.mechanism.kinds import panel as extension
from parametric.mechanism.materials import ALUMINIUM, STEEL, Materials
from parametric.mechanism.model import VAN, ContactKind, Fastener, Release
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Board, Bought, Hole, Pocket, Tube
from parametric.mechanism.platform import Frame
from parametric.mechanism.stowage import Item, stow
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.cleat_legs import PLUG
from parametric.sizing.kinds.panel import GROOVE, GROOVE_PLAY

PIN_EDGE: Final = 11.0  # locking pin from the panel's wall edge
LIP: Final = 30.0  # material under the groove
GROOVE_SPARE: Final = 1.0
BOLT_LOW, BOLT_HIGH = 18.0, 58.0  # over the cleat's underside: two steps of 20 apart, clear of the groove
BOLT, BOLT_HOLE = 8.0, 8.4
UPRIGHT: Final = 60.0
UPRIGHT_IN: Final = 90.0  # from the cleat's ends
PIN, PIN_HOLE, PIN_IN = 8.0, 8.4, 60.0  # locking pin, its place from the panel's near edge
CLEAT_RADIUS: Final = 10.0
STAGE_PIN, STAGE_HOLE = 6.0, 6.2
PINS_AT: Final = (25.0, 85.0)  # from the lower end of the upper stage
INSERT_SUNK: Final = 2.1  # under flush, so that the stowed panel rests on wood
INSERT, STUD, STUD_LENGTH = 16.0, 10.0, 13.0
LEGS: Final = ("near", "far")


def build(draft: Draft, dims: Dimensions, stuff: Materials, frame_: Frame) -> None:
    """Add cleat, uprights, locking pin, legs and the clips that hold their stages when they are not in use."""
    _uprights(draft, dims, stuff)
    _cleat(draft, dims, stuff)
    _locking_pin(draft, dims)
    for leg in LEGS:
        _upper(draft, dims, leg)
        _lowers(draft, dims, leg)
    _stow(draft, dims, frame_)


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


def _uprights(draft: Draft, dims: Dimensions, stuff: Materials) -> None:
    """Uprights on the wall with rows of holes, one step apart, for the cleat's bolts."""
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
        draft.touch(ContactKind.SCREWED, name, VAN, normal=Y, fasteners=(joined,), release=Release.TOOL)


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
        designation="ISO 4762 M8 x 65 with tee nut M8",
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


def _leg_axis(dims: Dimensions, leg: str, mode: str) -> tuple[float, float, float]:
    """Where a leg meets the underside of the panel in a mode, van frame."""
    along = dims.legs.near if leg == "near" else dims.legs.far
    x, y, z = extension.place(dims, mode).point((along, dims.widths.panel_length - dims.legs.inset, 0.0))
    return x, y, z


def _standing(dims: Dimensions, leg: str, mode: str) -> Pose:
    """The upper stage's frame when the leg stands: x down the leg, y forward."""
    half = dims.sections.leg / 2.0
    x, y, z = _leg_axis(dims, leg, mode)
    return frame((x - half, y + half, z - dims.legs.head), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0))


def _upper(draft: Draft, dims: Dimensions, leg: str) -> None:
    s, legs = dims.sections.leg, dims.legs
    half = s / 2.0
    holes = tuple(_cross_hole(legs.upper - d, s) for d in PINS_AT)
    tube = _tube("leg_upper", legs.upper, s, dims.sections.leg_wall, holes)
    upper = draft.add(f"leg_{leg}_upper", tube, _standing(dims, leg, "night"))
    for mode in DESKS:
        draft.move(upper, (mode,), _standing(dims, leg, mode))
    usual = draft.usual(upper)
    head = draft.add(f"leg_{leg}_head", _head(dims), usual, upper)
    draft.touch(ContactKind.SCREWED, head, upper)
    _insert(draft, dims, leg, head)
    pin = Bought(
        name="leg_pin",
        material="steel",
        stock="pin 6",
        density=STEEL,
        designation="detent pin 6 x 34 with ring and lanyard",
        mass=0.012,
        shape=Shape((Cylinder(STAGE_PIN / 2.0, s + 4.0),)),
        envelope_volume=math.pi / 4.0 * STAGE_PIN**2 * (s + 4.0),
    )
    for k, d in enumerate(PINS_AT, start=1):
        pose = usual @ frame((legs.upper - d, -2.0, half), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
        name = draft.add(f"leg_{leg}_pin_{k}", pin, pose, upper)
        draft.touch(ContactKind.PINNED, name, upper, gap=0.1, release=Release.HAND)


def _head(dims: Dimensions) -> Bought:
    """Fitting on top of the upper stage: plug, flange, and a stud that screws into the panel's insert."""
    s, w, head = dims.sections.leg, dims.sections.leg_wall, dims.legs.head
    half, plug = s / 2.0, s - 2.0 * w
    up = frame((-head, half, half), (0.0, 1.0, 0.0), (0.0, 0.0, -1.0))
    shape = Shape(
        (
            Box((-head, 0.0, 0.0), (0.0, s, s)),
            Box((-0.5, w, w), (PLUG, w + plug, w + plug)),
            Cylinder(STUD / 2.0, STUD_LENGTH, up),
        )
    )
    volume = s * s * head + plug * plug * PLUG + math.pi / 4.0 * STUD**2 * STUD_LENGTH
    return Bought(
        name="leg_head",
        material="steel",
        stock="tube plug with stud",
        density=STEEL,
        designation="plug for square tube with flange 10 and stud M10 x 13",
        mass=0.12,
        shape=shape,
        envelope_volume=volume,
    )


def _insert(draft: Draft, dims: Dimensions, leg: str, head: str) -> None:
    """Flush insert nut in the panel's underside."""
    x, y, z = _leg_axis(dims, leg, "night")
    sunk, length = INSERT_SUNK, 12.0
    up: Vec3 = (0.0, 0.0, 1.0)
    draft.bore("panel", Hole(at=(x, y, z), into=up, diameter=INSERT, depth=sunk + length, purpose="insert nut M10"))
    bore = STUD / 2.0 + 0.2
    design = Bought(
        name="leg_insert",
        material="steel",
        stock="insert nut M10",
        density=STEEL,
        designation="insert nut M10 x 12, outside 16",
        mass=0.015,
        shape=Shape((Cylinder(INSERT / 2.0, length),), (Cylinder(bore, length + 2.0, at(0.0, 0.0, -1.0)),)),
        envelope_volume=math.pi * length * ((INSERT / 2.0) ** 2 - bore**2),
    )
    name = draft.add(f"leg_{leg}_insert", design, at(x, y, z + sunk), "panel")
    draft.touch(ContactKind.SCREWED, name, "panel")
    up_modes = (*NIGHTS, *DESKS)
    draft.touch(ContactKind.SCREWED, head, name, up_modes, gap=0.2, release=Release.HAND)
    resists = frozenset({"-n"})
    draft.touch(ContactKind.RESTS, "panel", head, up_modes, resists=resists, release=Release.HAND)


def _lowers(draft: Draft, dims: Dimensions, leg: str) -> None:
    """One lower stage for both heights, or one each."""
    legs = dims.legs
    desk_overlaps = [_overlap(dims, legs.lower_desk, step - dims.heights.panel) for step in dims.steps]
    night = dims.heights.platform - dims.heights.panel
    if legs.kind == "telescopic":
        overlaps = [*desk_overlaps, _overlap(dims, legs.lower_desk, night)]
        _lower(draft, dims, leg, "lower", legs.lower_desk, overlaps, (*NIGHTS, *DESKS))
        return
    _lower(draft, dims, leg, "lower_desk", legs.lower_desk, desk_overlaps, DESKS)
    _lower(draft, dims, leg, "lower_night", legs.lower_night, [_overlap(dims, legs.lower_night, night)], NIGHTS)


def _overlap(dims: Dimensions, lower: float, under: float) -> float:
    """Overlap of the stages when the panel's underside is at a height."""
    return dims.legs.fittings + dims.legs.upper + lower - under


def _lower(
    draft: Draft, dims: Dimensions, leg: str, name: str, length: float, overlaps: list[float], modes: tuple[str, ...]
) -> None:
    s, inner = dims.sections.leg, dims.sections.leg_lower
    at_holes = sorted({round(overlap - d, 3) for overlap in overlaps for d in PINS_AT})
    tube = _tube(f"leg_{name}", length, inner, dims.sections.leg_wall, tuple(_cross_hole(x, inner) for x in at_holes))
    play = (s - inner) / 2.0

    def pose(mode: str) -> Pose:
        under = extension.place(dims, mode).translation[2]
        return _standing(dims, leg, mode) @ at(dims.legs.upper - _overlap(dims, length, under), play, play)

    part = draft.add(f"leg_{leg}_{name}", tube, pose(modes[0]))
    for mode in modes[1:]:
        draft.move(part, (mode,), pose(mode))
    foot = draft.add(f"leg_{leg}_{name}_foot", _foot(dims), draft.usual(part) @ at(length, 0.0, 0.0), part)
    draft.touch(ContactKind.SCREWED, foot, part)
    draft.touch(ContactKind.RESTS, foot, VAN, modes, normal=Z, release=Release.HAND)
    joined = draft.modes if dims.legs.kind == "telescopic" else modes
    draft.touch(ContactKind.SLIDES, part, f"leg_{leg}_upper", joined, gap=play, release=Release.HAND)
    for k in range(1, len(PINS_AT) + 1):
        draft.touch(ContactKind.PINNED, part, f"leg_{leg}_pin_{k}", joined, gap=0.1, release=Release.HAND)


def _foot(dims: Dimensions) -> Bought:
    inner, w, high = dims.sections.leg_lower, dims.sections.leg_wall, dims.legs.foot
    plug, half = inner - 2.0 * w, inner / 2.0
    down = frame((0.0, half, half), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    volume = plug * plug * 15.0 + math.pi * 14.0**2 * high
    return Bought(
        name="leg_foot",
        material="plastic",
        stock="levelling foot",
        density=1100.0,
        designation="levelling foot for square tube 25 x 25 x 2, height 15 +/- 7",
        mass=0.03,
        shape=Shape((Box((-15.0, w, w), (0.5, w + plug, w + plug)), Cylinder(14.0, high, down))),
        envelope_volume=volume,
    )


def _tube(name: str, length: float, outside: float, wall: float, holes: tuple[Hole, ...]) -> Tube:
    return Tube(
        name=name,
        material="aluminium",
        stock=f"EN AW-6060 T66 tube {outside:g} x {outside:g} x {wall:g}",
        density=ALUMINIUM,
        length=length,
        width=outside,
        height=outside,
        wall=wall,
        holes=holes,
    )


def _cross_hole(x: float, outside: float) -> Hole:
    return Hole(
        at=(x, 0.0, outside / 2.0),
        into=(0.0, 1.0, 0.0),
        diameter=STAGE_HOLE,
        depth=outside,
        through=True,
        purpose="detent pin 6",
    )


def _stow(draft: Draft, dims: Dimensions, frame_: Frame) -> None:
    """Clip the stages that a mode does not use into the channels beside the rails."""
    head, foot = dims.legs.head + STUD_LENGTH, dims.legs.foot
    legs, outer, inner = dims.legs, dims.sections.leg, dims.sections.leg_lower
    off_desk, off_night = (*NIGHTS, *PANEL_STOWED), (*DESKS, *PANEL_STOWED)
    tail = legs.lower_desk - _night_overlap(dims) + foot if legs.kind == "telescopic" else 0.0
    items = []
    for leg in LEGS:
        upper, desk, night = f"leg_{leg}_upper", f"leg_{leg}_lower_desk", f"leg_{leg}_lower_night"
        items.append(Item(part=upper, length=legs.upper, side=outer, before=head, after=tail, modes=PANEL_STOWED))
        if legs.kind == "exchange":
            items += [
                Item(part=desk, length=legs.lower_desk, side=inner, before=0.0, after=foot, modes=off_desk),
                Item(part=night, length=legs.lower_night, side=inner, before=0.0, after=foot, modes=off_night),
            ]
    stow(draft, dims, frame_, items)
    if dims.legs.kind == "exchange":
        return
    play = (dims.sections.leg - dims.sections.leg_lower) / 2.0
    inside = at(dims.legs.upper - _night_overlap(dims), play, play)
    for leg in LEGS:
        for mode in PANEL_STOWED:
            draft.move(f"leg_{leg}_lower", (mode,), draft.world(f"leg_{leg}_upper", mode) @ inside)


def _night_overlap(dims: Dimensions) -> float:
    return _overlap(dims, dims.legs.lower_desk, dims.heights.platform - dims.heights.panel)
