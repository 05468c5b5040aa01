"""Sizes a changed brief."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.size import Sized
from parametric.pipeline.size import size as sized


@pytest.fixture(scope="session")
def size(worked: Callable[..., Brief]) -> Callable[..., Sized]:
    """Sizes the layout worked through by hand, changed as asked."""

    def sizer(**tables: Any) -> Sized:
        return sized(worked(**tables))

    return sizer
