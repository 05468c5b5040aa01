"""Does the seat and the desk fit the body: heights, gaps and room against published criteria. Numbers only."""

from __future__ import annotations

from typing import Final

from parametric.brief.model import Brief
from parametric.checks.chance import Question, chance_outside
from parametric.core import sources
from parametric.core.check import Check, Verdict, judge
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds import feet_down
from parametric.sizing.limits import ELBOW_OFF, KNEE_SPARE, LEAST_FEET, SEAT_OVER, SEAT_UNDER
from parametric.sizing.room import over_head
from parametric.sizing.solve import P_HIGH, P_LOW, People, Worker

LEAST_BEHIND_KNEE: Final = 25.0
KNEE_DEPTH: Final = 440.0
STEPS: Final = ("desk", "desk/low", "desk/high")


def comfort_checks(brief: Brief, who: People, dims: Dimensions) -> list[Check]:
    """All comfort checks of the modes in which somebody sits."""
    out = [_seat_height(who, dims), _seat_depth(who, dims), _back_support()]
    out += [check for other in who.others for check in _other(brief, other, dims)]
    for mode in STEPS:
        out += [
            _desk_height(who, dims, mode),
            _thigh_gap(brief, who, dims, mode),
            _knee_gap(who, dims, mode),
        ]
    out += [
        _desk_depth(brief, dims),
        _desk_width(dims),
        _knee_room(dims),
        _foot_room(brief, dims),
        _heel_room(dims),
        *_head_room(brief, who, dims),
    ]
    return out


def _seat_height(who: People, dims: Dimensions) -> Check:
    wanted = who.at_desk.mean["popliteal_height"] + who.shoes
    off = dims.heights.seat - wanted
    return judge(
        "comfort.seat_height",
        off,
        low=-SEAT_UNDER,
        high=SEAT_OVER,
        mode="desk",
        says=f"loaded seat {dims.heights.seat:.0f} against popliteal height with shoe {wanted:.0f}",
        source=sources.SEAT_HEIGHT,
        chance=chance_outside(who.at_desk, {"popliteal_height": -1.0}, off, -SEAT_UNDER, SEAT_OVER),
        proposal=f"slat top at {dims.heights.platform + wanted - feet_down.SLACK - dims.heights.seat:.0f}",
    )


def _seat_depth(who: People, dims: Dimensions) -> Check:
    gap = dims.lengths.back + who.at_desk.mean["buttock_popliteal_length"] - dims.lengths.seat_front
    return judge(
        "comfort.behind_knee",
        gap,
        low=LEAST_BEHIND_KNEE,
        good_low=50.0,
        good_high=90.0,
        mode="desk",
        chance=chance_outside(who.at_desk, {"buttock_popliteal_length": 1.0}, gap, LEAST_BEHIND_KNEE, None),
        says=f"gap from the seat front to the back of the knee {gap:.0f}",
        source=sources.SEAT_DEPTH,
    )


def _back_support() -> Check:
    return Check(
        id="comfort.back_support",
        says="no back rest at the desk: the trunk holds itself up",
        verdict=Verdict.CAUTION,
        source="RULA trunk score 2 without support (McAtamney and Corlett 1993)",
        mode="desk",
        proposal="a firm cushion between the back and the stacked mattress pieces; get up every 30 to 50 minutes",
    )


def _desk_height(who: People, dims: Dimensions, mode: str) -> Check:
    """The middle step is judged for the likeliest elbow, the outer ones for the 5th and 95th percentile.

    An outer percentile may use whichever step comes nearest.
    """
    body, name = who.at_desk, "elbow_height_sitting"
    share = {"desk": None, "desk/low": P_LOW, "desk/high": P_HIGH}[mode]
    elbow = dims.heights.seat + (body.mean[name] if share is None else body.quantile(name, share))
    desk = dims.desk_at(mode) if share is None else min(dims.steps, key=lambda step: abs(step - elbow))
    hard = ELBOW_OFF if share is None else None
    whose = "the likeliest elbow" if share is None else f"an elbow at the {share * 100:.0f}th percentile,"
    return judge(
        "comfort.desk_height",
        desk - elbow,
        low=None if hard is None else -hard,
        high=hard,
        good_low=-ELBOW_OFF,
        good_high=ELBOW_OFF,
        mode=mode,
        chance=_off_elbow(who, dims) if share is None else None,
        says=f"desk {desk:.0f} against {whose} {elbow:.0f} above the floor",
        source=sources.DESK_HEIGHT,
        proposal=f"desk surface at {elbow:.0f}" if share is None else "measure elbow_height_sitting for the brief",
    )


