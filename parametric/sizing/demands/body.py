"""Demands of the body: head, seat, thigh, elbow, knees."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, Final

from parametric.body.links import Links
from parametric.posture.relief import knee_angle_when_lowered, recline_for
from parametric.sizing.clash import Balance, Lever, State, Way
from parametric.sizing.demands.levers import (
    FAR,
    LEAST_MATTRESS,
    desk_lever,
    mattress,
    one,
    plain,
    rule,
    seat_lever,
)
from parametric.sizing.limits import ELBOW_OFF, SEAT_OVER, SEAT_UNDER
from parametric.sizing.room import over_head

KNEES_STILL_GOOD: Final = 75.0  # below this a lower seat is no way out (own estimate)
RECLINE_STILL_WORK: Final = 30.0  # past this nobody types (own estimate)


def _head(state: State) -> Balance:
    dims, body, clear = state.dims, state.who.at_desk, state.brief.rules.head_clearance
    sitting = body.mean["sitting_height"]
    return Balance(
        demands=(f"seat {dims.heights.seat:.0f}", f"sitting height {sitting:.0f}", f"clearance {clear:.0f}"),
        need=dims.heights.seat + sitting + clear,
        have=over_head(state.brief.van, body, dims.lengths.back, dims.widths.place, roof_up=True),
    )


def _raised(state: State) -> Any:
    """A roof raised over the whole van, or the one there is raised further."""
    van = state.brief.van
    x, y = ((0.0, van.length_day), (-1500.0, 1500.0)) if van.roof is None else (van.roof.x, van.roof.y)
    thickness = 30.0 if van.roof is None else van.roof.thickness

    def changes(height: float) -> Mapping[str, Any]:
        floor = van.lining.floor
        over = height + van.lining.ceiling + floor
        roof = {"x": x, "y": y, "front": over, "rear": over, "thickness": thickness, "lifts": True}
        return {"van.roof": roof}

    return changes


def _head_levers(state: State) -> Iterator[Lever]:
    found = _head(state)
    yield Lever(
        start=found.have,
        limit=found.have + FAR,
        changes=_raised(state),
        says=lambda value, _: f"a roof raised to {value:.0f} over the head while working",
    )
    links, seat = Links.of(state.who.at_desk), state.dims.heights.seat

    drop = 1.0
    while (knees := knee_angle_when_lowered(links.thigh, drop + 1.0)) is not None and knees >= KNEES_STILL_GOOD:
        drop += 1.0
    lever = seat_lever(state, seat - drop)

    def says(value: float, after: State) -> str:
        knees = knee_angle_when_lowered(links.thigh, seat - after.dims.heights.seat)
        return f"{lever.says(value, after)} with knees at {knees:.0f} degrees"

    yield replace(lever, says=says)
    clear = state.brief.rules.head_clearance
    yield Lever(start=clear, limit=0.0, changes=one("rules.head_clearance"), says=plain("head clearance"))


def _head_postures(state: State, short: float) -> Iterator[Way]:
    body = state.who.at_desk
    hip = Links.of(body).hip_above_seat
    recline = recline_for(short, body.mean["sitting_height"] - hip)
    if recline is not None and recline <= RECLINE_STILL_WORK:
        yield Way(says=f"recline {recline:.0f} degrees", changes={})


def _seat_low(state: State) -> Balance:
    body, bed = state.who.at_desk, state.brief.bed
    popliteal = body.mean["popliteal_height"]
    return Balance(
        demands=(
            f"popliteal height {popliteal:.0f}",
            f"shoe {state.who.shoes:.0f}",
            f"a seat {SEAT_UNDER:.0f} under it",
        ),
        need=popliteal + state.who.shoes - SEAT_UNDER,
        have=state.dims.heights.platform + state.dims.heights.mattress - bed.mattress.sink_seated,
    )


def _seat_low_levers(state: State) -> Iterator[Lever]:
    yield seat_lever(state, state.dims.heights.seat + FAR)
    yield mattress(state, 300.0)


def _seat_high(state: State) -> Balance:
    """Turned round: what the seat asks of the lower leg, and what the leg has."""
    popliteal = state.who.at_desk.mean["popliteal_height"]
    return Balance(
        demands=(f"seat {state.dims.heights.seat:.0f}",),
        need=state.dims.heights.seat,
        have=popliteal + state.who.shoes + SEAT_OVER,
    )


def _seat_high_levers(state: State) -> Iterator[Lever]:
    yield seat_lever(state, 100.0)
    yield mattress(state, LEAST_MATTRESS)


def _thigh(state: State) -> Balance:
    h, gap = state.dims.heights, state.brief.rules.thigh_gap
    return Balance(
        demands=(f"seat {h.seat:.0f}", f"thigh {h.thigh - h.seat:.0f}", f"gap {gap:.0f}", f"board {h.panel:.1f}"),
        need=h.thigh + gap + h.panel,
        have=h.desk,
    )


def _thigh_levers(state: State) -> Iterator[Lever]:
    yield desk_lever(state, state.dims.heights.desk + FAR)
    yield seat_lever(state, 200.0)
    yield Lever(start=state.brief.rules.thigh_gap, limit=0.0, changes=one("rules.thigh_gap"), says=plain("thigh_gap"))


def _elbow(state: State) -> Balance:
    """A desk over the elbow: what the desk asks of the arm, and what the arm has."""
    h, elbow = state.dims.heights, state.who.at_desk.mean["elbow_height_sitting"]
    thigh, gap = h.thigh - h.seat, state.brief.rules.thigh_gap
    wished = state.brief.sitting.desk_height is not None
    demands = (f"desk {h.desk:.0f}",) if wished else (f"thigh {thigh:.0f}", f"gap {gap:.0f}", f"board {h.panel:.1f}")
    return Balance(demands=demands, need=h.desk, have=h.seat + elbow + ELBOW_OFF)


def _elbow_levers(state: State) -> Iterator[Lever]:
    if state.brief.sitting.desk_height is not None:
        yield desk_lever(state, 200.0)
        yield seat_lever(state, state.dims.heights.seat + FAR)
        return
    yield Lever(start=state.brief.rules.thigh_gap, limit=0.0, changes=one("rules.thigh_gap"), says=plain("thigh_gap"))


def _low_desk(state: State) -> Balance:
    """A desk under the elbow."""
    elbow = state.dims.heights.seat + state.who.at_desk.mean["elbow_height_sitting"]
    return Balance(
        demands=(f"elbow {elbow:.0f} above the floor", f"a desk {ELBOW_OFF:.0f} under it"),
        need=elbow - ELBOW_OFF,
        have=state.dims.heights.desk,
    )


def _low_desk_levers(state: State) -> Iterator[Lever]:
    yield desk_lever(state, state.dims.heights.desk + FAR)
    yield seat_lever(state, 200.0)


def _knee(state: State) -> Balance:
    dims = state.dims
    stiffener = dims.lengths.near + dims.lengths.panel_depth - dims.sections.stiffener[0]
    under = dims.heights.panel + (dims.sections.stiffener[1] if stiffener < dims.lengths.knee else 0.0)
    return Balance(
        demands=(f"knee {dims.heights.knee:.0f} with shoe", f"board {under:.1f}"),
        need=dims.heights.knee + under,
        have=dims.heights.desk,
    )


RULES: Final = (
    rule("head room", _head, _head_levers, _head_postures),
    rule("seat too low", _seat_low, _seat_low_levers),
    rule("seat too high", _seat_high, _seat_high_levers),
    rule("thigh room", _thigh, _thigh_levers),
    rule("desk over the elbow", _elbow, _elbow_levers),
    rule("desk under the elbow", _low_desk, _low_desk_levers),
    rule("knee room", _knee, _low_desk_levers),
)
