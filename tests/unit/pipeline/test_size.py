from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Verdict
from parametric.core.errors import BodyError, RefusedError
from parametric.pipeline.size import size

Make = Callable[..., Brief]


def test_the_numbers_are_judged_by_comfort_sleep_and_access(demo: Make) -> None:
    sized = size(demo())
    assert {c.id.split(".")[0] for c in sized.checks} == {"comfort", "sleep", "access"}
    assert sized.brief == demo()
    assert sized.people.at_desk.mean["stature"] == 1960.0
    assert not sized.clashes


def test_the_same_brief_gives_the_same_numbers(demo: Make) -> None:
    first, again = size(demo()), size(demo())
    assert (first.dimensions, first.checks, first.clashes, first.worth) == (
        again.dimensions,
        again.checks,
        again.clashes,
        again.worth,
    )


def test_a_failed_check_is_no_error(demo: Make) -> None:
    sized = size(demo(sitting={"desk_height": 650}))
    assert any(c.verdict is Verdict.FAIL for c in sized.checks)


def test_what_cannot_be_built_is_refused(demo: Make) -> None:
    with pytest.raises(RefusedError, match="not built by this version"):
        size(demo(arrangement={"support": "post"}))


def test_a_measurement_no_person_has_is_refused(demo: Make) -> None:
    with pytest.raises(BodyError, match=r"popliteal_height is 1200\.0"):
        size(demo(sleeper={"measured": {"popliteal_height": 1200}}))
