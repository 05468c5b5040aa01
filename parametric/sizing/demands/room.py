"""Demands on the room round the furniture: storage, aisle, door, lids."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from parametric.brief.interior import fixed_things
from parametric.sizing.clash import Balance, Lever, State
from parametric.sizing.demands.levers import FAR, LEAST_MATTRESS, mattress, one, plain, platform_key, rule, seat_lever
from parametric.sizing.kinds import panel
from parametric.sizing.limits import LEAST_WAY, SEAT_OVER
from parametric.sizing.room import beyond_foot, meets

OVER: Final = 2.0  # frame over what stays below it
LEAST_FOAM: Final = 40.0  # foam left under a seated person (own estimate)


def _storage(state: State) -> Balance | None:
    wish = state.brief.bed.storage_height
    if wish is None:
        return None
    frame = state.dims.heights.platform - state.dims.heights.storage
    return Balance(
        demands=(f"storage {wish:.0f}", f"frame and slats {frame:.0f}"),
        need=wish + frame,
        have=state.dims.heights.platform,
    )


def _storage_levers(state: State) -> Iterator[Lever]:
    wish = state.brief.bed.storage_height
    assert wish is not None
    yield Lever(start=wish, limit=0.0, changes=one("bed.storage_height"), says=plain("storage_height"))
    popliteal = state.who.at_desk.mean["popliteal_height"] + state.who.shoes
    yield seat_lever(state, max(state.dims.heights.seat, popliteal + SEAT_OVER))
    if platform_key(state.brief) != "bed.platform_height":
        yield mattress(state, _thinnest(state))


def _leaving(state: State) -> Balance | None:
    """Aisle beside the bed, unless there is room beyond its foot."""
    dims, brief = state.dims, state.brief
    foot = beyond_foot(brief.van, dims.lengths.rear + dims.lengths.bed, (dims.widths.right, dims.widths.left))
    if foot >= LEAST_WAY:
        return None
    return Balance(
        demands=(f"bed width {brief.bed.width:.0f}", f"aisle {LEAST_WAY:.0f}"),
        need=brief.bed.width + LEAST_WAY,
        have=brief.bed.width + dims.widths.aisle,
    )


def _leaving_levers(state: State) -> Iterator[Lever]:
    van, width = state.brief.van, state.brief.bed.width
    yield Lever(start=width, limit=610.0, changes=one("bed.width"), says=lambda v, _: f"a bed {v:.0f} wide")
    yield Lever(
        start=van.length_night,
        limit=van.length_night + FAR,
        changes=one("van.length_night"),
        says=lambda value, _: f"{value - van.length_night:.0f} more floor length at night",
    )


def _door(state: State) -> Balance | None:
    """The panel with its stiffener against the opening it passes best, its longest side going through first."""
    dims = state.dims
    openings = [o for o in state.brief.van.opening if o.kind != "roof"]
    if not openings:
        return None
    thick = dims.heights.panel + dims.sections.stiffener[1]
    flat = min(dims.lengths.panel_depth, dims.widths.panel_length)
    best = max(openings, key=lambda o: (min(o.width, o.height) >= thick, max(o.width, o.height)))
    return Balance(demands=(f"panel {flat:.0f} by {thick:.0f} on edge",), need=flat, have=max(best.width, best.height))


def _door_levers(state: State) -> Iterator[Lever]:
    le = state.dims.lengths
    yield Lever(
        start=le.platform,
        limit=le.bed - 500.0 - panel.JOINT,
        changes=one("bed.platform_length"),
        says=lambda value, after: f"platform_length {value:.0f}, desk depth {after.dims.lengths.panel_depth:.0f}",
    )


def _lids(state: State) -> Balance:
    """The longer lid, standing, against the ceiling with the roof down."""
    dims, van = state.dims, state.brief.van
    b, le = dims.sections.bearer[0], dims.lengths
    longest = max(le.middle - b * 1.5 - le.rear, le.front - b * 1.5 - le.middle)
    rest = panel.KNUCKLE + panel.LID_SPARE
    return Balance(
        demands=(f"slat top {dims.heights.platform:.0f}", f"lid {longest:.0f}", f"hinge and play {rest:.0f}"),
        need=dims.heights.platform + longest + rest,
        have=van.ceiling - van.lining.ceiling - van.lining.floor,
    )


def _lid_levers(state: State) -> Iterator[Lever]:
    yield seat_lever(state, 150.0)
    yield Lever(
        start=state.dims.lengths.platform,
        limit=900.0,
        changes=one("bed.platform_length"),
        says=plain("platform_length"),
    )


def _over_fixed(state: State) -> Balance | None:
    """The frame against the tallest thing that stays under it: rails, bearers, ledger."""
    dims, s = state.dims, state.dims.sections
    under = dims.heights.platform - s.rail[1]
    le, w = dims.lengths, dims.widths
    along = (le.rear, le.front + s.ledger[0])
    half = s.bearer[0] / 2.0
    members = (
        (along, (w.right, w.right + s.rail[0])),
        (along, (w.left - s.rail[0], w.left)),
        ((le.rear, le.rear + s.bearer[0]), (w.right, w.left)),
        ((le.middle - half, le.middle + half), (w.right, w.left)),
        ((le.front - s.bearer[0], along[1]), (w.right, w.left)),
    )
    tall = [
        f
        for f in fixed_things(state.brief.van)
        if f.z[0] < dims.heights.platform and any(meets(f.x, x) and meets(f.y, y) for x, y in members)
    ]
    if not tall:
        return None
    worst = max(tall, key=lambda f: f.z[1])
    return Balance(
        demands=(f"{worst.name} {worst.z[1]:.0f} high", f"play {OVER:.0f}", f"frame {s.rail[1]:.0f}"),
        need=worst.z[1] + OVER + s.rail[1],
        have=under + s.rail[1],
    )


def _over_fixed_levers(state: State) -> Iterator[Lever]:
    popliteal = state.who.at_desk.mean["popliteal_height"] + state.who.shoes
    yield seat_lever(state, max(state.dims.heights.seat, popliteal + SEAT_OVER))
    if platform_key(state.brief) != "bed.platform_height":
        yield mattress(state, _thinnest(state))


def _thinnest(state: State) -> float:
    """A mattress that still has foam under the seated person."""
    return max(LEAST_MATTRESS, state.brief.bed.mattress.sink_seated + LEAST_FOAM)


RULES: Final = (
    rule("storage height", _storage, _storage_levers),
    rule("way out of bed", _leaving, _leaving_levers),
    rule("frame over what stays", _over_fixed, _over_fixed_levers),
    rule("door", _door, _door_levers),
    rule("lids under the ceiling", _lids, _lid_levers),
)
