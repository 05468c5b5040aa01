"""From the solver's rows and unknowns to angles, joints, clearances and reasons."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from parametric.posture.chain import LENGTHS, Row, Unknown
from parametric.posture.newton import Found, Task, cost_of
from parametric.posture.solved import Angles, Clearances, Joints, Point, Reason, Solved
from parametric.posture.station import Legs
from parametric.posture.task import Given, hip_range
from parametric.posture.workplace import Number

Array = NDArray[np.float64]

KEPT: Final = 1e-5  # m or rad: a limit missed by less is kept
_MM: Final = 1000.0
_PLACES: Final = (Unknown.HIP, Unknown.KEYS, Unknown.SCREEN)
UNITS: Final = np.array([_MM if unknown in _PLACES else 180.0 / np.pi for unknown in Unknown])
"""From the solver's metres and radians to mm and degrees, by unknown."""

_ALIKE: Final = {True: 0.005, False: np.pi / 180.0}  # 5 mm of room weigh like 1 degree of a joint (own choice)
# reason when a row is under its limit, and when it is over
_REASONS: Final = {
    Row.ANKLE: (Reason.ANKLE, Reason.ANKLE),
    Row.KNEE: (Reason.KNEE, Reason.KNEE),
    Row.HIP: (Reason.HIP, Reason.HIP),
    Row.TRUNK: (Reason.TRUNK, Reason.TRUNK),
    Row.NECK: (Reason.NECK, Reason.NECK),
    Row.UPPER_ARM: (Reason.SHOULDER, Reason.SHOULDER),
    Row.SHOULDER: (Reason.SHOULDER, Reason.SHOULDER),
    Row.ELBOW: (Reason.ELBOW, Reason.ELBOW),
    Row.WRIST: (Reason.WRIST, Reason.WRIST),
    Row.EYE: (Reason.SCREEN_OUT_OF_SIGHT, Reason.SCREEN_OUT_OF_SIGHT),
    Row.VIEW: (Reason.SCREEN_TOO_NEAR, Reason.SCREEN_TOO_FAR),
    Row.BEHIND_KNEE: (Reason.CALVES_HIT_SEAT, Reason.SEAT_TOO_SHORT),
    Row.BELLY: (Reason.BELLY_HITS_DESK, Reason.DESK_TOO_FAR),
    Row.PLACE: (Reason.NOT_SETTLED, Reason.NOT_SETTLED),
    Row.SOLE: (Reason.LEGS_TOO_LONG, Reason.FEET_DANGLE),
    Row.HEEL: (Reason.HEELS_HIT_BACK, Reason.HEELS_HIT_BACK),
    Row.TOE: (Reason.TOES_HIT_FRONT, Reason.TOES_HIT_FRONT),
    Row.KNEE_TOP: (Reason.KNEES_HIT_DESK, Reason.KNEES_HIT_DESK),
    Row.CROWN: (Reason.HEAD_HITS_ROOF, Reason.HEAD_HITS_ROOF),
    Row.KEYS_Z: (Reason.DESK_TOO_HIGH, Reason.DESK_TOO_LOW),
    Row.KEYS_X: (Reason.DESK_TOO_FAR, Reason.DESK_TOO_NEAR),
    Row.EDGE: (Reason.FOREARM_HITS_EDGE, Reason.FOREARM_HITS_EDGE),
}


class _Shaper:
    """Gives flat arrays the shape of what was given; a float where that was single numbers."""

    def __init__(self, given: Given) -> None:
        self.given = given

    def __call__(self, flat: Array, scale: float = 1.0) -> Number:
        shaped = (flat * scale).reshape(self.given.shape)
        return shaped if self.given.shape else float(shaped)

    def point(self, x: Array, z: Array) -> Point:
        return self(x, _MM), self(z, _MM)


def solved_from(given: Given, task: Task, found: Found) -> Solved:
    """Everything a reader wants to know of a search that has ended."""
    shaped = _Shaper(given)
    reason, shortfall = _reasons(given, task, found)
    exists = (reason == Reason.FITS).reshape(given.shape)
    settled = found.settled.reshape(given.shape)
    costs = cost_of(found.values, task)
    return Solved(
        exists=exists if given.shape else bool(exists),
        settled=settled if given.shape else bool(settled),
        reason=reason.reshape(given.shape) if given.shape else int(reason[0]),
        shortfall=shaped(shortfall),
        objective=shaped(found.cost),
        costs={row.name.lower(): shaped(costs[row]) for row in Row if row <= Row.PLACE},
        angles=_angles(given, found, shaped),
        joints=_joints(given, task, found, shaped),
        clearances=_clearances(given, found, shaped),
        view=shaped(np.where(given.has_screen, found.values[Row.VIEW], np.nan), _MM),
        state=(found.state * UNITS[:, None]).reshape(len(Unknown), *given.shape),
    )


