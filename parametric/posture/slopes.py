"""How the rows of a chain change with its unknowns: exact first and second derivatives.

Positions are sums of one sine or cosine for each segment, so their second derivatives stand on the diagonal; only what
multiplies or divides two of them, the desk edge and the line of sight, has mixed ones.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from parametric.posture.chain import (
    ANGLES,
    NEAREST,
    Chain,
    Row,
    Slope,
    Turned,
    Unknown,
    edge,
    sight,
    turned,
    values_of,
)

Array = NDArray[np.float64]
Bend = tuple[int, int, Array]  # two unknowns, the first not before the second, and the second derivative

_P, _A, _B, _F, _T, _H, _G, _E, _D, _K, _S = Unknown


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


def rows_at(state: Array, chain: Chain) -> Rows:
    """Values of all rows at (unknowns, n) states, and how they change."""
    t = turned(state, chain)
    out = Rows(values_of(state, chain, t), [()] * len(Row), [()] * len(Row), {})
    for row, (_, slopes) in ANGLES.items():
        out.slopes[row] = slopes
    _legs(t, out)
    _trunk(t, out)
    _arms(state, chain, t, out)
    _eyes(state, chain, t, out)
    return out


def _legs(t: Turned, out: Rows) -> None:
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


def _trunk(t: Turned, out: Rows) -> None:
    (across, up), (crown_x, crown_z) = t.trunk, t.crown
    out.slopes[Row.BELLY] = ((_P, -1.0),)
    out.slopes[Row.PLACE] = ((_P, 1.0),)
    out.slopes[Row.CROWN] = ((_T, -across), (_H, -crown_x))
    out.bends[Row.CROWN] = ((_T, _T, -up), (_H, _H, -crown_z))


def _arms(state: Array, chain: Chain, t: Turned, out: Rows) -> None:
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
    beyond, over = edge(state, chain, t)
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


def _eyes(state: Array, chain: Chain, t: Turned, out: Rows) -> None:
    (across, up), (head_x, head_z) = t.trunk, t.eye
    dx, dz = sight(state, chain, t)
    far = np.sqrt(np.maximum(dx * dx + dz * dz, NEAREST))
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
