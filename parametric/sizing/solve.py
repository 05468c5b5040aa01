"""From brief and body to every height and length: the rules in their order."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass

from parametric.body import Body
from parametric.brief.interior import narrowest
from parametric.brief.model import Brief
from parametric.brief.van import Van
from parametric.core.errors import RefusedError
from parametric.sizing import room
from parametric.sizing.dimensions import Dimensions, Heights, Legs, Lengths, Stages, Widths
from parametric.sizing.kinds import cleat_legs, feet_down, panel
from parametric.sizing.limits import SEAT_UNDER
from parametric.sizing.sections import Sections, resolve

P_LOW, P_HIGH = 0.05, 0.95
SLOT_GOOD = 600.0
END_GAP = 5.0
STOWED_IN = 10.0  # stowed panel to the platform's right face
LID_PLAY = 3.0  # slats to the frame
LID_KEEPS = 3.0  # an open lid to the wall
STAGE_PLAY = 10.0  # leg stages to the posts of their bay
FEET = 260.0  # to either side of the sitting place (OSHA eTool: 520 wide)
THINNEST, THICKEST = 14.0, 18.6
UPRIGHT_DOWN, UPRIGHT_UP = 37.0, 53.0  # uprights past the groove floor, for two bolts a step


@dataclass(frozen=True, slots=True, kw_only=True)
class Worker:
    """Somebody who sits at the desk.

    Attributes:
        label: Name for reports.
        body: The body.
        shoes: Sole and heel, mm.
    """

    label: str
    body: Body
    shoes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class People:
    """Who sleeps and who works.

    Attributes:
        bodies: One body for each sleeper, in the order of the brief.
        worker: Index of the sleeper the desk is sized for.
        shoes: Sole and heel of that sleeper's shoes, mm.
        others: Who else works at the desk, at another time of day.
    """

    bodies: tuple[Body, ...]
    worker: int
    shoes: float
    others: tuple[Worker, ...] = ()

    @property
    def at_desk(self) -> Body:
        """The body the desk is sized for."""
        return self.bodies[self.worker]

    @property
    def all_at_desk(self) -> tuple[Worker, ...]:
        """Everybody who sits at the desk, the one it is sized for first."""
        return (Worker(label="", body=self.at_desk, shoes=self.shoes), *self.others)

    @property
    def tallest(self) -> float:
        """Greatest stature, mm."""
        return max(b.mean["stature"] for b in self.bodies)


def people(brief: Brief, bodies: Sequence[Body]) -> People:
    """The bodies of a brief with their parts to play: the first sleeper who works sits at the desk."""
    working = [i for i, s in enumerate(brief.sleeper) if s.works]
    others = [Worker(label=brief.sleeper[i].label, body=bodies[i], shoes=brief.sleeper[i].shoes) for i in working[1:]]
    first = working[0]
    return People(bodies=tuple(bodies), worker=first, shoes=brief.sleeper[first].shoes, others=tuple(others))


def solve(brief: Brief, who: People) -> Dimensions:
    """Work out every height, length and width.

    Args:
        brief: The user's brief.
        who: The bodies it is for.

    Raises:
        RefusedError: The kinds asked for are not built by this version, or cannot stand.
    """
    _refuse_kinds(brief)
    parts = resolve(brief.stock.sections.model_dump(exclude_none=True))
    heights, steps = _heights(brief, who, parts)
    overlap = _overlap(who.at_desk)
    night, desk = heights.platform - heights.panel, heights.desk_high - heights.panel
    stages = cleat_legs.stages(night, desk, parts.leg)
    lengths = _lengths(brief, who, parts, heights, overlap, stages)
    return Dimensions(
        heights=heights,
        lengths=lengths,
        widths=_widths(brief, parts, heights, lengths),
        legs=_legs(parts, stages, lengths.panel_depth, overlap),
        sections=parts,
        pitch=feet_down.PITCH,
        steps=steps,
    )


def _refuse_kinds(brief: Brief) -> None:
    built = {
        "arrangement.extension": (brief.arrangement.extension, "panel"),
        "arrangement.support": (brief.arrangement.support, "cleat_legs"),
        "sitting.seat": (brief.sitting.seat, "feet_down"),
        "bed.direction": (brief.bed.direction, "along"),
        "bed.side": (brief.bed.side, "right"),
    }
    wrong = [
        f'{key} = "{got}" is not built by this version; write "{good}"'
        for key, (got, good) in built.items()
        if got not in (good, "auto")
    ]
    t = brief.stock.panel
    if not THINNEST <= t <= THICKEST:
        wrong.append(
            f"stock.panel_thickness: {t:g} measured or mean; the groove of the desk cleat takes {THINNEST:g} to "
            f"{THICKEST:g}, so use 15 or 18"
        )
    if wrong:
        raise RefusedError("; ".join(wrong))


def _heights(brief: Brief, who: People, parts: Sections) -> tuple[Heights, tuple[float, ...]]:
    body, bed, sitting = who.at_desk, brief.bed, brief.sitting
    mattress = bed.mattress.thickness + bed.mattress.air_mat
    sink = bed.mattress.sink_seated
    t = brief.stock.panel
    elbow, thigh = body.mean["elbow_height_sitting"], body.mean["thigh_clearance"]
    seat = _shared_seat(who) if sitting.seat_height is None else sitting.seat_height
    platform = _float(feet_down.platform_height(seat, mattress, sink))
    if bed.platform_height is not None:
        platform = bed.platform_height
    platform = round(platform)
    seat = _float(feet_down.loaded_seat(platform, mattress, sink))
    gap = brief.rules.thigh_gap
    desk = sitting.desk_height
    if desk is None:
        # whole mm, but never rounded into the room over the thigh
        over_thigh = math.ceil(seat + thigh + gap + t - 1e-6)
        desk = float(max(round(_float(feet_down.desk_height(seat, elbow, thigh, gap, t))), over_thigh))
    all_bodies = (body, *(w.body for w in who.others))
    high = max(b.quantile("elbow_height_sitting", P_HIGH) for b in all_bodies)
    low = min(b.quantile("elbow_height_sitting", P_LOW) for b in all_bodies)
    knee = body.mean["knee_height"] + who.shoes
    # the lowest step is for the lowest elbow, so it has to clear that person's thigh and knee
    least = min(who.all_at_desk, key=lambda w: w.body.mean["elbow_height_sitting"])
    over = max(seat + least.body.mean["thigh_clearance"] + gap, least.body.mean["knee_height"] + least.shoes)
    up = _float(feet_down.steps_above(high - elbow))
    down = _float(feet_down.steps_below(elbow - low, desk - t - over))
    steps = tuple(desk + feet_down.PITCH * k for k in range(-int(down), int(up) + 1))
    lowest_strip = platform - parts.slat[1] - parts.batten[1] - parts.strip[1]
    lowest_frame = platform - max(parts.bearer[1], parts.rail[1])
    heights = Heights(
        seat=seat,
        platform=platform,
        mattress=mattress,
        desk=desk,
        desk_low=steps[0],
        desk_high=steps[-1],
        panel=t,
        storage=min(lowest_strip, lowest_frame),
        knee=knee,
        thigh=seat + thigh,
        head=seat + body.mean["sitting_height"],
    )
    return heights, steps


def _shared_seat(who: People) -> float:
    """The best seat for the shorter legs, raised as far as the longer ones need to be just within their band."""
    wanted = [_float(feet_down.seat_height(w.body.mean["popliteal_height"], w.shoes)) for w in who.all_at_desk]
    return max(min(wanted), max(wanted) + feet_down.SLACK - SEAT_UNDER + 1.0)


def _lengths(brief: Brief, who: People, parts: Sections, heights: Heights, overlap: float, stages: Stages) -> Lengths:
    van, body, ledger = brief.van, who.at_desk, parts.ledger[0]
    rear = panel.rear(parts.stiffener[0])
    bed = min(brief.bed.length or who.tallest + brief.bed.length_allowance, van.length_night - rear - END_GAP)
    wanted = min(panel.desk_depth(brief.sitting.keyboard), panel.deepest(bed, rear, parts.bearer[0]))
    wanted = max(wanted, cleat_legs.depth_for(overlap, parts.stiffener[0], parts.leg) + 2.0)
    length = brief.bed.platform_length
    if length is None:
        length = math.floor(panel.platform_length(bed, wanted, rear, ledger, van.length_day, feet_down.FOOT_ROOM))
    depth, front = bed - length - panel.JOINT, rear + length
    if depth < panel.LEAST_DEPTH - 1e-6:
        most = bed - panel.LEAST_DEPTH - panel.JOINT
        raise RefusedError(
            f"extension panel: a bed of {bed:.0f} with a platform of {length:.0f} leaves a panel {depth:.0f} deep and "
            f"a desk needs {panel.LEAST_DEPTH:.0f}; make platform_length {most:.0f} or less"
        )
    seat_front = front + ledger
    reach = body.mean["buttock_popliteal_length"]
    back = _float(feet_down.back(seat_front, reach))
    near = round(_float(feet_down.near_edge(back, body.mean["abdominal_depth_sitting"])))
    ceiling = van.ceiling - van.lining.ceiling - van.lining.floor
    beside = 2.0 * parts.post[0] + STAGE_PLAY
    between = panel.Middle(
        rear=rear,
        front=front,
        bearer=parts.bearer[0],
        longest_lid=ceiling - panel.LID_SPARE - heights.platform - panel.KNUCKLE,
        depth=depth,
        stowed=stages.lower_desk + cleat_legs.FOOT + beside,
    )
    middle = panel.middle_bearer(between, seat_front, _float(feet_down.seat_depth(reach)), heights.mattress)
    right = _right(van, heights, parts, rear, bed, between.longest_at(middle))
    left, place = right + brief.bed.width, right + brief.bed.width / 2.0
    height = (heights.desk_low - 100.0, heights.desk_high)
    end = room.clear_length(van, seat_front, van.length_day, (right, left), height)
    return Lengths(
        rear=rear,
        lid=between.longest_at(middle),
        platform=float(length),
        bed=bed,
        panel_depth=depth,
        middle=float(round(middle)),
        seat_front=seat_front,
        back=back,
        belly=back + body.mean["abdominal_depth_sitting"],
        knee=back + body.mean["buttock_knee_length"],
        near=float(near),
        foot_end=room.clear_length(van, seat_front, van.length_day, (place - FEET, place + FEET), (0.0, 100.0)),
        parked=float(max(near, min(end - END_GAP - depth, seat_front + max(SLOT_GOOD, brief.rules.entry_slot)))),
    )


def _right(van: Van, heights: Heights, parts: Sections, rear: float, bed: float, lid: float) -> float:
    """Right face of the platform: off the wall where bed and mattress, or a lid standing open, find it narrowest."""
    top = heights.platform + heights.mattress
    beside = narrowest(van, "right", rear, rear + bed, 0.0, top) + panel.PLATFORM_GAP
    tip = heights.platform + panel.KNUCKLE + lid
    # a lid's slats start behind the rail and a play of 3
    standing = narrowest(van, "right", rear, rear + bed, 0.0, tip) + LID_KEEPS - parts.rail[0] - LID_PLAY
    return max(beside, standing)


def _overlap(body: Body) -> float:
    """How far the panel reaches over the seat for the slimmest likely body, from the seat front, mm."""
    slim = body.quantile("abdominal_depth_sitting", P_LOW)
    back_to_edge = slim + feet_down.BELLY_GAP + feet_down.BEHIND_KNEE
    return max(0.0, body.mean["buttock_popliteal_length"] - back_to_edge)


def _legs(parts: Sections, stages: Stages, depth: float, overlap: float) -> Legs:
    near = float(math.ceil(cleat_legs.near_leg(overlap, parts.leg) - 1e-6))
    far = float(math.floor(cleat_legs.far_leg(depth, parts.stiffener[0], parts.leg) + 1e-6))
    short = cleat_legs.LEAST_APART - (far - near)
    if short > 1e-6:
        raise RefusedError(
            f"desk support cleat_legs: a panel {depth:.0f} deep leaves {far - near:.0f} between its legs and "
            f"{cleat_legs.LEAST_APART:.0f} are needed; make the bed longer or the platform shorter by {short:.0f}"
        )
    return Legs(
        **asdict(stages), head=cleat_legs.HEAD, foot=cleat_legs.FOOT, near=near, far=far, inset=cleat_legs.INSET
    )


def _widths(brief: Brief, parts: Sections, heights: Heights, lengths: Lengths) -> Widths:
    van, front, t = brief.van, lengths.front, heights.panel
    right = _right(van, heights, parts, lengths.rear, lengths.bed, lengths.lid)
    left = right + brief.bed.width
    end = lengths.rear + lengths.bed
    under, top = heights.platform - t, heights.platform
    cleat_from, cleat_to = lengths.seat_front + panel.JOINT, front + panel.JOINT + lengths.panel_depth
    night = narrowest(van, "right", cleat_from, cleat_to, under - parts.post[0], under)
    edge = narrowest(van, "right", front, end, under - parts.stiffener[1], top) + panel.PLATFORM_GAP
    panel_night = max(night + panel.WALL_GAP, edge)
    low, high = heights.desk_low - t - UPRIGHT_DOWN, heights.desk_high - t + UPRIGHT_UP
    desk = narrowest(van, "right", lengths.near, lengths.parked + lengths.panel_depth, low, high)
    stack = heights.platform + t + 3.0 * heights.mattress
    leaning = narrowest(van, "right", 0.0, front, heights.platform, stack) + panel.PLATFORM_GAP
    rear_end = panel.REAR_GAP + lengths.panel_depth
    by_wall = narrowest(van, "right", 0.0, rear_end, top - parts.stiffener[1], top + t) + panel.PLATFORM_GAP
    found = Widths(
        panel_stowed=max(by_wall, min(right + STOWED_IN, panel_night)),
        stacked=max(right, leaning),
        right=right,
        left=left,
        wall_night=night,
        wall_desk=desk,
        panel_length=left - panel_night,
        panel_night=panel_night,
        panel_desk=desk + t + parts.cleat[0] - panel.GROOVE + panel.GROOVE_PLAY,
        place=(right + left) / 2.0,
        aisle=room.aisle(van, left, (lengths.rear, end)) - panel.STRAP_OUT,
    )
    # whole micrometres: then a hole and the part that goes in it, placed by different sums, share an axis
    return Widths(**{name: round(value, 3) for name, value in asdict(found).items()})


def _float(value: object) -> float:
    return float(value)  # type: ignore[arg-type]
