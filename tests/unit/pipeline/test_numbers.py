from __future__ import annotations

import json
from collections.abc import Callable

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.numbers import sized_document
from parametric.pipeline.size import size

Make = Callable[..., Brief]


def test_heights_of_the_worked_layout(worked: Make) -> None:
    dims = sized_document(size(worked()))["dimensions"]
    assert dims["heights"]["seat"] == 492.0
    assert dims["heights"]["desk_under"] == pytest.approx(734.4)
    assert dims["lengths"]["front"] == 1577.0
    assert [s["desk"] for s in dims["steps"]] == [732.0, 752.0, 772.0]


def test_each_hole_says_whose_elbow_it_serves(worked: Make) -> None:
    steps = sized_document(size(worked()))["dimensions"]["steps"]
    # desk 732 over a seat of 492: elbows of 240, give or take half a step
    assert steps[0] == {"hole": 1, "desk": 732.0, "elbow_from": 230.0, "elbow_to": 250.0}
    assert [s["elbow_from"] for s in steps[1:]] == [s["elbow_to"] for s in steps[:-1]]


def test_clashes_are_told_with_what_frees_them(worked: Make) -> None:
    document = json.loads(json.dumps(sized_document(size(worked())), allow_nan=False))
    head = next(c for c in document["clashes"] if c["about"] == "head room")
    assert (head["need"], head["have"], head["short"]) == (1543.0, 1320.0, 223.0)
    assert head["says"].startswith("head room: seat 492, sitting height 1001 and clearance 50 need 1543")
    assert document["verdict"] == "fail"


def test_bodies_say_what_was_measured(worked: Make) -> None:
    (body,) = sized_document(size(worked()))["bodies"]
    assert body["at_desk"] is True
    assert "popliteal_height" in body["known"]
    assert body["sd"]["popliteal_height"] == 0.0
