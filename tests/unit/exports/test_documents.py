"""JSON documents."""

from __future__ import annotations

import json
import math

import numpy as np
import pytest

from parametric.core.check import Check, Verdict, judge
from parametric.exports.documents import checks_document, to_bytes


def _check(verdict: Verdict = Verdict.PASS) -> Check:
    return Check(id="fit.parts", says="Parts are apart.", verdict=verdict, source="own rule")


def test_checks_document_has_the_schema_promised() -> None:
    check = judge(
        "comfort.thigh_gap",
        37.2,
        says="Thighs fit.",
        source="own rule",
        low=20.0,
        mode="desk/low",
        parts=("panel",),
        at=(1.0, 2.0, 3.0),
    )
    expected = {
        "id": "comfort.thigh_gap",
        "mode": "desk/low",
        "variant": "low",
        "parts": ["panel"],
        "at": [1.0, 2.0, 3.0],
        "step": None,
        "chance": None,
        "proposal": None,
        "verdict": "pass",
        "value": 37.2,
        "unit": "mm",
        "min": 20.0,
        "max": None,
        "margin": 17.2,
        "says": "Thighs fit.",
        "source": "own rule",
    }
    read = json.loads(to_bytes(checks_document("demo", [check])))
    assert list(read) == ["schema", "design", "verdict", "checks"]
    assert read["schema"] == "parametric.checks/1"
    assert read["design"] == "demo"
    assert read["verdict"] == "pass"
    (row,) = read["checks"]
    assert list(row) == list(expected)
    assert row == expected


@pytest.mark.parametrize(
    ("verdicts", "worst"),
    [([], "pass"), ([Verdict.PASS, Verdict.CAUTION], "caution"), ([Verdict.FAIL, Verdict.PASS], "fail")],
)
def test_verdict_of_the_whole_is_the_worst(verdicts: list[Verdict], worst: str) -> None:
    assert checks_document("demo", map(_check, verdicts))["verdict"] == worst


def test_numbers_are_rounded_to_a_millionth() -> None:
    data = to_bytes({"a": 0.1 + 0.2, "b": -1e-9, "c": 3, "d": np.float64(1.23456789), "e": np.int64(7), "f": True})
    assert json.loads(data) == {"a": 0.3, "b": 0.0, "c": 3, "d": 1.234568, "e": 7, "f": True}
    assert b"-0.0" not in data


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_numbers_that_are_not_finite_become_null(value: float) -> None:
    assert json.loads(to_bytes({"a": value})) == {"a": None}


def test_sets_are_sorted_and_mappings_keep_their_order() -> None:
    data = to_bytes({"b": frozenset({"z", "a", "m"}), "a": ("y", "x")})
    assert data.decode().index('"b"') < data.decode().index('"a"')
    assert json.loads(data) == {"b": ["a", "m", "z"], "a": ["y", "x"]}


def test_document_ends_with_a_line_end_and_keeps_letters() -> None:
    data = to_bytes({"name": "né"})
    assert data.endswith(b"}\n")
    assert "né".encode() in data


def test_what_has_no_form_in_json_is_refused() -> None:
    with pytest.raises(TypeError, match="object has no form in JSON"):
        to_bytes({"a": object()})
