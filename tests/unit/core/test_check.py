from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.core.check import Check, Verdict, judge, worst


def judged(value: float, **limits: float | None) -> Check:
    """A check with nothing but a value and limits."""
    return judge("family.question", value, says="s", source="from memory", **limits)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("value", "limits", "verdict", "margin"),
    [
        (5.0, {}, Verdict.PASS, None),
        (20.0, {"low": 20.0}, Verdict.PASS, 0.0),
        (19.0, {"low": 20.0}, Verdict.FAIL, -1.0),
        (21.0, {"high": 20.0}, Verdict.FAIL, -1.0),
        (12.0, {"low": 10.0, "high": 20.0}, Verdict.PASS, 2.0),
        (19.0, {"low": 10.0, "high": 20.0}, Verdict.PASS, 1.0),
        (400.0, {"low": 330.0, "good_low": 450.0}, Verdict.CAUTION, -50.0),
        (450.0, {"low": 330.0, "good_low": 450.0}, Verdict.PASS, 0.0),
        (329.0, {"low": 330.0, "good_low": 450.0}, Verdict.FAIL, -1.0),
        (70.0, {"high": 75.0, "good_high": 64.0}, Verdict.CAUTION, -6.0),
        (76.0, {"high": 75.0, "good_high": 64.0}, Verdict.FAIL, -1.0),
        (-99.0, {"good_low": 8.0}, Verdict.CAUTION, -107.0),
        (99.0, {"good_high": 8.0}, Verdict.CAUTION, -91.0),
        (-20.0, {"low": -40.0, "high": 15.0, "good_high": -30.0}, Verdict.CAUTION, -10.0),
        (30.0, {"low": 25.0, "good_low": 50.0, "good_high": 90.0}, Verdict.CAUTION, -20.0),
        (100.0, {"low": 25.0, "good_low": 50.0, "good_high": 90.0}, Verdict.CAUTION, -10.0),
        (24.0, {"low": 25.0, "good_low": 50.0, "good_high": 90.0}, Verdict.FAIL, -1.0),
    ],
)
def test_limits_decide(value: float, limits: dict[str, float], verdict: Verdict, margin: float | None) -> None:
    check = judged(value, **limits)
    assert check.verdict is verdict
    assert check.margin == margin
    assert check.value == value


def test_the_limit_printed_is_the_one_that_decided() -> None:
    limits = {"low": 330.0, "good_low": 450.0, "high": 900.0}
    failed, warned = judged(300.0, **limits), judged(400.0, **limits)
    assert (failed.min, failed.max) == (330.0, 900.0)
    assert (warned.min, warned.max) == (450.0, 900.0)


@pytest.mark.parametrize("limits", [{}, {"low": 0.0}, {"high": 0.0}, {"good_low": 1.0}])
def test_what_is_no_number_fails(limits: dict[str, float]) -> None:
    assert judged(math.nan, **limits).verdict is Verdict.FAIL


@pytest.mark.parametrize(("value", "verdict"), [(math.inf, Verdict.FAIL), (-math.inf, Verdict.PASS)])
def test_the_infinite_is_judged_like_any_number(value: float, verdict: Verdict) -> None:
    assert judged(value, high=10.0).verdict is verdict


@pytest.mark.parametrize("value", [20.0 - 1e-9, 0.1 + 0.2 - 0.3 + 20.0 - 5e-7])
def test_the_last_bit_does_not_fail_a_value_on_its_limit(value: float) -> None:
    assert judged(value, low=20.0).verdict is Verdict.PASS


def test_a_hair_more_does() -> None:
    assert judged(20.0 - 1e-5, low=20.0).verdict is Verdict.FAIL


@pytest.mark.parametrize(
    ("mode", "variant"), [(None, None), ("desk", None), ("desk/low", "low"), ("access/front", "front")]
)
def test_the_variant_is_what_follows_the_slash(mode: str | None, variant: str | None) -> None:
    check = judge("a.b", 1.0, says="s", source="own rule", mode=mode)
    assert (check.mode, check.variant) == (mode, variant)


def test_a_proposal_is_kept_only_where_there_is_something_to_mend() -> None:
    def proposal(value: float) -> str | None:
        return judge("a.b", value, says="s", source="x", low=0.0, good_low=10.0, proposal="more").proposal

    assert [proposal(v) for v in (-1.0, 5.0, 10.0)] == ["more", "more", None]


def test_everything_said_is_kept() -> None:
    check = judge(
        "comfort.thigh_gap",
        12.5,
        low=20.0,
        says="room over the thigh",
        source="own estimate",
        unit="deg",
        mode="desk/high",
        parts=("panel",),
        at=(1.0, 2.0, 3.0),
        chance=0.25,
        proposal="raise the desk",
    )
    assert check == Check(
        id="comfort.thigh_gap",
        says="room over the thigh",
        verdict=Verdict.FAIL,
        source="own estimate",
        mode="desk/high",
        variant="high",
        parts=("panel",),
        at=(1.0, 2.0, 3.0),
        chance=0.25,
        proposal="raise the desk",
        value=12.5,
        unit="deg",
        min=20.0,
        max=None,
        margin=-7.5,
    )


@given(st.floats(-100.0, 100.0), st.floats(-50.0, 0.0), st.floats(1.0, 50.0))
def test_a_negative_margin_never_passes(value: float, low: float, high: float) -> None:
    check = judged(value, low=low, high=high)
    assert check.margin is not None
    assert (check.verdict is Verdict.PASS) == (check.margin >= -1e-6)
    assert check.verdict is not Verdict.CAUTION


def test_the_worst_verdict_wins() -> None:
    fine, odd, bad = judged(1.0), judged(1.0, good_low=2.0), judged(1.0, low=2.0)
    assert worst([]) is Verdict.PASS
    assert worst([fine, fine]) is Verdict.PASS
    assert worst([fine, odd]) is Verdict.CAUTION
    assert worst(iter([odd, bad, fine])) is Verdict.FAIL


def test_verdicts_read_as_words() -> None:
    assert [str(v) for v in Verdict] == ["pass", "caution", "fail"]
