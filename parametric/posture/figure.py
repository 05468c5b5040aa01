"""Mannequins: a seated and a lying body as shape recipes in the van frame.

Figures are for collisions and pictures. Outermost points that matter to furniture are the body's own mean dimensions;
between them limbs are round and the trunk is a stack of slot-shaped blocks. Segments: ``head``, ``trunk``, ``pelvis``
and, each with ``_left`` and ``_right``, ``thigh``, ``shank``, ``foot``, ``upper_arm``, ``forearm`` (with the hand).
"""

from __future__ import annotations

from parametric.body import Body
from parametric.core.pose import Pose, Vec3, at, frame
from parametric.core.shape import Cylinder, Prism, Shape, stadium
from parametric.posture.flesh import LEAST, Flesh
from parametric.posture.limbs import limb, oval, posed
from parametric.posture.lying import LENGTHENED, Lying
from parametric.posture.seated import Point, Seated
from parametric.posture.workplace import Workplace

Figure = dict[str, Shape]
_SIDES = {"left": 1.0, "right": -1.0}


def seated_figure(body: Body, seated: Seated, workplace: Workplace) -> Figure:
    """Segments of a seated body.

    The pelvis and, by the belly, the thighs rest on the seat, the soles on the floor, the hands on the desk.

    Args:
        body: Who.
        seated: Its posture, solved for `workplace`; floats, not arrays.
        workplace: Where.
    """
    seat = at(float(workplace.back), float(workplace.place), float(workplace.seat))
    head_x = float(seated.vertex[0] - workplace.back)
    figure = {name: posed(shape, seat) for name, shape in _torso(body, head_x, 0.0).items()}
    for side, sign in _SIDES.items():
        limbs = _seated_leg(body, seated, workplace, sign) | _seated_arm(body, seated, sign)
        figure |= {f"{name}_{side}": posed(shape, at(0.0, seat.translation[1], 0.0)) for name, shape in limbs.items()}
    return figure


def lying_figure(body: Body, lying: Lying) -> Figure:
    """Segments of a body on its back, toes up, arms beside it; its underside touches the loaded surface.

    Args:
        body: Who.
        lying: Where.
    """
    mean = body.mean
    crotch = mean["stature"] - mean["sitting_height"]
    torso = _torso(body, mean["head_length"] / 2.0, LENGTHENED)
    standing = {name: posed(shape, at(0.0, 0.0, crotch)) for name, shape in torso.items()}
    for side, sign in _SIDES.items():
        limbs = _straight_leg(body, crotch, sign) | _straight_arm(body, crotch, sign)
        standing |= {f"{name}_{side}": shape for name, shape in limbs.items()}
    sole, left = (lying.end, 1.0) if lying.head == "rear" else (lying.start, -1.0)
    down = frame((sole, lying.y, lying.z), (0.0, 0.0, 1.0), (0.0, left, 0.0))
    return {name: posed(shape, down) for name, shape in standing.items()}


def _torso(body: Body, head_x: float, stretch: float) -> Figure:
    """Head, trunk and pelvis upright over the seat, their backs at x = 0; the spine longer by `stretch`."""
    mean, flesh = body.mean, Flesh.of(body)
    lap = 2.0 * flesh.thigh
    waist = max(mean["elbow_height_sitting"], lap)
    shoulder = max(mean["elbow_height_sitting"] + mean["shoulder_elbow_length"] - flesh.arm, waist + LEAST) + stretch
    chest, half = mean["chest_depth"], mean["biacromial_breadth"] / 2.0
    nape = max(mean["cervicale_height"] - mean["shoulder_height"], 0.0) + flesh.arm
    trunk = (
        oval(mean["abdominal_depth_sitting"], mean["waist_breadth"], lap / 2.0, waist),
        oval(chest, 2.0 * half, waist - LEAST, shoulder),  # blocks overlap, or rounding would part them
        *limb(((chest / 2.0, -half, shoulder), flesh.arm), ((chest / 2.0, half, shoulder), flesh.arm)),
        Cylinder(max(0.45 * chest, flesh.neck), nape, at(chest / 2.0, 0.0, shoulder), flesh.neck),
    )
    return {
        "head": _head(body, head_x, shoulder, mean["sitting_height"] + stretch),
        "trunk": Shape(trunk),
        "pelvis": Shape((oval(mean["buttock_depth"], mean["hip_breadth_sitting"], 0.0, lap),)),
    }


def _head(body: Body, x: float, neck_from: float, crown: float) -> Shape:
    """Head and neck about an upright axis at `x`; a rounded crown on a slot-shaped block."""
    length, breadth, flesh = body.mean["head_length"], body.mean["head_breadth"], Flesh.of(body)
    r = breadth / 2.0
    brow, reach = crown - r, max(length / 2.0 - r, 0.0)
    face = max(flesh.chin - r, LEAST)
    return Shape(
        (
            *limb(((x - reach, 0.0, brow), r), ((x + reach, 0.0, brow), r)),
            Prism(stadium(x, 0.0, length, breadth), face, at(0.0, 0.0, brow - face)),
            Cylinder(flesh.neck, max(brow - neck_from, LEAST), at(x, 0.0, min(neck_from, brow - LEAST))),
        )
    )


