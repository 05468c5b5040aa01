"""Does the bed fit the sleepers. Numbers only."""

from __future__ import annotations

from parametric.brief.model import Brief
from parametric.core import sources
from parametric.core.check import Check, judge
from parametric.mechanism.lids import lids_of, slat_places
from parametric.mechanism.platform import frame_of
from parametric.posture.diagonal import best_slant
from parametric.sizing import room
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.limits import GOOD_ALLOWANCE, LEAST_ALLOWANCE
from parametric.sizing.solve import People


def sleep_checks(brief: Brief, who: People, dims: Dimensions) -> list[Check]:
    """All checks of the bed."""
    return [
        _length(brief, who, dims),
        _width(brief, who),
        _head_room(brief, dims),
        _slat_gap(dims),
        _end_gap(dims),
        _ventilation(brief),
    ]


def _length(brief: Brief, who: People, dims: Dimensions) -> Check:
    """Room beyond the stature, lying straight or, alone in the bed, at the best slant."""
    straight = dims.lengths.bed - who.tallest
    spare, how = straight, ""
    if straight < LEAST_ALLOWANCE and len(who.bodies) == 1:
        slant = best_slant(who.bodies[0], dims.lengths.bed, brief.bed.width)
        if slant.spare > straight:
            spare, how = slant.spare, f"; lying {slant.angle:.0f} degrees across it leaves {slant.spare:.0f}"
    return judge(
        "sleep.length",
        spare,
        low=LEAST_ALLOWANCE,
        good_low=GOOD_ALLOWANCE,
        mode="night",
        says=f"bed {dims.lengths.bed:.0f} for a stature of {who.tallest:.0f}{how}",
        source=sources.BED_LENGTH,
        proposal=f"{GOOD_ALLOWANCE - spare:.0f} more length",
    )


def _width(brief: Brief, who: People) -> Check:
    if len(who.bodies) == 1:
        low, good = 610.0, 700.0
    else:
        low, good = sum(b.mean["bideltoid_breadth"] for b in who.bodies), 1220.0
    return judge(
        "sleep.width",
        brief.bed.width,
        low=low,
        good_low=max(low, good),
        mode="night",
        says=f"bed {brief.bed.width:.0f} wide for {len(who.bodies)}",
        source=sources.BED_WIDTH,
        proposal=f"widen the bed to {max(low, good):.0f}",
    )


def _head_room(brief: Brief, dims: Dimensions) -> Check:
    le, w, top = dims.lengths, dims.widths, dims.heights.platform + dims.heights.mattress
    space = room.lowest_over(brief.van, (le.rear, le.rear + le.bed), (w.right, w.left), top, roof_up=False) - top
    return judge(
        "sleep.head_room",
        space,
        low=300.0,
        good_low=610.0,
        mode="night",
        says=f"room over the mattress {space:.0f}",
        source=sources.LYING_ROOM,
        proposal="move what hangs there, or a lower platform",
    )


def _slat_gap(dims: Dimensions) -> Check:
    w = dims.sections.slat[0]
    gaps = []
    for lid in lids_of(frame_of(dims)):
        places = slat_places(lid.start, lid.end, w)
        gaps.append(places[1] - places[0] - w)
    # over a bearer the gap is taken up by the bearer itself
    return judge(
        "sleep.slat_gap",
        max(gaps),
        high=75.0,
        good_high=64.0,
        mode="night",
        says=f"widest gap between slats {max(gaps):.0f}",
        source=sources.SLAT_GAP,
    )


def _end_gap(dims: Dimensions) -> Check:
    gap = dims.lengths.extension - dims.lengths.panel_depth
    return judge(
        "sleep.joint",
        gap,
        low=0.0,
        high=8.0,
        mode="night",
        parts=("panel",),
        says=f"gap between platform and panel {gap:.0f}",
        source=sources.JOINT_GAP,
    )


def _ventilation(brief: Brief) -> Check:
    return judge(
        "sleep.ventilation",
        brief.bed.mattress.air_mat,
        good_low=8.0,
        mode="night",
        parts=("panel",),
        says=f"air mat {brief.bed.mattress.air_mat:.0f} under the mattress on the closed panel",
        source=sources.VENTILATION,
        proposal="an air mat of at least 8 under the end piece, or stand the mattress up by day",
    )
