"""A roomy van for anybody."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief


@pytest.fixture(scope="session")
def roomy() -> Callable[..., Brief]:
    """A brief for one person in a van with room for all."""

    def make(sex: str, stature: float, **sleeper: Any) -> Brief:
        return Brief.model_validate(
            {
                "name": "roomy",
                "van": {
                    "length_day": 3600,
                    "ceiling": 2200,
                    "wall": [[0, 2000], [2200, 2000]],
                    "opening": [{"name": "rear", "kind": "rear", "width": 1500, "height": 1800, "way_out": True}],
                },
                "sleeper": [{"sex": sex, "stature": stature, **sleeper}],
                "bed": {"width": 1150},
            }
        )

    return make