def _other(brief: Brief, worker: Worker, dims: Dimensions) -> list[Check]:
    """The seat, and the step that serves them best, for somebody else who works at the desk."""
    mean = worker.body.mean
    wanted, elbow = mean["popliteal_height"] + worker.shoes, dims.heights.seat + mean["elbow_height_sitting"]
    over = dims.heights.seat - wanted
    step = min(dims.steps, key=lambda s: abs(s - elbow))
    hole = dims.steps.index(step) + 1
    gap = step - dims.heights.panel - dims.heights.seat - mean["thigh_clearance"]
    knee = step - dims.heights.panel - mean["knee_height"] - worker.shoes
    back = dims.lengths.seat_front + feet_down.BEHIND_KNEE - mean["buttock_popliteal_length"]
    roof = over_head(brief.van, worker.body, back, dims.widths.place, roof_up=True)
    head = roof - dims.heights.seat - mean["sitting_height"]
    return [
        judge(
            "comfort.seat_height",
            over,
            good_low=-SEAT_UNDER,
            good_high=SEAT_OVER,
            mode="desk",
            says=f"{worker.label}: loaded seat {dims.heights.seat:.0f} against popliteal height with shoe {wanted:.0f}",
            source=sources.SEAT_HEIGHT,
            proposal=f"a {'foot rest' if over > 0.0 else 'seat cushion'} of {abs(over):.0f}",
        ),
        judge(
            "comfort.desk_height",
            step - elbow,
            low=-ELBOW_OFF,
            high=ELBOW_OFF,
            mode="desk",
            says=f"{worker.label}: desk hole {hole}, {step:.0f}, against an elbow {elbow:.0f} above the floor",
            source=sources.DESK_HEIGHT,
            proposal=f"desk surface at {elbow:.0f}",
        ),
        judge(
            "comfort.thigh_gap",
            gap,
            low=brief.rules.thigh_gap,
            mode="desk",
            parts=("panel",),
            says=f"{worker.label}: room over the thigh {gap:.0f} at desk hole {hole}",
            source=sources.THIGH_GAP,
            proposal=f"raise the desk by {brief.rules.thigh_gap - gap:.0f}",
        ),
        judge(
            "comfort.knee_gap",
            knee,
            low=0.0,
            good_low=KNEE_SPARE,
            mode="desk",
            parts=("panel",),
            says=f"{worker.label}: room over the knee {knee:.0f} at desk hole {hole}",
            source=sources.KNEE_GAP,
        ),
        judge(
            "comfort.head_room",
            head,
            low=brief.rules.head_clearance,
            mode="desk",
            says=f"{worker.label}: room over the head {head:.0f}",
            source=sources.HEAD_ROOM,
            proposal=f"{brief.rules.head_clearance - head:.0f} more height",
        ),
    ]


def _off_elbow(who: People, dims: Dimensions) -> float:
    """Chance that no step comes within 15 mm of this person's elbow."""
    elbow = who.at_desk.mean["elbow_height_sitting"]
    low = dims.steps[0] - dims.heights.seat - ELBOW_OFF
    high = dims.steps[-1] - dims.heights.seat + ELBOW_OFF
    return chance_outside(who.at_desk, {"elbow_height_sitting": 1.0}, elbow, low, high)


def questions(brief: Brief, who: People, dims: Dimensions) -> tuple[Question, ...]:
    """The figures of comfort that hang on the body, with the room each has to its limit."""
    h, body, rules = dims.heights, who.at_desk, brief.rules
    seat = h.seat - body.mean["popliteal_height"] - who.shoes
    thigh, knee = h.desk_under - h.thigh - rules.thigh_gap, h.desk_under - h.knee
    head = head_gap(brief, who, dims, roof_up=True) - rules.head_clearance
    desk = ELBOW_OFF - abs(h.desk - h.seat - body.mean["elbow_height_sitting"])
    seat_room = min(seat + SEAT_UNDER, SEAT_OVER - seat)
    return (
        Question(about="seat height", weights={"popliteal_height": 1.0}, room=seat_room),
        Question(about="desk height", weights={"elbow_height_sitting": 1.0}, room=desk),
        Question(about="room over the thigh", weights={"thigh_clearance": 1.0}, room=thigh),
        Question(about="room over the knee", weights={"knee_height": 1.0}, room=knee),
        Question(about="head room", weights={"sitting_height": 1.0}, room=head),
        Question(about="seat depth", weights={"buttock_popliteal_length": 1.0}, room=LEAST_BEHIND_KNEE),
    )


def _user(who: People, mode: str) -> Worker:
    """Whose step this is: the lowest is for the lowest elbow, the others for the one the desk is sized for."""
    users = who.all_at_desk
    return min(users, key=lambda w: w.body.mean["elbow_height_sitting"]) if mode == "desk/low" else users[0]


def _thigh_gap(brief: Brief, who: People, dims: Dimensions, mode: str) -> Check:
    user = _user(who, mode).body
    thigh = dims.heights.seat + user.mean["thigh_clearance"]
    gap = dims.desk_at(mode) - dims.heights.panel - thigh
    return judge(
        "comfort.thigh_gap",
        gap,
        low=brief.rules.thigh_gap,
        mode=mode,
        parts=("panel",),
        chance=chance_outside(user, {"thigh_clearance": -1.0}, gap, brief.rules.thigh_gap, None),
        says=f"room over the thigh {gap:.0f}",
        source=sources.THIGH_GAP,
        proposal=f"raise the desk by {brief.rules.thigh_gap - gap:.0f}",
    )


