"""Sections too small for the screws of their joints are refused, not built."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.model import Brief
from parametric.core.errors import RefusedError
from parametric.mechanism.build import build
from parametric.pipeline.size import size


@pytest.mark.parametrize(
    ("role", "section", "part"),
    [
        ("slat", (70.0, 12.0), "slat"),
        ("batten", (28.0, 20.0), "batten"),
        ("bearer", (45.0, 70.0), "post|bearer"),
        ("post", (30.0, 30.0), "post"),
        ("cleat", (45.0, 60.0), "desk_cleat"),
        ("ledger", (20.0, 45.0), "front_bearer"),
    ],
)
def test_a_section_too_small_is_refused_by_name(
    demo: Callable[..., Brief], role: str, section: tuple[float, float], part: str
) -> None:
    brief = demo()
    sections = brief.stock.sections.model_copy(update={role: section})
    brief = brief.model_copy(update={"stock": brief.stock.model_copy(update={"sections": sections})})
    with pytest.raises(RefusedError, match=rf"({part}).*has no wood round it; give \[stock.sections\]"):
        build(brief, size(brief).dimensions)


@pytest.mark.parametrize("width", [640.0, 660.0, 680.0, 700.0, 900.0, 1250.0])
def test_dowels_and_screws_keep_apart_at_every_width(demo: Callable[..., Brief], width: float) -> None:
    brief = demo()
    brief = brief.model_copy(update={"bed": brief.bed.model_copy(update={"width": width})})
    ledger = build(brief, size(brief).dimensions).parts["ledger"]
    holes = getattr(ledger, "holes")  # noqa: B009 - only made parts have holes
    dowels = [h.at[0] for h in holes if h.purpose.startswith("dowel")]
    screws = [h.at[0] for h in holes if h.purpose.startswith("screw")]
    assert len(dowels) == 2
    assert min(abs(d - s) for d in dowels for s in screws) >= 12.0
