"""The demo, checked once."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.check import Checked, check


@pytest.fixture(scope="session")
def checked(demo: Callable[..., Brief]) -> Checked:
    """The demo with everything judged."""
    return check(demo())
