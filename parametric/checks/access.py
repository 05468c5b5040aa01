"""Can the person get in, out, and round it: entry slot, aisle, storage, openings, a place to stand."""

from __future__ import annotations

from collections.abc import Iterable

from parametric.assembly.placed import Assembly
from parametric.brief.model import Brief
from parametric.brief.van import Opening, Van
from parametric.core import sources
from parametric.core.check import Check, Verdict, judge
from parametric.mechanism.extent import extent
from parametric.mechanism.part import is_soft
from parametric.sizing import room
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.limits import GOOD_WAY, LEAST_DOOR, LEAST_WAY


def access_checks(brief: Brief, dims: Dimensions) -> list[Check]:
    """Ways and room round the furniture; numbers only."""
    return [_entry(brief, dims), _leaving(brief, dims), _storage(brief, dims), _way_out(brief.van)]


def _entry(brief: Brief, dims: Dimensions) -> Check:
    slot = dims.lengths.parked - dims.lengths.seat_front
    way = max(slot, dims.widths.aisle if dims.widths.aisle >= GOOD_WAY else 0.0)
    need = brief.rules.entry_slot
    good = max(need, GOOD_WAY)
    return judge(
        "access.entry_slot",
        way,
        low=need,
        good_low=good,
        mode="desk/parked",
        parts=("panel",),
        says=f"way in to the seat with the panel slid forward {way:.0f}",
        source=sources.ENTRY,
        proposal=f"{_more(way, need, good)} floor length by day, or as much less bed",
    )


def _leaving(brief: Brief, dims: Dimensions) -> Check:
    foot = room.beyond_foot(brief.van, dims.lengths.rear + dims.lengths.bed, (dims.widths.right, dims.widths.left))
    way = max(dims.widths.aisle, foot)
    return judge(
        "access.leave_bed",
        way,
        low=LEAST_WAY,
        good_low=GOOD_WAY,
        mode="night",
        says=f"way out of bed {way:.0f}: aisle {dims.widths.aisle:.0f}, beyond the foot {foot:.0f}",
        source=sources.ENTRY,
        proposal=f"{_more(dims.widths.aisle, LEAST_WAY, GOOD_WAY)} aisle, by a narrower bed",
    )


def _more(have: float, least: float, good: float) -> str:
    """How much is missing to what just does and to what is good."""
    if have < least < good:
        return f"at least {least - have:.0f} more ({good - have:.0f} to be good) of"
    return f"{good - have:.0f} more"


def _storage(brief: Brief, dims: Dimensions) -> Check:
    wish = brief.bed.storage_height
    return judge(
        "access.storage_height",
        dims.heights.storage,
        low=wish,
        good_low=wish if wish is not None else 300.0,
        mode="access/front",
        says=f"clear storage {dims.heights.storage:.0f} high",
        source=sources.STORAGE if wish is None else "storage_height of the brief",
        proposal="a higher platform"
        if brief.bed.platform_height is not None
        else "a thinner mattress: the platform rises and the seat stays",
    )


def _way_out(van: Van) -> Check:
    outs = [o for o in van.opening if o.way_out]
    says = ", ".join(f"{o.name} {o.width:.0f} x {o.height:.0f}" for o in outs) or "none"
    enough = sum(_passes(LEAST_DOOR, o) for o in outs) >= 2
    return Check(
        id="access.way_out",
        says=f"ways out marked in the brief: {says}; keep them clear with the bed made",
        verdict=Verdict.PASS if enough else Verdict.CAUTION,
        source=sources.WAY_OUT,
        mode="night",
        proposal=None if enough else "two openings of 457 x 914 or more marked way_out",
    )


def opening_checks(brief: Brief, assembly: Assembly) -> list[Check]:
    """Does every rigid part pass one of the openings as a box."""
    openings = [o for o in brief.van.opening if o.kind != "roof"]
    if not openings:
        return [
            Check(
                id="fit.opening",
                says="the brief names no opening, so nobody knows whether the parts go in",
                verdict=Verdict.CAUTION,
                source=sources.OPENING,
                proposal="add [[van.opening]] tables",
            )
        ]
    stuck = [name for name, sides in _sizes(assembly) if not any(_passes(sides, o) for o in openings)]
    if stuck:
        return [
            Check(
                id="fit.opening",
                says=f"{name} passes no opening",
                verdict=Verdict.FAIL,
                source=sources.OPENING,
                parts=(name,),
                proposal="make it in two pieces, or bring it in before the opening is closed up",
            )
            for name in stuck
        ]
    return [Check(id="fit.opening", says="every part passes an opening", verdict=Verdict.PASS, source=sources.OPENING)]


def _sizes(assembly: Assembly) -> Iterable[tuple[str, tuple[float, float]]]:
    """The two smaller sides of every rigid design: the longest goes through first."""
    for item in assembly.items.values():
        if is_soft(item.design):
            continue
        lo, hi = extent(item.design)
        a, b, _ = sorted(h - low for low, h in zip(lo, hi, strict=True))
        yield item.instances[0], (a, b)


def _passes(sides: tuple[float, float], opening: Opening) -> bool:
    small, big = sorted((opening.width, opening.height))
    return min(sides) <= small and max(sides) <= big
