"""What a station asks of a skeleton, in the solver's terms."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields
from typing import Final

import numpy as np
from numpy.typing import NDArray

from parametric.posture.chain import LENGTHS, Chain, Row, Unknown
from parametric.posture.joint_limits import joint_limits
from parametric.posture.newton import Task
from parametric.posture.skeleton import Skeleton
from parametric.posture.station import Legs, Station

Array = NDArray[np.float64]

SUPPORT: Final = 0.1  # m of seat in front of the hip, least (own estimate)
# what gives first where not all can be kept: room before contact, contact before joints
_JOINT, _CONTACT, _HEAD, _ROOM = 3e5, 1e5, 1e5, 2e4
NOD: Final = 0.1  # rad of neck flexion to start from
_OPEN: Final = 1.0  # m of seat to choose from where nothing stops the back
_FREE: Final = 0.05  # m in front of what stops the back, to start from
_BOX: Final = {  # rad; wide enough for every posture in the limits, narrow enough to keep limbs on their side
    Unknown.THIGH: (-1.1, 1.1),
    Unknown.SHANK: (-1.1, 1.7),
    Unknown.FOOT: (0.0, np.pi / 2.0),
    Unknown.HEAD: (-1.1, 1.6),
    Unknown.FOREARM: (-1.4, 1.4),
    Unknown.HAND: (-1.1, 1.1),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """Station and skeleton as flat arrays in metres, by name; `shape` is what they broadcast to."""

    skeleton: Skeleton
    station: Station
    shape: tuple[int, ...]

    @property
    def size(self) -> int:
        """How many candidates."""
        return math.prod(self.shape)

    def flat(self, value: object, scale: float = 1e-3) -> Array:
        """One number for each candidate, scaled."""
        return np.broadcast_to(np.asarray(value, dtype=np.float64), self.shape).ravel() * scale

    @property
    def has_rest(self) -> NDArray[np.bool_]:
        """Where there is a back rest."""
        return np.isfinite(self.flat(self.station.rest))

    @property
    def has_desk(self) -> NDArray[np.bool_]:
        """Where the hands have something to do."""
        return np.isfinite(self.flat(self.station.desk) + self.flat(self.station.desk_edge))

    @property
    def has_screen(self) -> NDArray[np.bool_]:
        """Where the eyes have something to look at."""
        low, high = self.station.screen_x
        there = np.isfinite(self.flat(self.station.screen_z) + self.flat(low) + self.flat(high))
        return there & self.has_desk if self.station.laptop else there

    @property
    def thigh(self) -> tuple[Array, Array]:
        """Hip to knee along x and z of folded legs."""
        body, station = self.skeleton, self.station
        along = station.folded_reach - body.hip_from_back - body.knee_cap
        return self.flat(along), self.flat(station.folded_rise - body.knee_cap - body.hip_above_seat)


def shape_of(skeleton: Skeleton, station: Station) -> tuple[int, ...]:
    """Common shape of everything given."""
    shapes: list[tuple[int, ...]] = []
    for value in (getattr(owner, f.name) for owner in (skeleton, station) for f in fields(owner)):
        shapes += [np.shape(part) for part in (value if isinstance(value, tuple) else (value,))]
    return np.broadcast_shapes(*shapes)


def chain_of(given: Given) -> Chain:
    """Lengths and places; 0 where a thing is not there."""
    body, station, flat = given.skeleton, given.station, given.flat
    own = {f.name: flat(getattr(body, f.name)) for f in fields(Skeleton) if f.name in Chain.__slots__}
    if station.legs is Legs.FOLDED:
        own["thigh"] = np.hypot(*given.thigh)
    low, high = hip_range(given)
    places = {
        "hip_z": flat(station.seat + body.hip_above_seat),
        "sole_z": flat(station.feet + station.shoes),
        "hollow_x": flat(station.seat_front + body.knee_hollow),
        "belly_x": flat(station.desk_edge + body.hip_from_back - body.belly),
        "place_x": np.clip(_hip_wanted(given, low, high), low, high),
        "keys_z": flat(station.desk + station.keyboard),
        "desk_z": flat(station.desk),
        "edge_x": flat(station.desk_edge),
        "screen_z": flat(station.screen_z + station.riser),
        "tied": flat(float(station.laptop), 1.0),
    }
    return Chain(**own, **{name: np.nan_to_num(value) for name, value in places.items()})


def hip_range(given: Given) -> tuple[Array, Array]:
    """Least and largest x of the hip that seat and back rest allow; on too short a seat the least is the larger."""
    body, station, flat = given.skeleton, given.station, given.flat
    high = flat(station.seat_front) - SUPPORT
    rear = flat(station.seat_rear + body.hip_from_back)
    reach = flat(station.seat_front + body.knee_hollow - body.thigh)
    open_ = np.minimum(reach, high) if station.legs is Legs.FLAT else high - _OPEN
    low = np.fmax(rear, open_) if station.legs is Legs.FLAT else np.where(np.isfinite(rear), rear, open_)
    against = flat(station.rest + body.hip_from_back)
    held = given.has_rest
    return np.where(held, against, low), np.where(held, np.where(against <= high, against, high), high)


def _hip_wanted(given: Given, low: Array, high: Array) -> Array:
    body, station = given.skeleton, given.station
    if station.legs is Legs.FLAT:
        gap = joint_limits()["behind_knee"].neutral
        return given.flat(station.seat_front + body.knee_hollow + gap - body.thigh)
    stopped = np.isfinite(given.flat(station.seat_rear))
    return np.where(stopped, low + _FREE, (low + high) / 2.0)


def task_of(given: Given) -> Task:
    """Wishes, limits and boxes for all candidates."""
    size = (len(Row), given.size)
    table = {name: np.zeros(size) for name in ("neutral", "weight", "stiffness")}
    table |= {name: np.ones(size) for name in ("below", "above")}
    table |= {"low": np.full(size, -np.inf), "high": np.full(size, np.inf)}
    _wishes(given, table)
    _contacts(given, table)
    chain = chain_of(given)
    box_low, box_high = _boxes(given, chain)
    bound = np.zeros_like(box_low, dtype=np.bool_)
    bound[Unknown.THIGH] = given.station.legs is not Legs.FOLDED
    bound[[Unknown.FOREARM, Unknown.KEYS]] = given.has_desk
    return Task(chain=chain, box_low=box_low, box_high=box_high, bound=bound, **table)


def _wishes(given: Given, table: dict[str, Array]) -> None:
    legs, everywhere = given.station.legs, np.ones(given.size, dtype=np.bool_)
    on = {
        Row.ANKLE: everywhere & (legs is not Legs.FOLDED),
        Row.KNEE: everywhere & (legs is not Legs.FOLDED),
        Row.EYE: given.has_screen,
        Row.VIEW: given.has_screen,
        Row.BEHIND_KNEE: everywhere & (legs is Legs.FLAT),
        Row.BELLY: given.has_desk,
    }
    for row in (row for row in Row if row <= Row.PLACE):
        _wish(table, row, row.name.lower(), on.get(row, everywhere))
    _wish(table, Row.TRUNK, "trunk_supported", given.has_rest)
    if legs is Legs.HEELS:
        for row in (Row.ANKLE, Row.KNEE, Row.HIP):
            _wish(table, row, f"{row.name.lower()}_stretched", everywhere)


def _wish(table: dict[str, Array], row: Row, name: str, where: NDArray[np.bool_]) -> None:
    limit = joint_limits()[name]
    scale = 1e-3 if limit.unit == "mm" else np.pi / 180.0
    entries = {
        "neutral": limit.neutral * scale,
        "below": (limit.neutral - limit.low) * scale,
        "above": (limit.high - limit.neutral) * scale,
        "weight": limit.weight,
        "low": limit.limit_low * scale,
        "high": limit.limit_high * scale,
        "stiffness": _ROOM if row in LENGTHS or row is Row.EYE else _JOINT,
    }
    for key, value in entries.items():
        table[key][row, where] = value


def _contacts(given: Given, table: dict[str, Array]) -> None:
    station, flat = given.station, given.flat
    standing = np.full(given.size, station.legs is not Legs.FOLDED)
    zero, none = np.zeros(given.size), np.full(given.size, np.inf)
    _keep(table, Row.SOLE, zero, zero, standing, _CONTACT)
    _keep(table, Row.HEEL, flat(station.feet_from), none, standing, _ROOM)
    _keep(table, Row.TOE, -none, flat(station.feet_to), standing, _ROOM)
    _keep(table, Row.KNEE_TOP, -none, flat(station.desk_under), ~np.isnan(zero), _ROOM)
    _keep(table, Row.CROWN, -none, flat(station.roof), ~np.isnan(zero), _HEAD)
    _keep(table, Row.KEYS_Z, zero, zero, given.has_desk, _CONTACT)
    near, far = (flat(station.desk_edge + distance) for distance in station.home_row)
    _keep(table, Row.KEYS_X, near, far, given.has_desk, _ROOM)
    _keep(table, Row.EDGE, -none, zero, given.has_desk, _ROOM)


def _keep(
    table: dict[str, Array], row: Row, low: Array, high: Array, where: NDArray[np.bool_], stiffness: float
) -> None:
    there = where & ~np.isnan(low) & ~np.isnan(high)
    table["low"][row], table["high"][row] = np.where(there, low, -np.inf), np.where(there, high, np.inf)
    table["stiffness"][row] = np.where(there, stiffness, 0.0)


def _boxes(given: Given, chain: Chain) -> tuple[Array, Array]:
    station, flat, limits = given.station, given.flat, joint_limits()
    low, high = np.zeros((len(Unknown), given.size)), np.zeros((len(Unknown), given.size))
    for unknown, (least, most) in _BOX.items():
        low[unknown], high[unknown] = least, most
    low[Unknown.HIP], high[Unknown.HIP] = hip_range(given)
    high[Unknown.HIP] = np.maximum(high[Unknown.HIP], low[Unknown.HIP])
    _legs_boxed(given, low, high)
    degrees = np.pi / 180.0
    free, held = limits["trunk"], limits["trunk_supported"]
    upright, back = (flat(angle, degrees) for angle in station.recline)
    low[Unknown.TRUNK] = np.where(given.has_rest, np.maximum(-back, held.limit_low * degrees), free.limit_low * degrees)
    high[Unknown.TRUNK] = np.where(
        given.has_rest, np.minimum(-upright, held.limit_high * degrees), free.limit_high * degrees
    )
    low[Unknown.UPPER_ARM] = limits["upper_arm"].limit_low * degrees
    high[Unknown.UPPER_ARM] = limits["upper_arm"].limit_high * degrees
    # the wrist stays over the desk
    lifted = np.arcsin(np.clip(flat(station.keyboard) / chain.typing, 0.0, np.sin(_BOX[Unknown.HAND][1])))
    high[Unknown.HAND] = np.where(given.has_desk, lifted, high[Unknown.HAND])
    near, far = (flat(x) for x in station.screen_x)
    low[Unknown.SCREEN] = np.where(given.has_screen, near, 0.0)
    high[Unknown.SCREEN] = np.where(given.has_screen, far, 0.0)
    return low, high


def _legs_boxed(given: Given, low: Array, high: Array) -> None:
    if given.station.legs is not Legs.HEELS:
        high[Unknown.FOOT] = low[Unknown.FOOT]
    if given.station.legs is Legs.FOLDED:
        along, up = given.thigh
        low[Unknown.THIGH] = high[Unknown.THIGH] = np.arctan2(up, along)
        low[Unknown.SHANK] = high[Unknown.SHANK] = 0.0


def start_of(task: Task, legs: Legs, lean: Array | float, nod: Array | float = NOD) -> Array:
    """Where to start from: legs level, trunk leaning `lean` and neck bent by `nod` rad, arms hanging."""
    chain = task.chain
    out = np.zeros_like(task.box_low)
    out[Unknown.HIP] = chain.place_x
    out[Unknown.SHANK], out[Unknown.FOOT] = (1.3, 1.2) if legs is Legs.HEELS else (0.1, 0.0)
    out[Unknown.TRUNK] = lean
    out[Unknown.HEAD] = np.clip(lean, task.box_low[Unknown.TRUNK], task.box_high[Unknown.TRUNK]) + nod
    out[Unknown.UPPER_ARM] = 0.1
    out[Unknown.SCREEN] = (task.box_low[Unknown.SCREEN] + task.box_high[Unknown.SCREEN]) / 2.0
    return np.clip(out, task.box_low, task.box_high)


def lean_under_roof(task: Task) -> Array:
    """(n,) how far trunk and head must lean together to pass under the roof, rad; 0 where they need not."""
    chain = task.chain
    over = chain.trunk + chain.vertex_up - chain.head_radius
    room = task.high[Row.CROWN] - chain.hip_z - chain.head_radius
    return np.asarray(np.arccos(np.clip(room / over, 0.2, 1.0)))
