"""Doubtful bodies are told as cautions."""

from __future__ import annotations

from collections.abc import Callable

from parametric.brief.model import Brief
from parametric.checks.bodies import body_checks
from parametric.core.check import Verdict
from parametric.pipeline.size import size


def test_a_measurement_that_does_not_fit_the_rest_is_doubted(demo: Callable[..., Brief]) -> None:
    brief = demo()
    person = brief.sleeper[0].model_copy(update={"measured": {"elbow_height_sitting": 420.0}})
    brief = brief.model_copy(update={"sleeper": (person,)})
    sized = size(brief)
    doubts = body_checks(brief, sized.people)
    assert {c.verdict for c in doubts} == {Verdict.CAUTION}
    assert any("elbow_height_sitting" in c.says for c in doubts)
    assert all(c in sized.checks for c in doubts)


def test_an_ordinary_body_is_not(demo: Callable[..., Brief]) -> None:
    brief = demo()
    assert body_checks(brief, size(brief).people) == []
