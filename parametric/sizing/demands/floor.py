"""Demands on floor length: bed, feet, the way in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from parametric.sizing.clash import Balance, Lever, State
from parametric.sizing.demands.levers import FAR, day_length, one, plain, rule
from parametric.sizing.limits import GOOD_WAY, LEAST_ALLOWANCE, LEAST_FEET
from parametric.sizing.solve import END_GAP


def _bed_room(state: State) -> Balance:
    """The bed asked for against the floor at night."""
    brief, tall = state.brief, state.who.tallest
    wish = brief.bed.length
    demands = (
        (f"bed {wish:.0f}",)
        if wish is not None
        else (f"stature {tall:.0f}", f"allowance {brief.bed.length_allowance:.0f}")
    )
    need = wish if wish is not None else tall + brief.bed.length_allowance
    return Balance(demands=demands, need=need, have=brief.van.length_night - state.dims.lengths.rear - END_GAP)


def _bed_room_levers(state: State) -> Iterator[Lever]:
    bed, van = state.brief.bed, state.brief.van
    yield Lever(
        start=van.length_night,
        limit=van.length_night + FAR,
        changes=one("van.length_night"),
        says=lambda value, _: f"{value - van.length_night:.0f} more floor length at night",
    )
    if bed.length is not None:
        yield Lever(
            start=bed.length,
            limit=state.who.tallest + LEAST_ALLOWANCE,
            changes=one("bed.length"),
            says=plain("bed length"),
        )
    else:
        yield Lever(
            start=bed.length_allowance,
            limit=LEAST_ALLOWANCE,
            changes=one("bed.length_allowance"),
            says=plain("length_allowance"),
        )


def _short_bed(state: State) -> Balance | None:
    """A wish for a bed shorter than the sleeper."""
    wish = state.brief.bed.length
    if wish is None:
        return None
    return Balance(
        demands=(f"stature {state.who.tallest:.0f}", f"least allowance {LEAST_ALLOWANCE:.0f}"),
        need=state.who.tallest + LEAST_ALLOWANCE,
        have=wish,
    )


def _short_bed_levers(state: State) -> Iterator[Lever]:
    yield Lever(start=state.dims.lengths.bed, limit=2600.0, changes=one("bed.length"), says=plain("bed length"))


def _feet(state: State) -> Balance:
    le = state.dims.lengths
    return Balance(
        demands=(f"seat front {le.seat_front:.0f}", f"feet {LEAST_FEET:.0f}"),
        need=le.seat_front + LEAST_FEET,
        have=le.foot_end,
    )


def _feet_levers(state: State) -> Iterator[Lever]:
    yield day_length(state)
    yield Lever(
        start=state.dims.lengths.platform,
        limit=700.0,
        changes=one("bed.platform_length"),
        says=plain("platform_length"),
    )


def _entry(state: State) -> Balance | None:
    """The slot between seat front and parked panel, unless the aisle is wide enough to get in from the side."""
    le, slot = state.dims.lengths, state.brief.rules.entry_slot
    if state.dims.widths.aisle >= max(GOOD_WAY, slot):
        return None
    rest = le.panel_depth + END_GAP
    return Balance(
        demands=(f"seat front {le.seat_front:.0f}", f"slot {slot:.0f}", f"desk depth {le.panel_depth:.0f}"),
        need=le.seat_front + slot + rest,
        have=le.parked + rest,
    )


def _entry_levers(state: State) -> Iterator[Lever]:
    yield day_length(state)
    bed, tall = state.brief.bed, state.who.tallest
    yield Lever(
        start=state.dims.lengths.bed,
        limit=tall + LEAST_ALLOWANCE,
        changes=one("bed.length"),
        says=plain("bed length"),
    )
    yield Lever(
        start=bed.width,
        limit=610.0,
        changes=one("bed.width"),
        says=lambda value, after: f"a bed {value:.0f} wide, aisle {after.dims.widths.aisle:.0f}",
    )


RULES: Final = (
    rule("sleeping length", _bed_room, _bed_room_levers),
    rule("bed too short", _short_bed, _short_bed_levers),
    rule("foot room", _feet, _feet_levers),
    rule("way in to the seat", _entry, _entry_levers),
)
