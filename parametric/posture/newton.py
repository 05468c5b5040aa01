"""Batched constrained least squares: projected Newton steps on an augmented Lagrangian, all candidates at once.

Minimises the sum of ``weight ((value - neutral) / spread)^2`` over rows, each side of neutral with its own spread, with
values inside hard limits and unknowns inside a box. Limits are kept by multipliers, so they hold exactly where they can
and, where they cannot, are missed by the least amount in the sense of their stiffness. No candidate affects another.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Final, NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from parametric.posture.chain import Chain, Row, Unknown, brought_home, values_at
from parametric.posture.slopes import Rows, rows_at

Array = NDArray[np.float64]
T = TypeVar("T")

ITERATIONS: Final = 100
_STEP: Final = 1e-8  # rad or m: the last step of a posture that has settled
_GAP: Final = 1e-7  # rad or m: limits missed by less are kept
_NEAR: Final = 0.01  # multipliers follow once steps are this small
_LONGEST: Final = 0.6  # rad or m in one step
_LIGHT: Final = 100.0  # damping under which a small step says that the goal is near
_CREEP: Final = 0.3  # share of a gap that may be left after an update of multipliers
_STIFFEST: Final = 3e7
_STALLED: Final = 6  # updates of multipliers without getting nearer to the limits
_SOFTEST: Final = 1.0  # stands for no stiffness where it divides
_WISHES: Final = Row.PLACE + 1  # rows from here on only have limits
_FELT: Final = 3.0  # least damping that changes a step
_CROWDED: Final = 0.92  # share still moving below which the rest are dropped
_LEAST_DAMPING, _MOST_DAMPING = 1e-9, 1e12


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """What n postures want and have to keep.

    Attributes:
        chain: Their geometry.
        neutral: (rows, n) values that cost nothing.
        below: (rows, n) cost is `weight` this far under neutral.
        above: (rows, n) and this far over it.
        weight: (rows, n); 0 where a row wants nothing.
        low: (rows, n) hard limits; infinite where there are none.
        high: (rows, n).
        stiffness: (rows, n) of the limits.
        box_low: (unknowns, n).
        box_high: (unknowns, n); equal to `box_low` where an unknown is none.
        bound: (unknowns, n) whether an unknown follows from the others by a contact.
    """

    chain: Chain
    neutral: Array
    below: Array
    above: Array
    weight: Array
    low: Array
    high: Array
    stiffness: Array
    box_low: Array
    box_high: Array
    bound: NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Where n minimisations ended.

    Attributes:
        state: (unknowns, n).
        values: (rows, n).
        cost: (n,) objective.
        missed: (rows, n) by how much limits are missed.
        force: (rows, n) what each limit costs per unit; 0 where it does not bite.
        settled: (n,) whether the posture settled, on the limits or as near as they let it.
    """

    state: Array
    values: Array
    cost: Array
    missed: Array
    force: Array
    settled: NDArray[np.bool_]


def pick(value: T, index: NDArray[np.intp]) -> T:
    """The candidates of an index, from a dataclass whose arrays have the candidates last."""
    changes = {f.name: _pick(getattr(value, f.name), index) for f in fields(value)}  # type: ignore[arg-type]
    return replace(value, **changes)  # type: ignore[type-var]


def _pick(value: object, index: NDArray[np.intp]) -> object:
    return value[..., index] if isinstance(value, np.ndarray) else pick(value, index)


def cost_of(values: Array, task: Task) -> Array:
    """(rows, n) cost of each row."""
    off = values - task.neutral
    share = off / np.where(off < 0.0, task.below, task.above)
    return task.weight * share * share


def missed_by(values: Array, task: Task) -> Array:
    """(rows, n) signed amount by which values leave their limits."""
    return values - np.clip(values, task.low, task.high)


@dataclass(slots=True)
class _Run:
    """Candidates still moving. The only mutable thing here; it never leaves this file."""

    task: Task
    index: NDArray[np.intp]
    state: Array
    values: Array
    multiplier: Array
    damping: Array
    best_gap: Array
    stalled: Array
    near: NDArray[np.bool_]
    last_gap: Array


