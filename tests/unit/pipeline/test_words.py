from __future__ import annotations

import re
from collections.abc import Callable

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.pipeline.size import size
from parametric.pipeline.words import advice, headline, heights, holes

Make = Callable[..., Brief]


def checks(*verdicts: Verdict) -> list[Check]:
    """Checks with these verdicts."""
    return [Check(id="a.b", says="s", verdict=v, source="x") for v in verdicts]


def test_the_headline_counts() -> None:
    said = headline(checks(Verdict.PASS, Verdict.PASS, Verdict.CAUTION))
    assert said.endswith(": 0 fail, 1 caution, 2 pass")
    assert "DO NOT BUILD" not in said


def test_one_fail_forbids_building() -> None:
    assert headline(iter(checks(Verdict.PASS, Verdict.FAIL))).startswith("DO NOT BUILD: 1 fail")


def test_the_figures_that_matter(worked: Make) -> None:
    said = dict(heights(size(worked())))
    assert said["loaded seat height"] == "492"
    assert said["platform height (slat top)"] == "422"
    assert said["desk steps"] == "732 752 772"
    assert said["sleeping length"] == "2110"
    assert re.findall(r"\d+", said["legs (exchange)"]) == ["374", "455", "105"]


def test_telescopic_legs_have_one_lower_stage(demo: Make) -> None:
    thin = {"mattress": {"thickness": 50, "sink_seated": 10, "sink_lying": 10}}
    measured = {"measured": {"elbow_height_sitting": 205, "thigh_clearance": 150}}
    said = dict(heights(size(demo(bed=thin, sleeper=measured))))
    assert len(re.findall(r"\d+", said["legs (telescopic)"])) == 2


def test_holes_are_numbered_from_below(worked: Make) -> None:
    assert [k for k, *_ in holes(size(worked()))] == [1, 2, 3]


def test_advice_says_what_to_measure_and_which_hole(demo: Make, worked: Make) -> None:
    lines = advice(size(demo()))
    assert lines[0].startswith("measure elbow_height_sitting: desk height goes from +/-")
    assert any(line.startswith("desk hole 1: 726, for an elbow") for line in lines)
    assert not [line for line in advice(size(worked())) if line.startswith("measure elbow")]
