"""Furniture built from the demo and from changes of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest

from parametric.assembly.placed import Assembly, assemble
from parametric.brief.model import Brief
from parametric.mechanism.build import build
from parametric.mechanism.model import Mechanism
from parametric.pipeline.size import size
from parametric.sizing.dimensions import Dimensions

# low elbow, slim thigh and a thin mattress: a high platform and a low desk, so one lower stage does both
TELESCOPIC: dict[str, Any] = {
    "sleeper": {"measured": {"elbow_height_sitting": 205, "thigh_clearance": 150}},
    "bed": {"mattress": {"thickness": 50, "sink_seated": 10, "sink_lying": 10}},
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """Everything up to the placed parts."""

    brief: Brief
    dims: Dimensions
    mechanism: Mechanism
    assembly: Assembly


def furniture(brief: Brief) -> Built:
    """Sized, built and placed."""
    dims = size(brief).dimensions
    mechanism = build(brief, dims)
    return Built(brief=brief, dims=dims, mechanism=mechanism, assembly=assemble(mechanism))


@pytest.fixture(scope="session")
def make(demo: Callable[..., Brief]) -> Callable[..., Built]:
    """The furniture of the demo, changed as asked."""

    def maker(**tables: Any) -> Built:
        return furniture(demo(**tables))

    return maker


@pytest.fixture(scope="session")
def exchange(make: Callable[..., Built]) -> Built:
    """The demo: each height has its own lower stage."""
    return make()


@pytest.fixture(scope="session")
def telescopic(make: Callable[..., Built]) -> Built:
    """One lower stage for bed and desk."""
    return make(**TELESCOPIC)


@pytest.fixture(scope="session", params=["exchange", "telescopic", "arches", "small", "thick"])
def built(request: pytest.FixtureRequest, make: Callable[..., Built]) -> Built:
    """Furniture of different kinds and sizes."""
    arch = {"x": [60, 150], "z": [0, 240]}
    left, right = {**arch, "name": "left", "y": [300, 760]}, {**arch, "name": "right", "y": [-760, -600]}
    changes: dict[str, dict[str, Any]] = {
        "exchange": {},
        "telescopic": TELESCOPIC,
        "arches": {"van": {"fixed": [left, right]}},
        "small": {"sleeper": {"sex": "female", "stature": 1550, "mass": 55}, "bed": {"width": 700}},
        "thick": {"stock": {"sections": {"rail": [34, 120], "bearer": [45, 120], "slat": [95, 25]}}},
    }
    return make(**changes[request.param])