def _reasons(given: Given, task: Task, found: Found) -> tuple[NDArray[np.int64], Array]:
    signed = found.values - np.clip(found.values, task.low, task.high)
    alike = np.array([[_ALIKE[row in LENGTHS]] for row in Row])
    worst = np.argmax(np.abs(signed) / alike, axis=0)
    amount = np.take_along_axis(signed, worst[None], axis=0)[0]
    table = np.array([_REASONS[row] for row in Row], dtype=np.int64)
    scale = np.array([_MM if row in LENGTHS else 180.0 / np.pi for row in Row])
    reason = np.where(np.abs(amount) > KEPT, table[worst, (amount > 0.0).astype(np.intp)], int(Reason.FITS))
    shortfall = np.where(np.abs(amount) > KEPT, np.abs(amount) * scale[worst], 0.0)
    reason = np.where((reason == Reason.FITS) & ~found.settled, int(Reason.NOT_SETTLED), reason)
    low, high = hip_range(given)
    station = given.station
    over = given.flat(station.seat + given.skeleton.thigh_clearance - station.desk_under)
    for what, by in ((Reason.THIGHS_HIT_DESK, over), (Reason.SEAT_TOO_SHORT, low - high)):
        wrong = np.nan_to_num(by) > KEPT
        reason, shortfall = np.where(wrong, int(what), reason), np.where(wrong, by * _MM, shortfall)
    return reason, shortfall


def _angles(given: Given, found: Found, shaped: _Shaper) -> Angles:
    degrees = found.values * (180.0 / np.pi)
    head = found.state[Unknown.HEAD] * (180.0 / np.pi)
    if given.station.legs is Legs.FOLDED:
        degrees[[Row.ANKLE, Row.KNEE]] = np.nan
    eye = np.where(given.has_screen, degrees[Row.EYE], np.nan)
    return Angles(
        ankle=shaped(degrees[Row.ANKLE]),
        knee=shaped(degrees[Row.KNEE]),
        hip=shaped(degrees[Row.HIP]),
        trunk=shaped(degrees[Row.TRUNK]),
        neck=shaped(degrees[Row.NECK]),
        head=shaped(head),
        gaze=shaped(eye + head),
        eye=shaped(eye),
        shoulder=shaped(degrees[Row.SHOULDER]),
        upper_arm=shaped(degrees[Row.UPPER_ARM]),
        abduction=shaped(np.zeros(given.size)),
        elbow=shaped(degrees[Row.ELBOW]),
        lower_arm=shaped(180.0 - degrees[Row.ELBOW]),
        wrist=shaped(degrees[Row.WRIST]),
    )


def _joints(given: Given, task: Task, found: Found, shaped: _Shaper) -> Joints:
    chain, state = task.chain, found.state
    thigh, shank, foot, trunk, head, upper, fore, hand = state[Unknown.THIGH : Unknown.HAND + 1]
    folded = np.where(given.station.legs is Legs.FOLDED, np.nan, 0.0)
    hip = (state[Unknown.HIP], chain.hip_z)
    knee = _moved(hip, chain.thigh * np.cos(thigh), chain.thigh * np.sin(thigh))
    ankle = _moved(knee, folded + chain.shank * np.sin(shank), -chain.shank * np.cos(shank) + folded)
    heel = _moved(ankle, *_turned(-chain.heel_to_ankle, -chain.ankle_height, foot))
    shoulder = _moved(hip, chain.trunk * np.sin(trunk), chain.trunk * np.cos(trunk))
    elbow = _moved(shoulder, chain.upper_arm * np.sin(upper), -chain.upper_arm * np.cos(upper))
    wrist = _moved(elbow, *_turned(chain.forearm, 0.0, fore))
    blind = np.where(given.has_screen, 0.0, np.nan)
    screen = state[Unknown.SCREEN] + chain.tied * state[Unknown.KEYS] + blind
    return Joints(
        heel=shaped.point(*heel),
        toe=shaped.point(*_moved(heel, *_turned(chain.foot, 0.0, foot))),
        ankle=shaped.point(*ankle),
        knee=shaped.point(*knee),
        hip=shaped.point(*hip),
        shoulder=shaped.point(*shoulder),
        elbow=shaped.point(*elbow),
        wrist=shaped.point(*wrist),
        grip=shaped.point(*_moved(wrist, *_turned(given.flat(given.skeleton.palm), 0.0, hand))),
        keys=shaped.point(*_moved(wrist, *_turned(chain.typing, 0.0, hand))),
        eye=shaped.point(*_moved(shoulder, *_turned(chain.eye_forward, chain.eye_up, -head))),
        vertex=shaped.point(*_moved(shoulder, *_turned(0.0, chain.vertex_up, -head))),
        screen=shaped.point(screen, chain.screen_z + blind),
    )


def _moved(point: tuple[Array, Array], x: Array, z: Array) -> tuple[Array, Array]:
    return point[0] + x, point[1] + z


def _turned(x: Array | float, z: Array | float, up: Array) -> tuple[Array, Array]:
    """A vector turned so that its x end rises by `up`."""
    return x * np.cos(up) - z * np.sin(up), x * np.sin(up) + z * np.cos(up)


def _clearances(given: Given, found: Found, shaped: _Shaper) -> Clearances:
    station, values = given.station, found.values
    seat_front = np.where(station.legs is Legs.FLAT, values[Row.BEHIND_KNEE], np.inf)

    def left(limit: Number, value: Array) -> Number:
        room = given.flat(limit) - value
        return shaped(np.where(np.isnan(room), np.inf, room), _MM)

    return Clearances(
        thigh=left(station.desk_under, given.flat(station.seat + given.skeleton.thigh_clearance)),
        knee=left(station.desk_under, values[Row.KNEE_TOP]),
        crown=left(station.roof, values[Row.CROWN]),
        behind_knee=shaped(seat_front, _MM),
        belly=shaped(np.where(given.has_desk, values[Row.BELLY], np.inf), _MM),
        heel=left(-1.0 * np.asarray(station.feet_from), -values[Row.HEEL]),
        toe=left(station.feet_to, values[Row.TOE]),
    )
