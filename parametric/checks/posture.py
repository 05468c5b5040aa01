"""Does the work place leave a posture that lasts: joints, gaze, RULA, static holds, and the rhythm of work.

The posture is solved, not assumed: what the body does of itself with this seat, desk, screen and roof.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from parametric.brief.model import Brief
from parametric.core import sources
from parametric.core.check import Check, Verdict, judge
from parametric.posture.scoring.rhythm import Rhythm, rhythm
from parametric.posture.scoring.rula import Angles, Rula, action, rula_from_angles, rula_verdict
from parametric.posture.scoring.static_postures import Part, Zone, hold
from parametric.posture.scoring.viewing import (
    DISTANCE_SOURCE,
    DISTANCE_USUAL,
    GAZE_MOST,
    GAZE_SOURCE,
    TOP_SOURCE,
    Riser,
    Screen,
    laptop_screen,
    riser_for,
    separate_screen,
)
from parametric.posture.skeleton import Skeleton
from parametric.posture.solved import Reason, Solved
from parametric.posture.solver import solve
from parametric.posture.station import NONE, Station
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.room import over_head
from parametric.sizing.solve import People

TUCK: Final = 150.0  # heels under the seat front
LAPTOP_DEPTH: Final = 240.0  # of a laptop whose size the brief does not give (own estimate)
PICTURE: Final = 300.0  # height of the picture of a separate screen (own estimate)
LAPTOP_AHEAD: Final = (120.0, 200.0)  # home row to the middle of a laptop's picture (own estimate)
LEAST_SPELL: Final = 30.0  # minutes: a shorter spell is no working posture (own estimate)
UPRIGHT_WITHIN: Final = 5.0  # degrees (own reading)
LEAST_RISER: Final = 10.0
SCREEN_FROM: Final = 300.0  # least distance of a separate screen from the desk edge (own estimate)


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """A solved work place.

    Attributes:
        solved: The posture.
        screen: The picture looked at.
        riser: What lifts it, mm; 0 for a laptop whose own keys are used.
        rula: Scores of the posture.
        plan: Spells and breaks.
    """

    solved: Solved
    screen: Screen
    riser: float
    rula: Rula
    plan: Rhythm


def work_place(brief: Brief, who: People, dims: Dimensions) -> Work:
    """Solve the posture at the middle desk step.

    Args:
        brief: Screen, keyboard and hours.
        who: The body the desk is sized for.
        dims: Seat, desk and floor.
    """
    skeleton, screen = Skeleton.of(who.at_desk), _screen(brief)
    riser = 0.0
    solved = solve(skeleton, _station(brief, who, dims, screen, riser))
    if brief.sitting.screen != "laptop":
        riser = float(_riser(dims, solved, screen).height)
        solved = solve(skeleton, _station(brief, who, dims, screen, riser))
    scores = _rula(solved)
    plan = rhythm("feet_down", grand=int(scores.grand), hours=brief.sitting.hours, back_rest=False)
    return Work(solved=solved, screen=screen, riser=riser, rula=scores, plan=plan)


def in_words(work: Work) -> list[str]:
    """The posture in a few lines; none where there is no posture."""
    if not work.solved.exists:
        return []
    a = work.solved.angles
    joints = f"knees {float(a.knee):.0f}, trunk to thigh {float(a.hip):.0f}, elbows {float(a.elbow):.0f}"
    lines = [
        f"at the desk: {joints}, neck {float(a.neck):.0f} degrees; RULA {int(work.rula.grand)}",
        f"rhythm: {work.plan.spell:.0f} minutes of work, then {work.plan.pause:.0f} off",
    ]
    if work.riser > LEAST_RISER:
        lines.append(f"put the screen on a riser of {work.riser:.0f}")
    return lines


def posture_checks(brief: Brief, work: Work) -> list[Check]:
    """Judge a solved work place."""
    solved = work.solved
    if not solved.exists:
        return [_no_posture(solved)]
    angles = solved.angles
    joints = [
        _angle("knee", float(angles.knee), "knee", sources.KNEE_ANGLE, low=80.0, good_low=90.0, good_high=135.0),
        _angle("hip", float(angles.hip), "trunk to thigh", sources.HIP_ANGLE, low=75.0, good_low=85.0),
        _angle("elbow", float(angles.elbow), "elbow", sources.ELBOW_ANGLE, low=60.0, good_low=70.0, good_high=135.0),
        _angle("shoulder", float(angles.upper_arm), "upper arm forward", sources.SHOULDER, high=45.0, good_high=25.0),
        _angle("wrist", abs(float(angles.wrist)), "wrist", sources.WRIST, high=45.0, good_high=30.0),
        _angle("neck", float(angles.neck), "neck", sources.NECK, high=40.0, good_low=-5.0, good_high=20.0),
        _angle("trunk", float(angles.trunk), "trunk forward", sources.TRUNK, high=60.0, good_low=-30.0, good_high=20.0),
    ]
    return [*joints, *_viewing(brief, work), _score(brief, work), *_static(work), _breaks(brief, work)]


def _screen(brief: Brief) -> Screen:
    if brief.sitting.screen == "separate":
        return separate_screen(PICTURE)
    depth = LAPTOP_DEPTH if brief.sitting.laptop is None else brief.sitting.laptop[1]
    return laptop_screen(depth)


def _station(brief: Brief, who: People, dims: Dimensions, screen: Screen, riser: float) -> Station:
    le, h = dims.lengths, dims.heights
    own_keys = brief.sitting.screen == "laptop"
    far = le.near + le.panel_depth
    return Station(
        seat=h.seat,
        seat_front=le.seat_front,
        feet_from=le.seat_front - TUCK,
        feet_to=le.foot_end,
        desk=h.desk,
        desk_edge=le.near,
        desk_under=h.desk_under,
        screen_x=LAPTOP_AHEAD if own_keys else (le.near + SCREEN_FROM, far),
        screen_z=h.desk + screen.centre,
        riser=riser,
        laptop=own_keys,
        roof=over_head(brief.van, who.at_desk, le.back, dims.widths.place, roof_up=True),
        shoes=who.shoes,
        rest=NONE,
    )


def _riser(dims: Dimensions, solved: Solved, screen: Screen) -> Riser:
    eye = solved.joints.eye
    reach = dims.lengths.near + dims.lengths.panel_depth - float(eye[0])
    return riser_for(eye, dims.heights.desk, screen, distance=max(300.0, min(600.0, reach)))


def _rula(solved: Solved) -> Rula:
    a = solved.angles
    return rula_from_angles(
        Angles(
            upper_arm=a.upper_arm,
            arm_supported=True,  # forearms rest on the desk
            elbow=a.lower_arm,
            wrist=a.wrist,
            neck=a.neck,
            trunk=a.trunk,
            hip=a.hip,
            trunk_supported=False,
            legs_supported=True,
            arms_static=True,
            body_static=True,
        )
    )


def _no_posture(solved: Solved) -> Check:
    reason = Reason(int(solved.reason))
    return Check(
        id="posture.exists",
        says=f"no working posture: {reason.says}, by {float(solved.shortfall):.0f} {reason.unit}",
        verdict=Verdict.FAIL,
        source=sources.POSTURE,
        mode="desk",
        value=float(solved.shortfall),
        unit=reason.unit,
        max=0.0,
        margin=-float(solved.shortfall),
    )


def _angle(
    name: str,
    value: float,
    what: str,
    source: str,
    *,
    low: float | None = None,
    high: float | None = None,
    good_low: float | None = None,
    good_high: float | None = None,
) -> Check:
    return judge(
        f"posture.{name}",
        value,
        unit="deg",
        mode="desk",
        low=low,
        high=high,
        good_low=good_low,
        good_high=good_high,
        says=f"{what} {value:.0f} degrees",
        source=source,
    )


def _viewing(brief: Brief, work: Work) -> list[Check]:
    view, gaze = float(work.solved.view), float(work.solved.angles.gaze)
    eye, centre = work.solved.joints.eye, work.solved.joints.screen
    top = float(centre[1]) + work.screen.rise - float(eye[1])
    lifted = f"; a riser of {work.riser:.0f} under it" if work.riser > 0.5 else ""
    better = "a riser under the laptop and a keyboard of its own" if brief.sitting.screen == "laptop" else None
    return [
        judge(
            "posture.viewing_distance",
            view,
            mode="desk",
            low=300.0,
            good_low=DISTANCE_USUAL[0],
            good_high=DISTANCE_USUAL[1],
            says=f"eye to screen {view:.0f}",
            source=DISTANCE_SOURCE,
        ),
        judge(
            "posture.gaze",
            gaze,
            unit="deg",
            mode="desk",
            good_low=0.0,
            good_high=GAZE_MOST,
            says=f"screen {gaze:.0f} degrees below the eye{lifted}",
            source=GAZE_SOURCE,
            proposal=better,
        ),
        judge(
            "posture.screen_top",
            top,
            mode="desk",
            good_high=0.5,
            says=f"top of the screen {abs(top):.0f} {'above' if top > 0 else 'below'} the eye",
            source=TOP_SOURCE,
        ),
    ]


def _score(brief: Brief, work: Work) -> Check:
    """The grand score against what the hours at the desk bear; the limit is the one that decided."""
    grand, hours = int(work.rula.grand), brief.sitting.hours
    verdict = rula_verdict(grand, hours)
    borne = {v: max((g for g in range(1, 8) if rula_verdict(g, hours) is v), default=0) for v in Verdict}
    good = borne[Verdict.PASS]
    limit = max(good, borne[Verdict.CAUTION]) if verdict is Verdict.FAIL else good
    return Check(
        id="posture.rula",
        says=f"RULA {grand} for {hours:g} hours a day: {action(grand)}",
        verdict=verdict,
        source=sources.RULA,
        mode="desk",
        value=float(grand),
        unit="score",
        max=float(limit),
        margin=float(limit - grand),
    )


def _static(work: Work) -> list[Check]:
    """How long each held angle may be held, from memory of the standard."""
    a = work.solved.angles
    out = []
    held_parts: tuple[tuple[Part, float, bool], ...] = (
        ("trunk", _upright(float(a.trunk)), False),
        ("head", float(a.head), False),
        ("upper_arm", abs(float(a.upper_arm)), True),
    )
    for part, angle, supported in held_parts:
        held = hold(part, angle, supported=supported)
        zone, minutes = Zone(int(held.zone)), float(held.minutes)
        verdict = {Zone.ACCEPTABLE: Verdict.PASS, Zone.LIMITED: Verdict.CAUTION}.get(zone, Verdict.FAIL)
        limit = "" if verdict is Verdict.PASS else f", {minutes:.0f} minutes at a time"
        out.append(
            Check(
                id=f"posture.hold_{part}",
                says=f"{part.replace('_', ' ')} held at {angle:.0f} degrees{limit}",
                verdict=verdict,
                source=sources.STATIC,
                mode="desk",
                value=angle,
                unit="deg",
            )
        )
    return out


def _upright(trunk: float) -> float:
    """A trunk a few degrees behind the vertical counts as upright: nobody holds it truer."""
    return 0.0 if -UPRIGHT_WITHIN <= trunk < 0.0 else trunk


def _breaks(brief: Brief, work: Work) -> Check:
    plan = work.plan
    return Check(
        id="posture.rhythm",
        says=f"work {plan.spell:.0f} minutes, then {plan.pause:.0f} off: {plan.breaks} breaks, "
        f"{brief.sitting.hours:g} hours of work take {plan.day / 60.0:.1f}",
        verdict=Verdict.PASS if plan.spell >= LEAST_SPELL else Verdict.CAUTION,
        source=plan.source,
        mode="desk",
        value=float(plan.spell),
        unit="min",
    )
