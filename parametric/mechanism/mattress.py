"""Three mattress pieces, cut at the middle bearer and at the platform's end, and where each lies in each mode."""

from __future__ import annotations

from typing import Final

from parametric.core.pose import Pose
from parametric.mechanism.draft import Draft, laid
from parametric.mechanism.lids import Lid
from parametric.mechanism.materials import Materials
from parametric.mechanism.model import ContactKind, Release
from parametric.mechanism.modes import DESKS, NIGHTS, PANEL_STOWED
from parametric.mechanism.part import Soft
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import KNUCKLE

PIECES = ("mattress_rear", "mattress_front", "mattress_end")
LEAN: Final = 4.0  # an opened lid leans into the pieces stacked beside it by this much and a little more
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
    _stack(draft, dims)
    _rests(draft, dims, lids)


def _stack(draft: Draft, dims: Dimensions) -> None:
    le, m, t, top = dims.lengths, dims.heights.mattress, dims.heights.panel, dims.heights.platform

    def put(piece: str, modes: tuple[str, ...], x: float, z: float) -> None:
        draft.move(piece, modes, Pose((x, dims.widths.stacked, z)))

    put("mattress_end", DESKS, le.rear, top + m)
    put("mattress_rear", PANEL_STOWED, le.rear, top + t)
    put("mattress_end", PANEL_STOWED, le.rear, top + t + m)
    put("mattress_front", ("access/front",), le.middle - 24.0 - (le.front - le.middle), top + t + 2.0 * m)
    put("mattress_rear", ("access/rear",), le.middle + LEAN, top + m)


def _rests(draft: Draft, dims: Dimensions, lids: tuple[Lid, Lid]) -> None:
    by_hand = Release.HAND
    rear, front = lids
    on_slats = (*DESKS, "night")
    _on_lid(draft, "mattress_rear", rear, on_slats)
    _on_lid(draft, "mattress_front", front, tuple(m for m in draft.modes if m != "access/front"))
    draft.touch(ContactKind.RESTS, "mattress_end", "mattress_rear", (*DESKS, *PANEL_STOWED), release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_end", "panel", NIGHTS, release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_rear", "panel", PANEL_STOWED, release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_front", "mattress_end", ("access/front",), release=by_hand)
    draft.touch(ContactKind.RESTS, "mattress_rear", "mattress_front", ("access/rear",), release=by_hand)
    for strap, piece in (("strap_1", "mattress_end"), ("strap_2", "mattress_end"), ("strap_3", "mattress_front")):
        draft.touch(ContactKind.STRAPPED, piece, strap, ("drive",), release=by_hand)
    lean = LEAN_DEPTH * dims.heights.mattress
    for lid, piece, mode in ((front, "mattress_front", "access/front"), (rear, "mattress_rear", "access/rear")):
        for part in draft.parts:
            if part.startswith((f"{lid.name}_slat", f"{lid.name}_hinge")):
                draft.touch(ContactKind.PRESSES, part, piece, (mode,), depth=lean, release=by_hand)


def _on_lid(draft: Draft, piece: str, lid: Lid, modes: tuple[str, ...]) -> None:
    for part in draft.parts:
        if part.startswith(f"{lid.name}_slat"):
            draft.touch(ContactKind.RESTS, piece, part, modes, release=Release.HAND)
        elif "_hinge_" in part and part.startswith(lid.name):
            draft.touch(ContactKind.PRESSES, part, piece, modes, depth=2.0 * KNUCKLE, release=Release.HAND)
