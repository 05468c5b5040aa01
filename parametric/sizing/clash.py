"""Which wishes cannot hold together, by how many millimetres, and the least change that frees each.

Each rule compares what some demands need together with what there is. Every way out is a change of one demand,
worked out so that the rule then just holds.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.body.links import Links
from parametric.brief.interior import ceiling_at
from parametric.brief.model import Brief
from parametric.posture.relief import knee_angle_when_lowered, recline_for
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds import feet_down
from parametric.sizing.solve import END_GAP, People

LEAST_LENGTH = 70.0
KNEES_STILL_GOOD = 75.0  # below this a lower seat is no way out (own estimate)
RECLINE_STILL_WORK = 30.0  # past this nobody types (own estimate)


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Demands that cannot all hold.

    Attributes:
        about: What they compete for, such as ``head room``.
        demands: The smallest set that clashes, with their figures.
        need: What they need together, mm.
        have: What there is, mm.
        ways: One change each that would free it.
    """

    about: str
    demands: tuple[str, ...]
    need: float
    have: float
    ways: tuple[str, ...]

    @property
    def short(self) -> float:
        """By how much they miss, mm."""
        return self.need - self.have

    @property
    def says(self) -> str:
        """The whole of it in words."""
        ways = f" Any one of: {', '.join(self.ways)}." if self.ways else ""
        what = (
            " and ".join((", ".join(self.demands[:-1]), self.demands[-1])) if len(self.demands) > 1 else self.demands[0]
        )
        return f"{self.about}: {what} need {self.need:.0f}; there are {self.have:.0f}: {self.short:.0f} short.{ways}"


def clashes(brief: Brief, who: People, dims: Dimensions) -> tuple[Clash, ...]:
    """Every clash of a brief, in a fixed order."""
    found = (
        *_head_room(brief, who, dims),
        *_sleeping_length(brief, who, dims),
        *_way_in(brief, who, dims),
        *_desk_height(brief, who, dims),
        *_storage(brief, who, dims),
        *_foot_room(dims),
        *_aisle(brief, dims),
    )
    return tuple(c for c in found if c.short > 0.5)


def _head_room(brief: Brief, who: People, dims: Dimensions) -> Iterator[Clash]:
    body, clear = who.at_desk, brief.rules.head_clearance
    x = dims.lengths.back + body.mean["chest_depth"] / 2.0
    have = ceiling_at(brief.van, x, dims.widths.place, True)
    sitting = body.mean["sitting_height"]
    need = dims.heights.seat + sitting + clear
    short = need - have
    links = Links.of(body)
    ways = []
    if brief.van.roof is None:
        ways.append(f"a roof {short:.0f} higher over the seat")
    elif brief.van.roof.lifts or not _over(brief, x, dims.widths.place):
        ways.append(f"a raised roof of {need:.0f} over the head")
    knees = knee_angle_when_lowered(links.thigh, short)
    if knees is not None and knees >= KNEES_STILL_GOOD:
        ways.append(f"seat {dims.heights.seat - short:.0f} with knees at {knees:.0f} degrees")
    recline = recline_for(short, sitting - links.hip_above_seat)
    if recline is not None and recline <= RECLINE_STILL_WORK:
        ways.append(f"recline {recline:.0f} degrees")
    if short <= clear:
        ways.append(f"head clearance {clear - short:.0f}")
    yield Clash(
        about="head room",
        demands=(f"seat {dims.heights.seat:.0f}", f"sitting height {sitting:.0f}", f"clearance {clear:.0f}"),
        need=need,
        have=have,
        ways=tuple(ways),
    )


def _over(brief: Brief, x: float, y: float) -> bool:
    roof = brief.van.roof
    return roof is not None and roof.x[0] <= x <= roof.x[1] and roof.y[0] <= y <= roof.y[1]


def _sleeping_length(brief: Brief, who: People, dims: Dimensions) -> Iterator[Clash]:
    have = brief.van.length_night - dims.lengths.rear - END_GAP
    least = who.tallest + LEAST_LENGTH
    wish = brief.bed.length
    if wish is not None and wish < least:
        yield Clash(
            about="sleeping length",
            demands=(f"stature {who.tallest:.0f}", f"least allowance {LEAST_LENGTH:.0f}"),
            need=least,
            have=wish,
            ways=(f"a bed of {least:.0f}",),
        )
    need = wish if wish is not None else who.tallest + brief.bed.length_allowance
    ways = [f"{need - have:.0f} more floor length at night"]
    if wish is None and have >= least:
        ways.append(f"length_allowance {have - who.tallest:.0f}")
    demand = (
        (f"bed {need:.0f}",)
        if wish is not None
        else (
            f"stature {who.tallest:.0f}",
            f"allowance {brief.bed.length_allowance:.0f}",
        )
    )
    yield Clash(about="sleeping length", demands=demand, need=need, have=have, ways=tuple(ways))


