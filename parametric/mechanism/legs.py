"""Two-stage plug-in legs: upper stage with head and pins, lower stages with feet, and where they ride when unused."""

from __future__ import annotations

import math
from typing import Final

from parametric.core.pose import Pose, Vec3, at, frame
from parametric.core.shape import Box, Cylinder, Shape
from parametric.mechanism.draft import Draft, Z
from parametric.mechanism.materials import ALUMINIUM, STEEL
from parametric.mechanism.model import VAN, ContactKind, Release
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Bought, Hole, Tube
from parametric.mechanism.places import panel_place
from parametric.mechanism.platform import Frame
from parametric.mechanism.stowage import Item, stow
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.cleat_legs import PLUG

LEGS: Final = ("near", "far")
STAGE_PIN, STAGE_HOLE = 6.0, 6.2
PINS_AT: Final = (25.0, 85.0)  # from the lower end of the upper stage
INSERT_SUNK: Final = 2.1  # under flush, so that the stowed panel rests on wood
INSERT, STUD = 16.0, 10.0
SKIN: Final = 2.5  # board left over the insert
LONGEST_INSERT: Final = 12.0
SHORT_OF: Final = 1.1  # stud short of the insert's end


def build(draft: Draft, dims: Dimensions, faces: Frame) -> None:
    """Add both legs and the clips that hold their stages when they are not in use."""
    for leg in LEGS:
        _upper(draft, dims, leg)
        _lowers(draft, dims, leg)
    _stow(draft, dims, faces)


def _leg_axis(dims: Dimensions, leg: str, mode: str) -> tuple[float, float, float]:
    """Where a leg meets the underside of the panel in a mode, van frame."""
    along = dims.legs.near if leg == "near" else dims.legs.far
    x, y, z = panel_place(dims, mode).point((along, dims.widths.panel_length - dims.legs.inset, 0.0))
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
            Cylinder(STUD / 2.0, _stud(dims), up),
        )
    )
    volume = s * s * head + plug * plug * PLUG + math.pi / 4.0 * STUD**2 * _stud(dims)
    return Bought(
        name="leg_head",
        material="steel",
        stock="tube plug with stud",
        density=STEEL,
        designation=f"plug for square tube with flange 10 and stud M10 x {_stud(dims):g}",
        mass=0.12,
        shape=shape,
        envelope_volume=volume,
    )


def _insert_length(dims: Dimensions) -> float:
    """Length of the insert nut: as long as the board takes."""
    return min(LONGEST_INSERT, round(dims.heights.panel - INSERT_SUNK - SKIN, 1))


def _stud(dims: Dimensions) -> float:
    """Length of the leg's stud over its flange."""
    return round(INSERT_SUNK + _insert_length(dims) - SHORT_OF, 1)


def _insert(draft: Draft, dims: Dimensions, leg: str, head: str) -> None:
    """Flush insert nut in the panel's underside."""
    x, y, z = _leg_axis(dims, leg, "night")
    sunk, length = INSERT_SUNK, _insert_length(dims)
    up: Vec3 = (0.0, 0.0, 1.0)
    draft.bore("panel", Hole(at=(x, y, z), into=up, diameter=INSERT, depth=sunk + length, purpose="insert nut M10"))
    bore = STUD / 2.0 + 0.2
    design = Bought(
        name="leg_insert",
        material="steel",
        stock="insert nut M10",
        density=STEEL,
        designation=f"insert nut M10 x {length:g}, outside 16",
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
        under = panel_place(dims, mode).translation[2]
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


def _stow(draft: Draft, dims: Dimensions, faces: Frame) -> None:
    """Clip the stages that a mode does not use into the channels beside the rails."""
    head, foot = dims.legs.head + _stud(dims), dims.legs.foot
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
    stow(draft, dims, faces, items)
    if dims.legs.kind == "exchange":
        return
    play = (dims.sections.leg - dims.sections.leg_lower) / 2.0
    inside = at(dims.legs.upper - _night_overlap(dims), play, play)
    for leg in LEGS:
        for mode in PANEL_STOWED:
            draft.move(f"leg_{leg}_lower", (mode,), draft.world(f"leg_{leg}_upper", mode) @ inside)


def _night_overlap(dims: Dimensions) -> float:
    return _overlap(dims, dims.legs.lower_desk, dims.heights.platform - dims.heights.panel)
