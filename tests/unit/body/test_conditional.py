from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.body.conditional import condition, left_out

MEAN = np.array([10.0, 200.0, 3.0])
SD = np.array([2.0, 30.0, 0.5])
CORRELATION = np.array([[1.0, 0.6, 0.3], [0.6, 1.0, -0.2], [0.3, -0.2, 1.0]])
COV = CORRELATION * np.outer(SD, SD)


def test_two_dimensions_follow_the_regression_line() -> None:
    got = condition(MEAN, COV, [0], np.array([13.0]))
    assert got.mean[1] == pytest.approx(200 + 0.6 * 30 / 2 * 3)
    assert got.cov[1, 1] == pytest.approx(30**2 * (1 - 0.6**2))


def test_nothing_known_changes_nothing() -> None:
    got = condition(MEAN, COV, [], np.array([]))
    np.testing.assert_array_equal(got.mean, MEAN)
    np.testing.assert_allclose(got.cov, COV)


@given(st.floats(5, 15), st.floats(100, 300))
def test_one_at_a_time_gives_what_both_at_once_give(a: float, b: float) -> None:
    first = condition(MEAN[[0, 2]], COV[np.ix_([0, 2], [0, 2])], [0], np.array([a]))
    both = condition(MEAN, COV, [0, 1], np.array([a, b]))
    # by hand: the second step uses the covariances left by the first one
    left = condition(MEAN, COV, [0], np.array([a]))
    gain = left.cov[2, 1] / left.cov[1, 1]
    assert first.mean[1] == pytest.approx(left.mean[2])
    assert both.mean[2] == pytest.approx(left.mean[2] + gain * (b - left.mean[1]))
    assert both.cov[2, 2] == pytest.approx(left.cov[2, 2] - gain * left.cov[1, 2])


def test_log_likelihoods_differ_as_the_densities_do() -> None:
    def log_density(x: np.ndarray) -> float:
        away = x - MEAN[:2]
        block = COV[:2, :2]
        return float(-0.5 * (away @ np.linalg.solve(block, away) + np.log(np.linalg.det(block))))

    for x in (np.array([10.0, 200.0]), np.array([14.0, 150.0])):
        assert condition(MEAN, COV, [0, 1], x).log_likelihood == pytest.approx(log_density(x))


def test_dimensions_that_determine_one_another_do_not_break_it() -> None:
    double = np.array([[4.0, 8.0, 1.0], [8.0, 16.0, 2.0], [1.0, 2.0, 1.0]])
    agreeing = condition(MEAN, double, [0, 1], np.array([11.0, 202.0]))
    assert agreeing.mean[2] == pytest.approx(3.25)
    contradicting = condition(MEAN, double, [0, 1], np.array([11.0, 150.0]))
    assert np.isfinite(contradicting.mean).all()
    assert contradicting.mean[:2].tolist() == [11.0, 150.0]
    assert contradicting.cov[2, 2] == pytest.approx(0.75)


def test_left_out_expects_what_the_others_say() -> None:
    values = np.array([13.0, 170.0, 3.4])
    expected, distance = left_out(MEAN, COV, [0, 1, 2], values)
    for i in range(3):
        others = [j for j in range(3) if j != i]
        rest = condition(MEAN, COV, others, values[others])
        assert expected[i] == pytest.approx(rest.mean[i])
        assert distance[i] == pytest.approx((values[i] - rest.mean[i]) / np.sqrt(rest.cov[i, i]))