def _way_in(brief: Brief, who: People, dims: Dimensions) -> Iterator[Clash]:
    if dims.widths.aisle >= 450.0:
        return
    slot = brief.rules.entry_slot
    start = dims.lengths.seat_front
    need = start + slot + dims.lengths.panel_depth + END_GAP
    have = dims.lengths.parked + dims.lengths.panel_depth + END_GAP
    short = need - have
    ways = [f"{short:.0f} more floor length by day", f"a bed {short:.0f} shorter"]
    if dims.lengths.bed - short < who.tallest + LEAST_LENGTH:
        ways.pop()
    ways.append(f"an aisle of 450 instead of {dims.widths.aisle:.0f}")
    yield Clash(
        about="way in to the seat",
        demands=(f"seat front {start:.0f}", f"slot {slot:.0f}", f"desk depth {dims.lengths.panel_depth:.0f}"),
        need=need,
        have=have,
        ways=tuple(ways),
    )


def _desk_height(brief: Brief, who: People, dims: Dimensions) -> Iterator[Clash]:
    """Thigh, gap and board against a desk height that was asked for or that the elbow wants."""
    h, gap = dims.heights, brief.rules.thigh_gap
    thigh = h.thigh - h.seat
    need = h.thigh + gap + h.panel
    demands = (f"seat {h.seat:.0f}", f"thigh {thigh:.0f}", f"gap {gap:.0f}", f"board {h.panel:.1f}")
    if brief.sitting.desk_height is not None:
        ways = (f"desk {need:.0f}", f"seat {h.seat - need + h.desk:.0f}")
        yield Clash(about="desk height", demands=demands, need=need, have=h.desk, ways=ways)
        return
    elbow = h.seat + who.at_desk.mean["elbow_height_sitting"] + 15.0
    ways = (f"a thigh gap of {gap - need + elbow:.0f}", f"a board {need - elbow:.0f} thinner")
    yield Clash(about="desk at elbow height", demands=demands, need=need, have=elbow, ways=ways)


def _storage(brief: Brief, who: People, dims: Dimensions) -> Iterator[Clash]:
    wish = brief.bed.storage_height
    if wish is None:
        return
    frame = dims.heights.platform - dims.heights.storage
    need = wish + frame
    short = need - dims.heights.platform
    m = brief.bed.mattress
    ways = [f"storage {dims.heights.storage:.0f}"]
    if m.thickness - short >= 50.0:
        ways.append(f"a mattress of {m.thickness - short:.0f} with the same seat")
    best = float(feet_down.seat_height(who.at_desk.mean["popliteal_height"], who.shoes))
    if dims.heights.seat + short <= best + feet_down.SLACK + 15.0:
        ways.append(f"platform_height {need:.0f}, seat {dims.heights.seat + short:.0f}")
    yield Clash(
        about="storage height",
        demands=(f"storage {wish:.0f}", f"frame and slats {frame:.0f}"),
        need=need,
        have=dims.heights.platform,
        ways=tuple(ways),
    )


def _foot_room(dims: Dimensions) -> Iterator[Clash]:
    need = dims.lengths.seat_front + 450.0
    short = need - dims.lengths.foot_end
    yield Clash(
        about="foot room",
        demands=(f"seat front {dims.lengths.seat_front:.0f}", "feet 450"),
        need=need,
        have=dims.lengths.foot_end,
        ways=(f"{short:.0f} more clear floor by day", f"platform_length {dims.lengths.platform - short:.0f}"),
    )


def _aisle(brief: Brief, dims: Dimensions) -> Iterator[Clash]:
    foot = brief.van.length_night - dims.lengths.rear - dims.lengths.bed
    if foot >= 330.0:
        return
    width = dims.widths.aisle + brief.bed.width
    yield Clash(
        about="way out of bed",
        demands=(f"bed width {brief.bed.width:.0f}", "aisle 330"),
        need=brief.bed.width + 330.0,
        have=width,
        ways=(f"a bed {width - 330.0:.0f} wide", f"{330.0 - foot:.0f} more length beyond the foot of the bed"),
    )