def _seated_leg(body: Body, seated: Seated, workplace: Workplace, sign: float) -> Figure:
    flesh = Flesh.of(body)
    y = sign * _leg_y(body)
    seat, front, top = float(workplace.seat), float(seated.knee_front), float(seated.knee_top)
    hip, r = float(seated.hip[0]), flesh.thigh
    knee = (front - flesh.knee, y, top - flesh.knee)
    lap = min(max(hip, float(seated.belly)), (hip + knee[0]) / 2.0)
    heel = at(float(seated.heel[0]), y, float(workplace.floor))
    return {
        "thigh": Shape(limb(((hip, y, seat + r), r), ((lap, y, seat + r), r), (knee, flesh.knee))),
        "shank": Shape(
            limb(((front - flesh.calf, y, top - flesh.calf), flesh.calf), (_point(seated.ankle, y), flesh.ankle))
        ),
        "foot": posed(_foot(body, float(workplace.shoes)), heel),
    }


def _straight_leg(body: Body, crotch: float, sign: float) -> Figure:
    """Leg of an upright body, its back at x = 0, its sole at z = 0."""
    mean, flesh = body.mean, Flesh.of(body)
    y = sign * _leg_y(body)
    hip = max(mean["trochanterion_height"], crotch)
    knee, ankle = mean["lateral_femoral_epicondyle_height"], mean["lateral_malleolus_height"]
    return {
        "thigh": Shape(limb(((flesh.thigh, y, hip), flesh.thigh), ((flesh.knee, y, knee), flesh.knee))),
        "shank": Shape(limb(((flesh.calf, y, knee), flesh.calf), ((flesh.heel_to_ankle, y, ankle), flesh.ankle))),
        "foot": posed(_foot(body, 0.0), at(0.0, y, 0.0)),
    }


def _leg_y(body: Body) -> float:
    """Middle of a leg to the middle of the body: the thighs are as wide as the hips."""
    return max(body.mean["hip_breadth_sitting"] / 2.0 - Flesh.of(body).thigh, 0.0)


def _foot(body: Body, shoes: float) -> Shape:
    """Foot on its shoe, heel at x = 0, floor at z = 0."""
    length, breadth, flesh = body.mean["foot_length"], body.mean["foot_breadth"], Flesh.of(body)
    r, slim = flesh.ankle, 0.5 * flesh.ankle
    ankle, ball = flesh.heel_to_ankle, max(0.8 * length, flesh.heel_to_ankle)
    instep = limb(((ankle, 0.0, shoes + r), r), ((ball, 0.0, shoes + slim), slim))
    return Shape((Prism(stadium(length / 2.0, 0.0, length, breadth), shoes + slim), *instep))


def _seated_arm(body: Body, seated: Seated, sign: float) -> Figure:
    r, wrist = Flesh.of(body).arm, Flesh.of(body).wrist
    shoulder_y, elbow_y, wrist_y = (sign * y for y in _arm_ys(body))
    elbow = _point(seated.elbow, elbow_y, r)
    return {
        "upper_arm": Shape(limb((_point(seated.shoulder, shoulder_y, -r), r), (elbow, r))),
        "forearm": Shape(
            (
                *limb((elbow, r), (_point(seated.wrist, wrist_y, wrist), wrist)),
                _hand(body, Pose(_point(seated.wrist, wrist_y))),
            )
        ),
    }


def _straight_arm(body: Body, crotch: float, sign: float) -> Figure:
    """Hanging arm of an upright body, its back at x = 0, the palm backward."""
    mean, flesh = body.mean, Flesh.of(body)
    r = flesh.arm
    shoulder_y, elbow_y, wrist_y = (sign * y for y in _arm_ys(body))
    shoulder = crotch + mean["elbow_height_sitting"] + mean["shoulder_elbow_length"] + LENGTHENED - r
    elbow = (r, elbow_y, shoulder - flesh.upper_arm)
    wrist = elbow[2] - flesh.forearm
    hand = frame((0.0, wrist_y, wrist), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0))
    return {
        "upper_arm": Shape(limb(((r, shoulder_y, shoulder), r), (elbow, r))),
        "forearm": Shape((*limb((elbow, r), ((flesh.wrist, wrist_y, wrist), flesh.wrist)), _hand(body, hand))),
    }


def _arm_ys(body: Body) -> tuple[float, float, float]:
    """Middles of shoulder, elbow and wrist to the middle of the body: bideltoid and elbow-to-elbow breadth over all."""
    mean, flesh = body.mean, Flesh.of(body)
    out = mean["elbow_to_elbow_breadth"] / 2.0
    return (
        mean["bideltoid_breadth"] / 2.0 - flesh.arm,
        out - flesh.arm,
        out - max(flesh.wrist, flesh.hand_breadth / 2.0),
    )


def _hand(body: Body, pose: Pose) -> Prism:
    """A flat hand from the wrist along local x, its palm in the local xy plane."""
    flesh, length = Flesh.of(body), body.mean["hand_length"]
    return Prism(stadium(length / 2.0, 0.0, length, flesh.hand_breadth), flesh.hand_thickness, pose)


def _point(joint: Point, y: float, up: float = 0.0) -> Vec3:
    return float(joint[0]), y, float(joint[1]) + up
