"""Three mattress pieces, cut at the middle bearer and at the platform's end, and where each lies in each mode."""

from __future__ import annotations

import math
from itertools import product
from typing import Final

from parametric.core.pose import Pose
from parametric.mechanism.draft import Draft, Z, laid
from parametric.mechanism.lids import OPEN, Lid, lids_of
from parametric.mechanism.materials import Materials
from parametric.mechanism.model import VAN, ContactKind, Release
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Soft
from parametric.mechanism.platform import frame_of
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import KNUCKLE, REAR_GAP
from parametric.sizing.solve import UPRIGHT_DOWN

PIECES = ("mattress_rear", "mattress_front", "mattress_end")
LEAN: Final = 4.0  # an opened lid leans into the pieces stacked beside it by this much and a little more
CLEAT_CLEAR: Final = 14.0  # to the cleat, with its bolt heads
ASIDE: Final = 30.0  # a piece on the floor to the wall, beyond where the bed keeps off it
FLOOR_GAP: Final = 60.0  # a piece on the floor to the platform's latches
LEAN_DEPTH: Final = 0.2  # of the thickness: foam pressed aside


def build(draft: Draft, dims: Dimensions, stuff: Materials, lids: tuple[Lid, Lid], sinks: tuple[float, float]) -> None:
    """Add the pieces.

    Args:
        draft: Mechanism in the making; the lids are in it.
        dims: Dimensions.
        stuff: Materials.
        lids: Rear and front lid.
        sinks: Sink under a seated and a lying person, mm.
    """
    le, w, m, top = dims.lengths, dims.widths, dims.heights.mattress, dims.heights.platform
    ends = {
        "mattress_rear": (le.rear, le.middle),
        "mattress_front": (le.middle, le.front),
        "mattress_end": (le.front, le.rear + le.bed),
    }
    for name, (x0, x1) in ends.items():
        piece = Soft(
            name=name,
            material="foam",
            stock=f"foam {m:g}",
            density=stuff.foam_density,
            length=x1 - x0,
            width=w.left - w.right,
            thickness=m,
            sink_seated=sinks[0],
            sink_lying=sinks[1],
        )
        draft.add(name, piece, laid(piece, (x0, w.right, top)))
    _stack(draft, dims, lids)
    _rests(draft, dims, lids)


def _stack(draft: Draft, dims: Dimensions, lids: tuple[Lid, Lid]) -> None:
    le, m, t, top = dims.lengths, dims.heights.mattress, dims.heights.panel, dims.heights.platform
    rear, front = lids

    def put(piece: str, modes: tuple[str, ...], x: float, z: float, y: float = dims.widths.stacked) -> None:
        draft.move(piece, modes, Pose((x, y, z)))

    put("mattress_end", DESKS, le.rear, top + m)
    put("mattress_rear", PANEL_STOWED, le.rear, top + t)
    put("mattress_end", PANEL_STOWED, le.rear, top + t + m)
    if front_piece_on_floor(dims):
        put("mattress_front", ("access/front",), le.seat_front + FLOOR_GAP, 0.0, dims.widths.right + ASIDE)
        # the lid then leans on the rear piece
        put("mattress_rear", ("access/front",), front.axis - _leans_by(t + m) + LEAN - (le.middle - le.rear), top + t)
    else:
        put("mattress_front", ("access/front",), _stacked_front(dims), top + t + 2.0 * m)
    beside_cleat = dims.widths.wall_desk + t + dims.sections.cleat[0] + CLEAT_CLEAR
    high = top + 2.0 * m > dims.heights.desk_low - t - UPRIGHT_DOWN - CLEAT_CLEAR
    y = max(dims.widths.stacked, beside_cleat) if high else dims.widths.stacked
    put("mattress_rear", ("access/rear",), rear.axis + _leans_by(2.0 * m) - LEAN, top + m, y)


def front_piece_on_floor(dims: Dimensions) -> bool:
    """Whether the front piece is too long to lie on the rear pieces when its lid is opened."""
    return _stacked_front(dims) < REAR_GAP


def _stacked_front(dims: Dimensions) -> float:
    """Rear end of the front piece, stacked on the others so that the opened lid leans on it."""
    le, axis = dims.lengths, lids_of(frame_of(dims))[1].axis
    upper = dims.heights.panel + 3.0 * dims.heights.mattress
    return axis - _leans_by(upper) + LEAN - (le.front - le.middle)


def _leans_by(height: float) -> float:
    """How far the face of an opened lid has come over its hinge at a height over the slat top, mm."""
    lean = math.radians(OPEN - 90.0)
    return (height - KNUCKLE) * math.tan(lean) - KNUCKLE / math.cos(lean)


def _rests(draft: Draft, dims: Dimensions, lids: tuple[Lid, Lid]) -> None:
    by_hand = Release.HAND
    rear, front = lids
    on_slats = (*DESKS, "night")
    _on_lid(draft, "mattress_rear", rear, on_slats)
    _on_lid(draft, "mattress_front", front, tuple(m for m in draft.modes if m != "access/front"))
    draft.touch(ContactKind.RESTS, "mattress_end", "mattress_rear", (*DESKS, *PANEL_STOWED), release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_end", "panel", NIGHTS, release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_rear", "panel", PANEL_STOWED, release=by_hand)
    if front_piece_on_floor(dims):
        draft.touch(ContactKind.RESTS, "mattress_front", VAN, ("access/front",), normal=Z, release=by_hand)
    else:
        draft.touch(ContactKind.RESTS, "mattress_front", "mattress_end", ("access/front",), release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_rear", "mattress_front", ("access/rear",), release=by_hand)
    for strap, piece in (("strap_1", "mattress_end"), ("strap_2", "mattress_end"), ("strap_3", "mattress_front")):
        draft.touch(ContactKind.STRAPPED, piece, strap, ("drive",), release=by_hand)
    lean = LEAN_DEPTH * dims.heights.mattress
    stacks = ((front, PIECES, "access/front"), (rear, ("mattress_front", "mattress_rear"), "access/rear"))
    for lid, pieces, mode in stacks:
        leaning = [p for p in draft.parts if p.startswith((f"{lid.name}_slat", f"{lid.name}_hinge"))]
        for part, piece in product(leaning, pieces):
            draft.touch(ContactKind.PRESSES, part, piece, (mode,), depth=lean, release=by_hand)


def _on_lid(draft: Draft, piece: str, lid: Lid, modes: tuple[str, ...]) -> None:
    for part in draft.parts:
        if part.startswith(f"{lid.name}_slat"):
            draft.touch(ContactKind.RESTS, piece, part, modes, release=Release.HAND)
        elif "_hinge_" in part and part.startswith(lid.name):
            draft.touch(ContactKind.PRESSES, part, piece, modes, depth=2.0 * KNUCKLE, release=Release.HAND)