def _knee_gap(who: People, dims: Dimensions, mode: str) -> Check:
    under = dims.desk_at(mode) - dims.heights.panel
    stiffener = dims.lengths.near + dims.lengths.panel_depth - dims.sections.stiffener[0]
    part = "panel"
    if stiffener < dims.lengths.knee:
        under, part = under - dims.sections.stiffener[1], "stiffener"
    user = _user(who, mode)
    gap = under - user.body.mean["knee_height"] - user.shoes
    return judge(
        "comfort.knee_gap",
        gap,
        low=0.0,
        good_low=KNEE_SPARE,
        mode=mode,
        parts=(part,),
        chance=chance_outside(user.body, {"knee_height": -1.0}, gap, 0.0, None),
        says=f"room over the knee {gap:.0f}",
        source=sources.KNEE_GAP,
        proposal=f"raise the desk by {KNEE_SPARE - gap:.0f}",
    )


def _desk_depth(brief: Brief, dims: Dimensions) -> Check:
    good = 600.0 if brief.sitting.keyboard else 560.0
    return judge(
        "comfort.desk_depth",
        dims.lengths.panel_depth,
        low=500.0,
        good_low=good,
        mode="desk",
        parts=("panel",),
        says=f"desk {dims.lengths.panel_depth:.0f} deep",
        source=sources.DESK_SIZE,
        proposal=f"shorten the platform by {good - dims.lengths.panel_depth:.0f}",
    )


def _desk_width(dims: Dimensions) -> Check:
    return judge(
        "comfort.desk_width",
        dims.widths.panel_length,
        low=600.0,
        good_low=800.0,
        mode="desk",
        parts=("panel",),
        says=f"desk {dims.widths.panel_length:.0f} wide",
        source=sources.DESK_SIZE,
        proposal=f"widen the bed by {800.0 - dims.widths.panel_length:.0f}",
    )


def _knee_room(dims: Dimensions) -> Check:
    room = dims.lengths.panel_depth - dims.sections.stiffener[0]
    return judge(
        "comfort.knee_depth",
        room,
        low=400.0,
        good_low=KNEE_DEPTH,
        mode="desk",
        says=f"depth for the knees under the desk {room:.0f}",
        source=sources.KNEE_ROOM,
    )


def _foot_room(brief: Brief, dims: Dimensions) -> Check:
    room = dims.lengths.foot_end - dims.lengths.seat_front
    return judge(
        "comfort.foot_room",
        room,
        low=LEAST_FEET,
        good_low=feet_down.FOOT_ROOM,
        mode="desk",
        says=f"floor from the seat front to the first obstacle {room:.0f} of {brief.van.length_day:.0f}",
        source=sources.FOOT_ROOM,
        proposal=f"clear {feet_down.FOOT_ROOM - room:.0f} more floor, or a shorter platform",
    )


def _heel_room(dims: Dimensions) -> Check:
    height = dims.heights.platform - max(dims.sections.bearer[1], dims.heights.panel + dims.sections.ledger[1])
    return judge(
        "comfort.heel_room",
        height,
        low=120.0,
        good_low=250.0,
        mode="desk",
        parts=("ledger", "front_bearer"),
        says=f"height for the heels under the seat front {height:.0f}",
        source=sources.HEEL_ROOM,
    )


def _head_room(brief: Brief, who: People, dims: Dimensions) -> list[Check]:
    """Over the seated head: at the desk with the roof up, in the lounge as the van stands and with the roof shut."""
    out = []
    need = brief.rules.head_clearance
    for mode in ("desk", "lounge"):
        gap = head_gap(brief, who, dims, roof_up=True)
        out.append(
            judge(
                "comfort.head_room",
                gap,
                low=need,
                mode=mode,
                chance=chance_outside(who.at_desk, {"sitting_height": -1.0}, gap, need, None),
                says=f"room over the head {gap:.0f}, crown at {dims.heights.head:.0f}",
                source=sources.HEAD_ROOM,
                proposal=f"{need - gap:.0f} more height, or see the clash for other ways",
            )
        )
    if brief.van.roof is not None and brief.van.roof.lifts:
        gap = head_gap(brief, who, dims, roof_up=False)
        out.append(
            judge(
                "comfort.head_room_roof_shut",
                gap,
                good_low=need,
                mode="lounge",
                says=f"with the roof shut the head is {-gap:.0f} too high"
                if gap < 0.0
                else f"room over the head with the roof shut {gap:.0f}",
                source=sources.HEAD_ROOM,
                proposal="open the roof to sit upright, or recline",
            )
        )
    return out


def head_gap(brief: Brief, who: People, dims: Dimensions, roof_up: bool) -> float:
    """Least room over the head of the person at the desk, mm: over the whole head, not its middle."""
    return over_head(brief.van, who.at_desk, dims.lengths.back, dims.widths.place, roof_up) - dims.heights.head
