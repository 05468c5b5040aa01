"""Two lids of slats on battens, hinged at the middle bearer with the knuckles over the slat top."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from parametric.catalogue.screws import screw
from parametric.core.pose import Vec3, at
from parametric.core.pose import frame as framed
from parametric.core.shape import Box, Cylinder, Shape
from parametric.mechanism.draft import Draft, Y, bar, laid
from parametric.mechanism.materials import STEEL, Materials
from parametric.mechanism.model import ContactKind, Fastener, Joint, JointKind, Release
from parametric.mechanism.part import Bought, Hole
from parametric.mechanism.platform import Frame
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import KNUCKLE

PLAY: Final = 3.0  # lid to frame
TURN_IN: Final = 5.0  # batten ends short of the lid, so that their lower corner turns past the end bearer
MOST_GAP: Final = 45.0
CHANNEL: Final = 48.0  # rail to side batten: the leg stages are clipped there
OPEN: Final = 100.0  # degrees
HINGE_IN: Final = 120.0  # outer hinges to the rails
HINGE_OFF: Final = 100.0  # middle hinge to the middle batten
NARROW: Final = 620.0  # a lid this narrow hangs on two hinges
LEAF, LEAF_LENGTH, LEAF_THICK, KNUCKLE_R = 20.0, 60.0, 1.5, 3.0
_DOWN: Vec3 = (0.0, 0.0, -1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lid:
    """A lid's name and its place along the vehicle.

    Attributes:
        name: ``rear_lid`` or ``front_lid``.
        start: Rear end.
        end: Front end.
        axis: Hinge pin, x.
        hinge_side: +1 if the hinge is at the front end, -1 if at the rear end.
    """

    name: str
    start: float
    end: float
    axis: float
    hinge_side: float

    @property
    def root(self) -> str:
        """The piece the rest of the lid rides on."""
        return f"{self.name}_batten_middle"


def lids_of(frame: Frame) -> tuple[Lid, Lid]:
    """Both lids, from the faces of the frame."""
    r0, r1 = frame.rear_bay
    f0, f1 = frame.front_bay
    return (
        Lid(name="rear_lid", start=r0 + PLAY, end=r1 - PLAY, axis=r1 - PLAY / 2.0, hinge_side=1.0),
        Lid(name="front_lid", start=f0 + PLAY, end=f1 - PLAY, axis=f0 + PLAY / 2.0, hinge_side=-1.0),
    )


def slat_places(start: float, end: float, width: float) -> tuple[float, ...]:
    """Rear edges of slats spread evenly over a lid, the outer two flush with its ends, gaps at most 45 mm."""
    count = max(2, math.ceil((end - start + MOST_GAP) / (width + MOST_GAP)))
    pitch = (end - start - width) / (count - 1)
    return tuple(start + pitch * k for k in range(count))


def build(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame) -> tuple[Lid, Lid]:
    """Add both lids with their hinges and joints, shut in every mode but the one that opens them."""
    lids = lids_of(frame)
    for lid in lids:
        _battens(draft, dims, stuff, frame, lid)
        _slats(draft, dims, stuff, frame, lid)
        _hinges(draft, frame, lid)
        _swing(draft, frame, lid)
    return lids


def _open_modes(lid: Lid) -> tuple[str, ...]:
    return ("access/rear",) if lid.name == "rear_lid" else ("access/front",)


def shut_modes(draft: Draft, lid: Lid) -> tuple[str, ...]:
    """Modes in which a lid lies on its strips."""
    return tuple(m for m in draft.modes if m not in _open_modes(lid))


def _battens(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame, lid: Lid) -> None:
    w, h = dims.sections.batten
    short = TURN_IN
    start = lid.start if lid.hinge_side < 0 else lid.start + short
    end = lid.end if lid.hinge_side > 0 else lid.end - short
    design = bar(f"{lid.name}_batten", end - start, (w, h), stuff.timber, stuff.timber_density)
    y = {
        "middle": (frame.left + frame.right - w) / 2.0,
        "right": frame.right + CHANNEL,
        "left": frame.left - CHANNEL - w,
    }
    strips = ("rear_strip", "middle_rear_strip") if lid.name == "rear_lid" else ("middle_front_strip", "front_strip")
    for side, place in y.items():
        batten = f"{lid.name}_batten_{side}"
        pose = laid(design, (start, place, frame.seat_of_batten))
        draft.add(batten, design, pose, None if side == "middle" else lid.root)
        for strip in strips:
            draft.touch(ContactKind.RESTS, batten, strip, shut_modes(draft, lid), release=Release.HAND)


def _slats(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame, lid: Lid) -> None:
    w, h = dims.sections.slat
    design = bar("slat", frame.inside - 2.0 * PLAY, (w, h), stuff.timber, stuff.timber_density)
    z = frame.top - h
    for k, x in enumerate(slat_places(lid.start, lid.end, w), start=1):
        slat = draft.add(
            f"{lid.name}_slat_{k}",
            design,
            laid(design, (x, frame.right + PLAY, z), Y, (-1.0, 0.0, 0.0)),
            lid.root,
        )
        for side in ("middle", "right", "left"):
            _screw_slat(draft, dims, frame, slat, f"{lid.name}_batten_{side}", x + w / 2.0)


def _screw_slat(draft: Draft, dims: Dimensions, frame: Frame, slat: str, batten: str, x: float) -> None:
    y = draft.usual(batten).translation[1] + dims.sections.batten[0] / 2.0
    off = min(18.0, dims.sections.slat[0] / 2.0 - 12.0)
    # too narrow for two heads side by side: one in the middle
    places = (x - off, x + off) if off >= 8.0 else (x,)
    heads = [(place, y, frame.top) for place in places]
    joined = draft.screw("4x40", slat, batten, heads, _DOWN)
    draft.touch(ContactKind.SCREWED, slat, batten, fasteners=(joined,))


def _hinges(draft: Draft, frame: Frame, lid: Lid) -> None:
    """Three butt hinges with their leaves on top of bearer and first slat."""
    fixed, moving = _leaf("hinge_leaf_fixed", (0.0, 40.0)), _leaf("hinge_leaf_moving", (20.2,))
    slats = [n for n in draft.parts if n.startswith(f"{lid.name}_slat_")]
    slat = slats[-1] if lid.hinge_side > 0 else slats[0]
    to_lid: Vec3 = (-lid.hinge_side, 0.0, 0.0)
    away: Vec3 = (lid.hinge_side, 0.0, 0.0)
    span = frame.inside
    places = [frame.right + HINGE_IN, frame.left - HINGE_IN]
    if span > NARROW:
        places.insert(1, frame.right + span / 2.0 + HINGE_OFF)
    for k, y in enumerate(places, start=1):
        # the leaf frame: x along the pin, y away from it over the wood, z up
        flip = 1.0 if lid.hinge_side > 0 else -1.0
        half, z = flip * LEAF_LENGTH / 2.0, frame.top + KNUCKLE
        pose = framed((lid.axis, y + half, z), (0.0, -flip, 0.0), away)
        base = draft.add(f"{lid.name}_hinge_{k}_fixed", fixed, pose)
        # turned end for end, so that its knuckle meets the gap between the other two
        leaf = draft.add(
            f"{lid.name}_hinge_{k}_moving",
            moving,
            framed((lid.axis, y - half, z), (0.0, flip, 0.0), to_lid),
            lid.root,
        )
        _screw_leaf(draft, base, "middle_bearer", lid.axis + lid.hinge_side * 13.0, y, frame.top)
        _screw_leaf(draft, leaf, slat, lid.axis - lid.hinge_side * 13.0, y, frame.top)
        draft.touch(ContactKind.HINGED, leaf, base)
        # each knuckle turns a hair over the wood of the other leaf
        draft.touch(ContactKind.HINGED, leaf, "middle_bearer", gap=PLAY / 2.0, resists=frozenset())
        draft.touch(ContactKind.HINGED, slat, base, gap=PLAY / 2.0, resists=frozenset())


def _screw_leaf(draft: Draft, leaf: str, holder: str, x: float, y: float, top: float) -> None:
    for v in (y - 20.0, y + 20.0):
        draft.bore(holder, Hole(at=(x, v, top), into=_DOWN, diameter=2.0, depth=14.5, purpose="pilot for 3.5x16"))
    joined = Fastener(designation=screw("3.5x16").designation, count=2)
    draft.touch(ContactKind.SCREWED, leaf, holder, fasteners=(joined,))


def _leaf(name: str, knuckles: tuple[float, ...]) -> Bought:
    """One leaf with its knuckles; x along the pin, the leaf on +y, its underside KNUCKLE below the pin."""
    under = -KNUCKLE
    plate = Box((0.0, KNUCKLE_R, under), (LEAF_LENGTH, KNUCKLE_R + LEAF, under + LEAF_THICK))
    adds: list[Box | Cylinder] = [plate]
    volume = LEAF * LEAF_LENGTH * LEAF_THICK
    length = 20.0 if len(knuckles) > 1 else 19.6
    for x in knuckles:
        pose = framed((x, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
        adds.append(Cylinder(KNUCKLE_R, length, pose))
        adds.append(Box((x, 0.5, under), (x + length, KNUCKLE_R + 1.0, under + LEAF_THICK)))
        volume += length * (math.pi * KNUCKLE_R**2 + _web())
    holes = tuple(Cylinder(2.0, 6.0, at(x, 13.0, under - 2.0)) for x in (10.0, 50.0))
    volume -= len(holes) * math.pi * 4.0 * LEAF_THICK
    return Bought(
        name=name,
        material="steel",
        stock="butt hinge 60 x 46",
        density=STEEL,
        designation="butt hinge 60 x 46 x 1.5, EN 1935 grade for 20 kg, half of it",
        mass=0.02,
        shape=Shape(tuple(adds), holes),
        envelope_volume=volume,
    )


def _web() -> float:
    """Section of the web between knuckle and leaf that lies outside both, mm2."""
    start, meets = 0.5, math.sqrt(KNUCKLE_R**2 - (KNUCKLE - LEAF_THICK) ** 2)

    def under_circle(y: float) -> float:
        return (y * math.sqrt(KNUCKLE_R**2 - y * y) + KNUCKLE_R**2 * math.asin(y / KNUCKLE_R)) / 2.0

    below = KNUCKLE * (meets - start) - (under_circle(meets) - under_circle(start))
    return below + LEAF_THICK * (KNUCKLE_R - meets)


def _swing(draft: Draft, frame: Frame, lid: Lid) -> None:
    joint = draft.joint(
        Joint(
            name=f"{lid.name}_swing",
            kind=JointKind.SWING,
            moving=lid.root,
            base="middle_bearer",
            origin=(lid.axis, 0.0, frame.top + KNUCKLE),
            axis=(0.0, lid.hinge_side, 0.0),
            low=0.0,
            high=OPEN,
        )
    )
    draft.move(lid.root, _open_modes(lid), joint.pose(OPEN) @ draft.usual(lid.root))
