"""Bodies, and a workplace that fits each."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from functools import cache

import pytest

from parametric.body import Body, Sex, estimate
from parametric.posture import Workplace

SEXES: tuple[Sex, ...] = ("male", "female")
BODIES = tuple(itertools.product(SEXES, (1500.0, 1650.0, 1800.0, 1960.0, 2100.0)))


@cache
def _estimated(sex: Sex, stature: float) -> Body:
    return estimate(sex=sex, stature=stature)


@pytest.fixture(params=BODIES, ids=lambda p: f"{p[0]}-{p[1]:.0f}")
def body(request: pytest.FixtureRequest) -> Body:
    """Bodies of both sexes from 1500 to 2100."""
    return _estimated(*request.param)


@pytest.fixture
def tall() -> Body:
    """A man of 1960."""
    return _estimated("male", 1960.0)


@pytest.fixture
def fitting() -> Callable[..., Workplace]:
    """Makes the workplace where a body's thigh is level and its elbow on the desk; seat and desk may be shifted."""

    def make(body: Body, *, seat: float = 0.0, desk: float | None = 0.0) -> Workplace:
        mean = body.mean
        height = 5.0 + 20.0 + mean["popliteal_height"] + seat
        surface = None if desk is None else height + mean["elbow_height_sitting"] + desk
        return Workplace(seat=height, floor=5.0, back=1000.0, place=-120.0, desk=surface, shoes=20.0)

    return make
