"""Are the supports what they should be: level at every step, stages overlapping, screwed to ground that holds."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from parametric.assembly.placed import Assembly
from parametric.brief.model import Brief
from parametric.brief.van import Ground
from parametric.core import sources
from parametric.core.check import Check, Verdict, judge
from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.kinds.cleat_legs import LIP
from parametric.mechanism.legs import LEGS
from parametric.mechanism.model import VAN, ContactKind
from parametric.mechanism.modes import DESKS
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.cleat_legs import least_overlap

PACKED = 0.3  # a gap behind a screwed part that needs no packing


def support_checks(brief: Brief, dims: Dimensions, assembly: Assembly) -> list[Check]:
    """Checks of legs, cleats and what they are screwed to."""
    return [*_level(dims, assembly), _overlap(dims), *_fixing_ground(brief, assembly), _payload(brief, assembly)]


def _level(dims: Dimensions, assembly: Assembly) -> list[Check]:
    """Tilt of the panel between groove floor and leg heads, read from where the parts are."""
    out = []
    for mode in DESKS:
        poses = assembly.poses[mode]
        cleat = poses["desk_cleat"].translation[2] + LIP
        legs = [poses[f"leg_{leg}_upper"].translation[2] + dims.legs.head for leg in LEGS]
        rise = max(abs(z - cleat) for z in legs)
        tilt = math.degrees(math.atan2(rise, dims.widths.panel_length))
        out.append(
            judge(
                "support.level",
                tilt,
                high=0.5,
                unit="deg",
                mode=mode,
                parts=("panel", "desk_cleat"),
                says=f"desk tilts {tilt:.2f} degrees between cleat and legs",
                source=sources.LEVEL,
            )
        )
    return out


def _overlap(dims: Dimensions) -> Check:
    return judge(
        "support.leg_overlap",
        dims.legs.overlap,
        low=least_overlap(dims.sections.leg),
        mode="desk/high",
        parts=("leg_near_upper",),
        says=f"{dims.legs.kind} legs overlap {dims.legs.overlap:.0f} at the highest step",
        source=sources.OVERLAP,
    )


def _fixing_ground(brief: Brief, assembly: Assembly) -> list[Check]:
    """Every part screwed to a wall lies on ground the brief says takes screws, and off what must not be drilled."""
    out = []
    for contact in assembly.mechanism.contacts:
        if contact.b != VAN or contact.kind is not ContactKind.SCREWED:
            continue
        part = contact.a
        box = extent(assembly.mechanism.parts[part], assembly.poses["desk"][part])
        out.append(_ground(brief, part, box))
        if contact.gap > PACKED:
            out.append(_packing(part, contact.gap, box))
    return out


def _packing(part: str, gap: float, box: Extent) -> Check:
    return judge(
        "fit.packing",
        gap,
        good_high=PACKED,
        parts=(part,),
        at=box[0],
        says=f"the wall recedes {gap:.1f} behind {part}",
        source=sources.FIXING,
        proposal=f"pack {part} out by {gap:.1f}",
    )


def _ground(brief: Brief, part: str, box: Extent) -> Check:
    floor = brief.van.lining.floor
    walls = [g for g in brief.van.fixing if g.surface == "right"]
    banned = [g for g in brief.van.no_drill if g.surface == "right" and _overlaps(g, box, floor)]
    held = Check(
        id="fit.fixing_ground",
        says=f"{part} is screwed to ground that holds",
        verdict=Verdict.PASS,
        source=sources.FIXING,
        parts=(part,),
        at=box[0],
    )
    if banned:
        why = banned[0].reason or "marked no_drill"
        return replace(held, says=f"{part} is screwed where nothing may be drilled: {why}", verdict=Verdict.FAIL)
    if not walls:
        return replace(
            held,
            says=f"{part} is screwed to the wall; the brief does not say what holds there",
            verdict=Verdict.CAUTION,
            proposal="add [[van.fixing]] for the right wall",
        )
    if _covered(walls, box, floor):
        return held
    return replace(
        held,
        says=f"{part} reaches past the ground that takes screws",
        verdict=Verdict.FAIL,
        proposal="a board on the wall behind it, fixed where the wall holds",
    )


def _overlaps(ground: Ground, box: Extent, floor: float) -> bool:
    (x0, x1), (z0, z1) = ground.x, _heights(ground, floor)
    return box[0][0] < x1 and box[1][0] > x0 and box[0][2] < z1 and box[1][2] > z0


def _covered(grounds: Sequence[Ground], box: Extent, floor: float) -> bool:
    return any(
        x0 <= box[0][0] and box[1][0] <= x1 and z0 <= box[0][2] and box[1][2] <= z1
        for (x0, x1), (z0, z1) in ((g.x, _heights(g, floor)) for g in grounds)
    )


def _heights(ground: Ground, floor: float) -> tuple[float, float]:
    """Height range of a piece of wall over the finished floor."""
    assert ground.z is not None
    return ground.z[0] - floor, ground.z[1] - floor


def _payload(brief: Brief, assembly: Assembly) -> Check:
    mass = assembly.mass
    return judge(
        "ride.payload",
        mass,
        unit="kg",
        high=brief.van.payload,
        says=f"furniture and mattress weigh {mass:.0f} kg",
        source=sources.PAYLOAD,
        proposal="lighter sheet and sections",
    )
