"""The seated body as a chain of segments: what its segment angles do to joints, hands, feet and eyes.

Lengths in metres and angles in radians, so that one unit of each matters about alike to the solver. Every row is a
number that a posture wants or has to keep: a joint angle, a distance, a gap. Positions are sums of one sine or cosine
for each segment, so their second derivatives stand on the diagonal.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum, auto
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Slope = tuple[int, Array | float]  # unknown, derivative
Bend = tuple[int, int, Array]  # two unknowns, the first not before the second, and the second derivative


class Unknown(IntEnum):
    """Unknowns of a posture; angles of segments in space, all 0 for a sitter upright with level thighs and forearms."""

    HIP = 0  # x of the hip
    THIGH = auto()  # knee over hip
    SHANK = auto()  # ankle in front of the knee
    FOOT = auto()  # toes over heel
    TRUNK = auto()  # shoulder in front of the hip
    HEAD = auto()  # crown forward
    UPPER_ARM = auto()  # elbow in front of the shoulder
    FOREARM = auto()  # wrist over elbow
    HAND = auto()  # fingers over wrist
    KEYS = auto()  # x of the fingertips on the home row
    SCREEN = auto()  # x of the screen centre, for a laptop from the home row


class Row(IntEnum):
    """Numbers that a posture wants or has to keep."""

    ANKLE = 0
    KNEE = auto()
    HIP = auto()
    TRUNK = auto()
    NECK = auto()
    UPPER_ARM = auto()
    SHOULDER = auto()
    ELBOW = auto()
    WRIST = auto()
    EYE = auto()
    VIEW = auto()
    BEHIND_KNEE = auto()
    BELLY = auto()
    PLACE = auto()
    SOLE = auto()
    HEEL = auto()
    TOE = auto()
    KNEE_TOP = auto()
    CROWN = auto()
    KEYS_Z = auto()
    KEYS_X = auto()
    EDGE = auto()


LENGTHS = frozenset({Row.VIEW, *(row for row in Row if row >= Row.BEHIND_KNEE)})

_P, _A, _B, _F, _T, _H, _G, _E, _D, _K, _S = Unknown
_RIGHT = np.pi / 2.0
_EXACT = 1e-12  # m; a contact missed by less is met
_NEAREST = 1e-6  # m2; nobody reads closer than 1 mm
_STEEP = 0.99  # sine of the steepest thigh or forearm

_ANGLES: dict[Row, tuple[float, tuple[Slope, ...]]] = {
    Row.ANKLE: (0.0, ((_B, -1.0), (_F, 1.0))),
    Row.KNEE: (_RIGHT, ((_A, -1.0), (_B, 1.0))),
    Row.HIP: (_RIGHT, ((_A, -1.0), (_T, -1.0))),
    Row.TRUNK: (0.0, ((_T, 1.0),)),
    Row.NECK: (0.0, ((_T, -1.0), (_H, 1.0))),
    Row.UPPER_ARM: (0.0, ((_G, 1.0),)),
    Row.SHOULDER: (0.0, ((_T, 1.0), (_G, 1.0))),
    Row.ELBOW: (_RIGHT, ((_G, 1.0), (_E, -1.0))),
    Row.WRIST: (0.0, ((_E, -1.0), (_D, 1.0))),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """Lengths and places of n chains, (n,) each, m; lengths as in `Skeleton`, places in the van frame.

    Attributes:
        hip_z: Height of the hip.
        sole_z: Height of the sole.
        hollow_x: Front of the seat and the knee hollow: what the knee is in front of.
        belly_x: Desk edge less belly in front of the hip.
        place_x: Where a hip goes that nothing else holds.
        keys_z: Height of the home row.
        desk_z: Height of the desk surface.
        edge_x: Desk edge.
        screen_z: Height of the screen centre.
        tied: 1 for a laptop, else 0.
    """

    foot: Array
    heel_to_ankle: Array
    ankle_height: Array
    shank: Array
    thigh: Array
    knee_cap: Array
    trunk: Array
    eye_up: Array
    eye_forward: Array
    vertex_up: Array
    head_radius: Array
    upper_arm: Array
    forearm: Array
    typing: Array
    hip_z: Array
    sole_z: Array
    hollow_x: Array
    belly_x: Array
    place_x: Array
    keys_z: Array
    desk_z: Array
    edge_x: Array
    screen_z: Array
    tied: Array


class Tie(NamedTuple):
    """How an unknown follows from others by a contact.

    Attributes:
        slopes: The others, and its derivatives in them.
        bends: Second derivatives on the diagonal, its own entry taken as one of the others.
    """

    slopes: tuple[Slope, ...]
    bends: tuple[Slope, ...]


class Rows(NamedTuple):
    """Values of all rows at a posture, and how they change.

    Attributes:
        values: (rows, n).
        slopes: For every row, the unknowns it depends on and the derivatives.
        bends: For every row, pairs of unknowns and the second derivatives; terms of a pair add up.
        ties: Unknowns that follow from others, in the order in which they are worked out.
    """

    values: Array
    slopes: list[tuple[Slope, ...]]
    bends: list[tuple[Bend, ...]]
    ties: dict[int, Tie]


class _Turned(NamedTuple):
    """Segments of n chains along x and z, m: the second of each pair is the derivative of the first but for its sign."""

    thigh: tuple[Array, Array]
    shank: tuple[Array, Array]
    foot: tuple[Array, Array]
    toe: tuple[Array, Array]
    trunk: tuple[Array, Array]
    crown: tuple[Array, Array]
    eye: tuple[Array, Array]
    upper: tuple[Array, Array]
    fore: tuple[Array, Array]
    hand: tuple[Array, Array]
    rise: tuple[Array, Array]


def _turned(state: Array, chain: Chain) -> _Turned:
    s, c = np.sin(state[_A : _D + 1]), np.cos(state[_A : _D + 1])
    (sa, sb, sf, st, sh, sg, se, sd), (ca, cb, cf, ct, ch, cg, ce, cd) = s, c
    over = chain.vertex_up - chain.head_radius
    return _Turned(
        thigh=(chain.thigh * ca, chain.thigh * sa),
        shank=(chain.shank * sb, chain.shank * cb),
        foot=(
            chain.heel_to_ankle * cf - chain.ankle_height * sf,
            chain.heel_to_ankle * sf + chain.ankle_height * cf,
        ),
        toe=(chain.foot * cf, chain.foot * sf),
        trunk=(chain.trunk * st, chain.trunk * ct),
        crown=(over * sh, over * ch),
        eye=(chain.eye_forward * ch + chain.eye_up * sh, chain.eye_up * ch - chain.eye_forward * sh),
        upper=(chain.upper_arm * sg, chain.upper_arm * cg),
        fore=(chain.forearm * ce, chain.forearm * se),
        hand=(chain.typing * cd, chain.typing * sd),
        rise=(se, ce),
    )


def values_at(state: Array, chain: Chain) -> Array:
    """(rows, n) values at (unknowns, n) states."""
    return _values(state, chain, _turned(state, chain))


def rows_at(state: Array, chain: Chain) -> Rows:
    """Values of all rows at (unknowns, n) states, and how they change."""
    turned = _turned(state, chain)
    out = Rows(_values(state, chain, turned), [()] * len(Row), [()] * len(Row), {})
    for row, (_, slopes) in _ANGLES.items():
        out.slopes[row] = slopes
    _legs(turned, out)
    _trunk(turned, out)
    _arms(state, chain, turned, out)
    _eyes(state, chain, turned, out)
    return out


def _values(state: Array, chain: Chain, t: _Turned) -> Array:
    out = np.empty((len(Row), state.shape[1]))
    for row, (zero, slopes) in _ANGLES.items():
        out[row] = zero + sum(k * state[at] for at, k in slopes)
    knee_x, knee_z = state[_P] + t.thigh[0], chain.hip_z + t.thigh[1]
    heel_x, shoulder_z = knee_x + t.shank[0] - t.foot[0], chain.hip_z + t.trunk[1]
    out[Row.BEHIND_KNEE] = knee_x - chain.hollow_x
    out[Row.KNEE_TOP] = knee_z + chain.knee_cap
    out[Row.SOLE] = _settled(knee_z - t.shank[1] - t.foot[1] - chain.sole_z)
    out[Row.HEEL] = heel_x
    out[Row.TOE] = heel_x + t.toe[0]
    out[Row.BELLY] = chain.belly_x - state[_P]
    out[Row.PLACE] = state[_P] - chain.place_x
    out[Row.CROWN] = shoulder_z + t.crown[1] + chain.head_radius
    out[Row.KEYS_Z] = _settled(shoulder_z - t.upper[1] + t.fore[1] + t.hand[1] - chain.keys_z)
    out[Row.KEYS_X] = state[_K]
    beyond, over = _edge(state, chain, t)
    out[Row.EDGE] = np.where(state[_E] > 0.0, beyond * t.rise[0] - over * t.rise[1], -over)
    dx, dz = _sight(state, chain, t)
    out[Row.EYE] = np.arctan2(dz, dx) - state[_H]
    out[Row.VIEW] = np.sqrt(np.maximum(dx * dx + dz * dz, _NEAREST))
    return out


def _edge(state: Array, chain: Chain, t: _Turned) -> tuple[Array, Array]:
    """How far the wrist is beyond the desk edge and over the desk."""
    wrist_x = state[_P] + t.trunk[0] + t.upper[0] + t.fore[0]
    return wrist_x - chain.edge_x, chain.keys_z - t.hand[1] - chain.desk_z


def _sight(state: Array, chain: Chain, t: _Turned) -> tuple[Array, Array]:
    """How far the screen is in front of and below the eye."""
    dx = state[_S] + chain.tied * state[_K] - state[_P] - t.trunk[0] - t.eye[0]
    return dx, chain.hip_z + t.trunk[1] + t.eye[1] - chain.screen_z


def brought_home(state: Array, chain: Chain, low: Array, high: Array) -> Array:
    """(unknowns, n) states with thigh, forearm and keys following from the rest.

    The two links of leg and of arm in closed form: thigh and forearm so that soles and fingertips are at their height,
    as far as they reach and the box from `low` to `high` lets them; keys where the fingertips are.
    """
    out = state.copy()
    foot_z = chain.heel_to_ankle * np.sin(state[_F]) + chain.ankle_height * np.cos(state[_F])
    knee_z = chain.sole_z + foot_z + chain.shank * np.cos(state[_B])
    out[_A] = np.arcsin(np.clip((knee_z - chain.hip_z) / chain.thigh, -_STEEP, _STEEP))
    elbow_z = chain.hip_z + chain.trunk * np.cos(state[_T]) - chain.upper_arm * np.cos(state[_G])
    wrist_z = chain.keys_z - chain.typing * np.sin(state[_D])
    out[_E] = np.arcsin(np.clip((wrist_z - elbow_z) / chain.forearm, -_STEEP, _STEEP))
    out = np.clip(out, low, high)
    elbow_x = state[_P] + chain.trunk * np.sin(state[_T]) + chain.upper_arm * np.sin(state[_G])
    out[_K] = elbow_x + chain.forearm * np.cos(out[_E]) + chain.typing * np.cos(state[_D])
    return out


def _settled(value: Array) -> Array:
    return np.where(np.abs(value) < _EXACT, 0.0, value)


def _legs(t: _Turned, out: Rows) -> None:
    (thigh_x, thigh_z), (shank_x, shank_z), (foot_x, foot_z), (toe_x, toe_z) = t.thigh, t.shank, t.foot, t.toe
    out.slopes[Row.BEHIND_KNEE] = ((_P, 1.0), (_A, -thigh_z))
    out.bends[Row.BEHIND_KNEE] = ((_A, _A, -thigh_x),)
    out.slopes[Row.KNEE_TOP] = ((_A, thigh_x),)
    out.bends[Row.KNEE_TOP] = ((_A, _A, -thigh_z),)
    out.slopes[Row.SOLE] = ((_A, thigh_x), (_B, shank_x), (_F, -foot_x))
    out.bends[Row.SOLE] = ((_A, _A, -thigh_z), (_B, _B, shank_z), (_F, _F, foot_z))
    out.ties[_A] = Tie(
        ((_B, -shank_x / thigh_x), (_F, foot_x / thigh_x)),
        ((_B, -shank_z / thigh_x), (_F, -foot_z / thigh_x), (_A, thigh_z / thigh_x)),
    )
    out.slopes[Row.HEEL] = ((_P, 1.0), (_A, -thigh_z), (_B, shank_z), (_F, foot_z))
    out.bends[Row.HEEL] = ((_A, _A, -thigh_x), (_B, _B, -shank_x), (_F, _F, foot_x))
    out.slopes[Row.TOE] = ((_P, 1.0), (_A, -thigh_z), (_B, shank_z), (_F, foot_z - toe_z))
    out.bends[Row.TOE] = ((_A, _A, -thigh_x), (_B, _B, -shank_x), (_F, _F, foot_x - toe_x))


def _trunk(t: _Turned, out: Rows) -> None:
    (across, up), (crown_x, crown_z) = t.trunk, t.crown
    out.slopes[Row.BELLY] = ((_P, -1.0),)
    out.slopes[Row.PLACE] = ((_P, 1.0),)
    out.slopes[Row.CROWN] = ((_T, -across), (_H, -crown_x))
    out.bends[Row.CROWN] = ((_T, _T, -up), (_H, _H, -crown_z))


def _arms(state: Array, chain: Chain, t: _Turned, out: Rows) -> None:
    (across, up), (upper_x, upper_z), (fore_x, fore_z), (hand_x, hand_z) = t.trunk, t.upper, t.fore, t.hand
    out.slopes[Row.KEYS_Z] = ((_T, -across), (_G, upper_x), (_E, fore_x), (_D, hand_x))
    out.bends[Row.KEYS_Z] = ((_T, _T, -up), (_G, _G, upper_z), (_E, _E, -fore_z), (_D, _D, -hand_z))
    out.slopes[Row.KEYS_X] = ((_K, 1.0),)
    out.ties[_K] = Tie(
        ((_P, 1.0), (_T, up), (_G, upper_z), (_E, -fore_z), (_D, -hand_z)),
        ((_T, -across), (_G, -upper_x), (_E, -fore_x), (_D, -hand_x)),
    )
    out.ties[_E] = Tie(
        ((_T, across / fore_x), (_G, -upper_x / fore_x), (_D, -hand_x / fore_x)),
        ((_T, up / fore_x), (_G, -upper_z / fore_x), (_D, hand_z / fore_x), (_E, fore_z / fore_x)),
    )
    # a forearm that rises to the wrist must pass over the desk edge, not through it
    beyond, over = _edge(state, chain, t)
    rises = state[_E] > 0.0
    sine, cosine = np.where(rises, t.rise[0], 0.0), np.where(rises, t.rise[1], 0.0)
    turn = beyond * cosine - (fore_z - over) * sine
    level = np.where(rises, hand_x * t.rise[1], hand_x)
    out.slopes[Row.EDGE] = ((_P, sine), (_T, sine * up), (_G, sine * upper_z), (_E, turn), (_D, level))
    out.bends[Row.EDGE] = (
        (_T, _T, -across * sine),
        (_G, _G, -upper_x * sine),
        (_E, _P, cosine),
        (_E, _T, up * cosine),
        (_E, _G, upper_z * cosine),
        (_E, _E, (over - 3.0 * fore_z) * cosine - beyond * sine),
        (_D, _E, -hand_x * sine),
        (_D, _D, np.where(rises, -hand_z * cosine, -hand_z)),
    )


def _eyes(state: Array, chain: Chain, t: _Turned, out: Rows) -> None:
    (across, up), (head_x, head_z) = t.trunk, t.eye
    dx, dz = _sight(state, chain, t)
    far = np.sqrt(np.maximum(dx * dx + dz * dz, _NEAREST))
    ux, uz = dx / far, dz / far
    moves: tuple[tuple[Unknown, Array | float, Array | float], ...] = (
        (_P, -1.0, 0.0),
        (_T, -up, -across),
        (_H, -head_z, -head_x),
        (_K, chain.tied, 0.0),
        (_S, 1.0, 0.0),
    )
    turns = tuple((at, (ux * mz - uz * mx) / far) for at, mx, mz in moves)
    nears = tuple((at, ux * mx + uz * mz) for at, mx, mz in moves)
    out.slopes[Row.EYE] = tuple((at, slope - 1.0 if at == _H else slope) for at, slope in turns)
    out.slopes[Row.VIEW] = nears
    own = {_T: (across, -up), _H: (head_x, -head_z)}  # second derivatives of dx and dz
    eye, view = [], []
    for k, ((at, turn), (_, near)) in enumerate(zip(turns, nears, strict=True)):
        off, tall = turn / -far, turn * far
        leans = near / -far
        for (other, turn_2), (_, near_2) in zip(turns[: k + 1], nears[: k + 1], strict=True):
            eye.append((at, other, off * near_2 + leans * turn_2))
            view.append((at, other, tall * turn_2))
        if at in own:
            bx, bz = own[at]
            eye.append((at, at, (ux * bz - uz * bx) / far))
            view.append((at, at, ux * bx + uz * bz))
    out.bends[Row.EYE], out.bends[Row.VIEW] = tuple(eye), tuple(view)


def _settled(value: Array) -> Array:
    return np.where(np.abs(value) < _EXACT, 0.0, value)
