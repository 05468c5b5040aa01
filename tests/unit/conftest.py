"""Briefs to size and to build: the layout worked through by hand, the demo, and any change of either."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from parametric.brief.model import Brief

CONFIGS = Path(__file__).parents[2] / "configs"

# A man of 1960 and 88 kg in slippers of 10, his dimensions by regression on stature (ANSUR II 2012), whole mm
WORKED: Mapping[str, Any] = {
    "name": "worked",
    "van": {"length_day": 2450, "ceiling": 1320, "wall": [[0, 1500], [1900, 1500]]},
    "sleeper": [
        {
            "sex": "male",
            "stature": 1960,
            "mass": 88,
            "shoes": 10,
            "measured": {
                "popliteal_height": 492,
                "elbow_height_sitting": 260,
                "thigh_clearance": 175,
                "buttock_knee_length": 691,
                "buttock_popliteal_length": 565,
                "knee_height": 628,
                "abdominal_depth_sitting": 226,
                "sitting_height": 1001,
            },
        }
    ],
    "bed": {"width": 1150, "mattress": {"thickness": 100, "sink_seated": 30}},
}


def merged(base: Any, change: Any) -> Any:
    """A table with some keys changed, at any depth; None takes a key away, a list of one takes changes of its item."""
    if isinstance(base, list) and isinstance(change, Mapping):
        return [merged(base[0], change), *base[1:]]
    if not (isinstance(base, Mapping) and isinstance(change, Mapping)):
        return change
    both = {**base, **{key: merged(base.get(key), value) for key, value in change.items()}}
    return {key: value for key, value in both.items() if value is not None}


def maker(base: Mapping[str, Any]) -> Callable[..., Brief]:
    """Makes briefs from a base after changing tables: ``make(bed={"width": 900})``."""

    def make(**tables: Any) -> Brief:
        return Brief.model_validate(merged(base, tables))

    return make


@pytest.fixture(scope="session")
def worked() -> Callable[..., Brief]:
    """The layout worked through by hand, changed as asked."""
    return maker(WORKED)


@pytest.fixture(scope="session")
def demo() -> Callable[..., Brief]:
    """The brief of configs/compact_van.toml, changed as asked."""
    return maker(tomllib.loads((CONFIGS / "compact_van.toml").read_text(encoding="utf-8")))
