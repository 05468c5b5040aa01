"""The demo judged, and judged again with a fault planted in it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.model import Brief
from parametric.mechanism.build import build
from parametric.mechanism.model import Mechanism
from parametric.pipeline.check import Checked, judge
from parametric.pipeline.size import Sized, size

Judge = Callable[[Mechanism], Checked]


@pytest.fixture(scope="session")
def sized(demo: Callable[..., Brief]) -> Sized:
    """The numbers of the demo."""
    return size(demo())


@pytest.fixture(scope="session")
def mechanism(sized: Sized) -> Mechanism:
    """The furniture of the demo, as it should be."""
    return build(sized.brief, sized.dimensions)


@pytest.fixture(scope="session")
def judged(sized: Sized) -> Judge:
    """Judges furniture, faulty or not, against the numbers of the demo."""

    def judge_it(mechanism: Mechanism) -> Checked:
        return judge(sized, mechanism)

    return judge_it


@pytest.fixture(scope="session")
def sound(judged: Judge, mechanism: Mechanism) -> Checked:
    """The demo without a fault, judged."""
    return judged(mechanism)
