"""Wherever a wheel arch stands along the wall, the platform is held up beside or over it and nothing meets."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Verdict
from parametric.pipeline.check import check

DEMO = tomllib.loads((Path(__file__).parents[2] / "configs" / "compact_van.toml").read_text(encoding="utf-8"))


def fails(start: int, length: int) -> set[str]:
    """What fails with an arch of 240 high under the wall-side rail of the demo."""
    arch = {"name": "arch", "x": [start, start + length], "y": [-760, -600], "z": [0, 240]}
    brief = Brief.model_validate({**DEMO, "van": {**DEMO["van"], "fixed": [arch]}})
    return {c.says for c in check(brief).checks if c.verdict is Verdict.FAIL}


@pytest.mark.parametrize(("start", "length"), [(40, 300), (60, 90), (800, 110), (700, 400), (1480, 60), (400, 900)])
def test_some_arches(start: int, length: int) -> None:
    assert fails(start, length) == set()


@pytest.mark.heavy
@pytest.mark.parametrize("length", [60, 300, 700])
@pytest.mark.parametrize("start", range(0, 1600, 90))
def test_many_arches(start: int, length: int) -> None:
    assert fails(start, length) == set()