def minimise(start: Array, task: Task) -> Found:
    """Minimise from (unknowns, n) starts; deterministic, at most `ITERATIONS` steps."""
    n = start.shape[1]
    state = _legal(start, task)
    run = _Run(
        task=task,
        index=np.arange(n),
        state=state,
        values=values_at(state, task.chain),
        multiplier=np.zeros_like(task.low),
        damping=np.full(n, 1.0),
        best_gap=np.full(n, np.inf),
        stalled=np.zeros(n),
        near=np.zeros(n, dtype=np.bool_),
        last_gap=np.full(n, np.inf),
    )
    final, force, settled = state.copy(), np.zeros_like(task.low), np.zeros(n, dtype=np.bool_)
    for _ in range(ITERATIONS):
        done = _advance(run) & ~settled[run.index]
        at = run.index[done]
        final[:, at], force[:, at], settled[at] = run.state[:, done], run.multiplier[:, done], True
        still = ~settled[run.index]
        if still.mean() < _CROWDED:
            _keep(run, np.flatnonzero(still))
        if not len(run.index):
            break
    rest = ~settled[run.index]
    at = run.index[rest]
    final[:, at], force[:, at] = run.state[:, rest], run.multiplier[:, rest]
    values = values_at(final, task.chain)
    cost = cost_of(values, task).sum(axis=0)
    missed = np.abs(missed_by(values, task))
    return Found(state=final, values=values, cost=cost, missed=missed, force=force, settled=settled)


def _keep(run: _Run, still: NDArray[np.intp]) -> None:
    run.task, run.index = pick(run.task, still), run.index[still]
    run.state, run.multiplier = run.state[:, still], run.multiplier[:, still]
    run.damping, run.best_gap, run.stalled = run.damping[still], run.best_gap[still], run.stalled[still]
    run.near, run.last_gap = run.near[still], run.last_gap[still]
    run.values = run.values[:, still]


def _advance(run: _Run) -> NDArray[np.bool_]:
    """One step of every candidate, and its multipliers where it has come near; tells who is done."""
    task = run.task
    old = _merit(run.values, run.multiplier, task)
    rows = rows_at(run.state, task.chain)
    gradient, hessian = _assembled(rows, run.near, old.force, old.stiff)
    _tied(run, rows, gradient, hessian)
    step, sound = _newton_step(run, gradient, hessian)
    trial = _trial(run, step)
    moved = np.abs(trial - run.state).max(axis=0)
    values = values_at(trial, task.chain)
    new = _merit(values, run.multiplier, task)
    better = sound & (new.merit <= old.merit + 1e-12 * (1.0 + np.abs(old.merit)))
    # what fails with second derivatives is tried without them before it is damped
    more = np.where(run.near, run.damping, np.maximum(8.0 * run.damping, _FELT))
    damping = np.where(better, 0.1 * run.damping, more)
    run.damping, run.near = np.clip(damping, _LEAST_DAMPING, _MOST_DAMPING), run.near & better
    run.state, run.values = np.where(better, trial, run.state), np.where(better, values, run.values)
    return _multiplied(run, better, moved, np.where(better, new.limit, old.limit))


def _trial(run: _Run, step: Array) -> Array:
    longest = np.maximum(np.abs(step).max(axis=0), _LONGEST)
    return _legal(run.state + step * (_LONGEST / longest), run.task)


def _legal(state: Array, task: Task) -> Array:
    inside = np.clip(state, task.box_low, task.box_high)
    return np.where(task.bound, brought_home(inside, task.chain, task.box_low, task.box_high), inside)


def _multiplied(run: _Run, better: NDArray[np.bool_], moved: Array, updated: Array) -> NDArray[np.bool_]:
    task, values = run.task, run.values
    near = better & (moved < _NEAR) & (run.damping < _LIGHT)
    run.near = np.where(better, near, run.near)
    for row in (Row.SOLE, Row.KEYS_Z):
        updated[row] = np.where(values[row] == 0.0, 0.0, updated[row])
    gap = np.abs(missed_by(values, task)).max(axis=0)
    change = np.abs((updated - run.multiplier) / np.maximum(task.stiffness, _SOFTEST)).max(axis=0)
    run.multiplier = np.where(near, updated, run.multiplier)
    # multipliers that creep want stiffer limits
    slow = near & (gap > _GAP) & (gap > _CREEP * run.last_gap) & (task.stiffness.max(axis=0) < _STIFFEST)
    run.last_gap = np.where(near, gap, run.last_gap)
    if slow.any():
        run.task = replace(task, stiffness=np.where(slow, 4.0 * task.stiffness, task.stiffness))
    closer = gap < 0.98 * run.best_gap
    run.stalled = np.where(near, np.where(closer | (gap < _GAP), 0.0, run.stalled + 1.0), run.stalled)
    run.best_gap = np.where(near & closer, gap, run.best_gap)
    still = better & (moved < _STEP)
    settled: NDArray[np.bool_] = (still & (change < _GAP)) | (run.stalled >= _STALLED) | (run.damping >= _MOST_DAMPING)
    return settled


class _Merit(NamedTuple):
    """(n,) merit, and (rows, n) its slope and stiffness in each value and what of the slope is due to limits."""

    merit: Array
    force: Array
    stiff: Array
    limit: Array


