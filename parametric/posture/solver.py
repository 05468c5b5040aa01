"""The best seated posture that a station leaves to a body, for one or for thousands at once.

The body is a chain of segments in the sagittal plane. Feet, seat, hands and eyes are where the furniture lets them;
joints keep their limits; what remains is chosen so that the weighted squares of the distances from neutral are least,
in units of the comfortable half range on that side (``joint_limits.csv``). The cost is smooth and grows from neutral
itself, not from the edge of comfort, so that a best posture is one posture and not a region.

Only a low roof and a high desk leave more than one way out; there several starts are tried and the best is kept.
Measured against twelve random starts each, 3 of 7 477 postures at usual stations were not the best and one was missed,
all under a low roof.
"""

from __future__ import annotations

from dataclasses import fields
from typing import Any, Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from parametric.posture.chain import Row, Unknown
from parametric.posture.newton import Found, Task, cost_of, minimise, pick
from parametric.posture.outcome import KEPT, UNITS, solved_from
from parametric.posture.skeleton import Skeleton
from parametric.posture.solved import Solved
from parametric.posture.station import Legs, Station
from parametric.posture.task import NOD, Given, lean_under_roof, shape_of, start_of, task_of

Array = NDArray[np.float64]

_CHUNK: Final = 16384  # candidates at once: 60 MB; fewer cost time, as the slowest few then share less
_FORWARD, _BACK = 0.4, 0.15  # rad of leaning to start from
_BENT: Final = 0.5  # rad of neck flexion to start from
_ARM_UP, _ARM_BACK = 0.7, -0.2  # rad of the upper arm to start from
_ARMS: Final = [Row.UPPER_ARM, Row.ELBOW, Row.WRIST]
_STRAINED: Final = 1.5  # cost of arms from which the other way may be better (tried on 20 000 postures)


def solve(links: Skeleton, station: Station, start: ArrayLike | None = None) -> Solved:
    """Find the best posture of every candidate; deterministic.

    Args:
        links: Who; `Skeleton.of` a body, or arrays for many.
        station: Where; arrays broadcast with those of `links`.
        start: (unknowns, ...) as in `Solved.state`; what is not legal is moved to where it is. The answer does not
            depend on it, the time does.

    Returns:
        Single numbers if nothing given is an array, else arrays of the common shape.
    """
    given = Given(skeleton=links, station=station, shape=shape_of(links, station))
    task = task_of(given)
    begin = start_of(task, station.legs, 0.0) if start is None else _read(start, given)
    parts = [np.arange(i, min(i + _CHUNK, given.size)) for i in range(0, given.size, _CHUNK)]
    found = [_best(begin[:, part], pick(task, part), station.legs) for part in parts]
    return solved_from(given, task, _joined(found))


def _read(start: ArrayLike, given: Given) -> Array:
    state = np.asarray(start, dtype=np.float64)
    missing = (1,) * (len(given.shape) + 1 - state.ndim)
    wide = np.broadcast_to(state.reshape(len(Unknown), *missing, *state.shape[1:]), (len(Unknown), *given.shape))
    return np.asarray(wide.reshape(len(Unknown), -1) / UNITS[:, None])


def _best(start: Array, task: Task, legs: Legs) -> Found:
    """The best of several starts where there are two ways out: under a low roof, and over a high desk's edge.

    An upright start under a low roof is a ridge between leaning forward and back. Forearms that would rise through the
    desk edge either stay in front of it or come up on the desk.
    """
    lean = lean_under_roof(task)
    found = minimise(np.where(lean > 0.0, start_of(task, legs, lean), start), task)
    pressed = (lean > 0.0) | (found.force[Row.CROWN] != 0.0)
    at = np.flatnonzero(pressed)
    found = _looked_again(found, task, at, [start_of(task, legs, by, nod)[:, at] for by, nod in _ways(lean)])
    at = np.flatnonzero(~found.settled)
    found = _looked_again(found, task, at, [start_of(task, legs, _FORWARD)[:, at]])
    return _other_arms(found, task)


def _ways(lean: Array) -> tuple[tuple[Array | float, float], ...]:
    """Trunk and neck to start from under a low roof, besides leaning forward as one."""
    return (-np.maximum(lean, _BACK), NOD), (-_BACK, _BENT), (_FORWARD, 0.0), (0.0, 0.8)


def _looked_again(found: Found, task: Task, at: NDArray[np.intp], starts: list[Array]) -> Found:
    """`found` or, for the candidates `at`, the best from several more starts; all in one go, as that is quicker."""
    if not len(at):
        return found
    some = pick(task, at)
    again = minimise(np.concatenate(starts, axis=1), pick(task, np.tile(at, len(starts))))
    for k in range(len(starts)):
        found = _merged(found, pick(again, np.arange(k * len(at), (k + 1) * len(at))), at, some)
    return found


def _other_arms(found: Found, task: Task) -> Found:
    strain = cost_of(found.values, task)[_ARMS].sum(axis=0)
    at = np.flatnonzero((found.force[Row.EDGE] != 0.0) & (strain > _STRAINED))
    other, chain = found.state[:, at].copy(), pick(task.chain, at)
    on_desk = other[Unknown.KEYS] - chain.typing * np.cos(other[Unknown.HAND]) > chain.edge_x
    other[Unknown.UPPER_ARM] = np.where(on_desk, _ARM_BACK, _ARM_UP)
    return _looked_again(found, task, at, [other])


def _merged(found: Found, again: Found, at: NDArray[np.intp], task: Task) -> Found:
    """`found`, but what was found again where that misses less, or misses no more and costs less."""
    old, new = (_badness(f, task) for f in (pick(found, at), again))
    better = (new < old - KEPT) | ((new <= old + KEPT) & (again.cost < found.cost[at]))

    def mixed(name: str) -> NDArray[Any]:
        out: NDArray[Any] = getattr(found, name).copy()
        out[..., at[better]] = getattr(again, name)[..., better]
        return out

    return Found(**{f.name: mixed(f.name) for f in fields(Found)})


def _badness(found: Found, task: Task) -> Array:
    missed = np.where(found.missed > KEPT, found.missed, 0.0)
    return np.asarray(
        np.sqrt((task.stiffness * missed * missed).sum(axis=0)) + np.where(found.settled, 0.0, 2.0 * KEPT)
    )


def _joined(found: list[Found]) -> Found:
    return Found(**{f.name: np.concatenate([getattr(x, f.name) for x in found], axis=-1) for f in fields(Found)})
