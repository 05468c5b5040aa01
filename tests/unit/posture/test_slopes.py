"""Exact derivatives against differences of the values."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from parametric.posture.chain import Chain, Row, Unknown, brought_home, values_at
from parametric.posture.slopes import rows_at
from parametric.posture.station import Legs
from parametric.posture.task import Given, chain_of, shape_of, start_of, task_of
from tests.random_postures import people, skeletons, stations

Array = NDArray[np.float64]
STEP = 1e-6


def _case(count: int = 40) -> tuple[Array, Chain, Array, Array]:
    rng = np.random.default_rng(11)
    dims = people(count, rng)
    body, station = skeletons(dims), stations(dims, rng)
    given = Given(skeleton=body, station=station, shape=shape_of(body, station))
    task = task_of(given)
    state = start_of(task, Legs.FLAT, 0.1) + rng.uniform(-0.2, 0.2, (len(Unknown), count))
    return state, chain_of(given), task.box_low - 1.0, task.box_high + 1.0


def test_slopes_are_differences_of_values() -> None:
    state, chain, _, _ = _case()
    rows = rows_at(state, chain)
    assert np.array_equal(rows.values, values_at(state, chain))
    found = np.zeros((len(Row), *state.shape))
    for row, slopes in enumerate(rows.slopes):
        for at, slope in slopes:
            found[row, at] += slope
    for at in Unknown:
        wanted = _difference(lambda s: values_at(s, chain), state, at)
        assert np.allclose(found[:, at], wanted, atol=2e-8), at.name


def test_bends_are_differences_of_slopes() -> None:
    state, chain, _, _ = _case()

    def slopes(at_state: Array) -> Array:
        out = np.zeros((len(Row), *state.shape))
        for row, pairs in enumerate(rows_at(at_state, chain).slopes):
            for at, slope in pairs:
                out[row, at] += slope
        return out

    found = np.zeros((len(Row), len(Unknown), *state.shape))
    for row, bends in enumerate(rows_at(state, chain).bends):
        for at, other, bend in bends:
            found[row, at, other] += bend
            if at != other:
                found[row, other, at] += bend
    for at in Unknown:
        wanted = _difference(slopes, state, at)
        assert np.allclose(found[:, :, at], wanted, atol=1e-7), at.name


def test_ties_are_differences_of_what_follows() -> None:
    state, chain, low, high = _case()
    ties = rows_at(brought_home(state, chain, low, high), chain).ties
    for tied, tie in ties.items():
        for at, slope in tie.slopes:
            if at == Unknown.FOREARM:
                continue  # itself follows; carried over in its turn
            wanted = _difference(lambda s: brought_home(s, chain, low, high), state, at)[tied]
            through = dict(tie.slopes).get(Unknown.FOREARM, 0.0)
            carried = through * dict(ties[Unknown.FOREARM].slopes).get(at, 0.0) if tied == Unknown.KEYS else 0.0
            assert np.allclose(slope + carried, wanted, atol=1e-7), (tied, at)


def _difference(values: Callable[[Array], Array], state: Array, at: int) -> Array:
    up, down = state.copy(), state.copy()
    up[at] += STEP
    down[at] -= STEP
    return np.asarray((values(up) - values(down)) / (2.0 * STEP))