def _merit(values: Array, multiplier: Array, task: Task) -> _Merit:
    hard = np.maximum(task.stiffness, _SOFTEST)  # rows without limits are never outside them
    shifted = values + multiplier / hard
    limit = task.stiffness * (shifted - np.clip(shifted, task.low, task.high))
    off = values[:_WISHES] - task.neutral[:_WISHES]
    spread = np.where(off < 0.0, task.below[:_WISHES], task.above[:_WISHES])
    pull = task.weight[:_WISHES] / (spread * spread)
    merit = np.einsum("rn,rn,rn->n", pull, off, off) + 0.5 * np.einsum("rn,rn,rn->n", limit, limit, 1.0 / hard)
    force, stiff = limit.copy(), np.where(limit != 0.0, task.stiffness, 0.0)
    force[:_WISHES] += 2.0 * pull * off
    stiff[:_WISHES] += 2.0 * pull
    return _Merit(merit, force, stiff, limit)


def _assembled(rows: Rows, near: NDArray[np.bool_], force: Array, stiff: Array) -> tuple[Array, Array]:
    """Gradient and full Hessian of the merit in all unknowns as if none followed from others."""
    size, n = len(Unknown), len(near)
    gradient, hessian = np.zeros((size, n)), np.zeros((size, size, n))
    trust, floor = near.astype(np.float64), np.where(near, -np.inf, 0.0)
    for row, slopes in enumerate(rows.slopes):
        if not (stiff[row].any() or force[row].any()):
            continue
        for k, (at, slope) in enumerate(slopes):
            gradient[at] += force[row] * slope
            stiffened = stiff[row] * slope
            for other, second in slopes[: k + 1]:
                hessian[at, other] += stiffened * second
        trusted = force[row] * trust
        for at, other, bend in rows.bends[row]:
            hessian[at, other] += trusted * bend if at != other else np.maximum(force[row] * bend, floor)
    for k in range(1, size):
        hessian[:k, k] = hessian[k, :k]
    return gradient, hessian


def _tied(run: _Run, rows: Rows, gradient: Array, hessian: Array) -> None:
    """Carry what a tied unknown wants over to those it follows from, in place."""
    met = {Unknown.KEYS: Row.KEYS_X, Unknown.FOREARM: Row.KEYS_Z, Unknown.THIGH: Row.SOLE}
    for tied, row in met.items():
        slopes, bends = rows.ties[tied]
        holds = run.task.bound[tied]
        if row is not Row.KEYS_X:
            holds = holds & (run.values[row] == 0.0)
        pull = np.where(holds, gradient[tied], 0.0)
        for at, bend in bends:
            extra = pull * bend
            hessian[at, at] += np.where(run.near, extra, np.maximum(extra, 0.0))
        shares = [(at, np.where(holds, slope, 0.0)) for at, slope in slopes]
        for at, share in shares:
            gradient[at] += share * gradient[tied]
            hessian[at] += share * hessian[tied]
        for at, share in shares:
            hessian[:, at] += share * hessian[:, tied]


def _newton_step(run: _Run, gradient: Array, hessian: Array) -> tuple[Array, NDArray[np.bool_]]:
    """Damped step with unknowns held that press against their box; lower triangle of the Hessian is used."""
    task = run.task
    held = ((run.state <= task.box_low) & (gradient >= 0.0)) | ((run.state >= task.box_high) & (gradient <= 0.0))
    held |= (task.box_low == task.box_high) | task.bound
    moving = np.flatnonzero(~held.all(axis=1))
    held, a = held[moving], hessian[np.ix_(moving, moving)]
    a *= ~held[:, None] & ~held[None, :]
    for k in range(len(moving)):
        a[k, k] += np.where(held[k], 1.0, run.damping)
    step = np.zeros_like(gradient)
    with np.errstate(all="ignore"):  # of those that are not sound
        lower, sound = _cholesky(a)
        step[moving] = np.where(sound, _solved(lower, np.where(held, 0.0, -gradient[moving])), 0.0)
    return step, sound


def _cholesky(a: Array) -> tuple[Array, NDArray[np.bool_]]:
    """Lower factors of (k, k, n) matrices in place of them, and which were positive definite."""
    sound = np.ones(a.shape[2], dtype=np.bool_)
    for k in range(len(a)):
        if k:
            a[k:, k] -= np.einsum("rjn,jn->rn", a[k:, :k], a[k, :k])
        positive = a[k, k] > 1e-12
        sound &= positive
        pivot = np.sqrt(np.where(positive, a[k, k], 1.0))
        a[k:, k] /= pivot
        a[k, k] = pivot
    return a, sound


def _solved(lower: Array, right: Array) -> Array:
    out = right.copy()
    size = len(lower)
    for k in range(size):
        if k:
            out[k] -= np.einsum("jn,jn->n", lower[k, :k], out[:k])
        out[k] /= lower[k, k]
    for k in reversed(range(size)):
        if k + 1 < size:
            out[k] -= np.einsum("jn,jn->n", lower[k + 1 :, k], out[k + 1 :])
        out[k] /= lower[k, k]
    return out
