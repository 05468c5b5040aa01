"""The seated body as a chain of segments: what its segment angles do to joints, hands, feet and eyes.

Lengths in metres and angles in radians, so that one unit of each matters about alike to the solver. Every row is a
number that a posture wants or has to keep: a joint angle, a distance, a gap.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum, auto
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Slope = tuple[int, Array | float]  # unknown, derivative


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
RIGHT = np.pi / 2.0
_EXACT = 1e-12  # m; a contact missed by less is met
NEAREST = 1e-6  # m2; nobody reads closer than 1 mm
_STEEP = 0.99  # sine of the steepest thigh or forearm

ANGLES: dict[Row, tuple[float, tuple[Slope, ...]]] = {
    Row.ANKLE: (0.0, ((_B, -1.0), (_F, 1.0))),
    Row.KNEE: (RIGHT, ((_A, -1.0), (_B, 1.0))),
    Row.HIP: (RIGHT, ((_A, -1.0), (_T, -1.0))),
    Row.TRUNK: (0.0, ((_T, 1.0),)),
    Row.NECK: (0.0, ((_T, -1.0), (_H, 1.0))),
    Row.UPPER_ARM: (0.0, ((_G, 1.0),)),
    Row.SHOULDER: (0.0, ((_T, 1.0), (_G, 1.0))),
    Row.ELBOW: (RIGHT, ((_G, 1.0), (_E, -1.0))),
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


class Turned(NamedTuple):
    """Segments of n chains along x and z, (n,) each, m; their signs are as in `values_at`. `rise` is the forearm's."""

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


def turned(state: Array, chain: Chain) -> Turned:
    """Segments at (unknowns, n) states."""
    s, c = np.sin(state[_A : _D + 1]), np.cos(state[_A : _D + 1])
    (sa, sb, sf, st, sh, sg, se, sd), (ca, cb, cf, ct, ch, cg, ce, cd) = s, c
    over = chain.vertex_up - chain.head_radius
    return Turned(
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
    return values_of(state, chain, turned(state, chain))


def values_of(state: Array, chain: Chain, t: Turned) -> Array:
    """(rows, n) values at states whose segments are at hand."""
    out = np.empty((len(Row), state.shape[1]))
    for row, (zero, slopes) in ANGLES.items():
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
    beyond, over = edge(state, chain, t)
    out[Row.EDGE] = np.where(state[_E] > 0.0, beyond * t.rise[0] - over * t.rise[1], -over)
    dx, dz = sight(state, chain, t)
    out[Row.EYE] = np.arctan2(dz, dx) - state[_H]
    out[Row.VIEW] = np.sqrt(np.maximum(dx * dx + dz * dz, NEAREST))
    return out


def edge(state: Array, chain: Chain, t: Turned) -> tuple[Array, Array]:
    """How far the wrist is beyond the desk edge and over the desk."""
    wrist_x = state[_P] + t.trunk[0] + t.upper[0] + t.fore[0]
    return wrist_x - chain.edge_x, chain.keys_z - t.hand[1] - chain.desk_z


def sight(state: Array, chain: Chain, t: Turned) -> tuple[Array, Array]:
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
