"""Lying diagonally: the lying body's own outline, turned on the bed, against brute force."""

from __future__ import annotations

import math

import pytest

from parametric.body import Body, estimate
from parametric.posture.diagonal import best_slant
from parametric.posture.lying import LENGTHENED


def _fits(body: Body, spare: float, degrees: float, length: float, width: float) -> bool:
    """Whether the outline with that much length added at the crown fits a bed when turned by an angle."""
    mean, t = body.mean, math.radians(degrees)
    top = mean["stature"] + spare
    places = (
        (max(top, mean["stature"] + LENGTHENED), mean["head_breadth"]),
        (mean["shoulder_height"], mean["bideltoid_breadth"]),
        (mean["shoulder_height"] - mean["shoulder_elbow_length"], mean["elbow_to_elbow_breadth"]),
        (mean["trochanterion_height"], mean["hip_breadth_sitting"]),
        (0.0, 2.0 * mean["foot_breadth"]),
    )
    points = [
        (a * math.cos(t) - c * math.sin(t), a * math.sin(t) + c * math.cos(t))
        for a, b in places
        for c in (-b / 2.0, b / 2.0)
    ]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return max(xs) - min(xs) <= length + 1e-6 and max(ys) - min(ys) <= width + 1e-6


@pytest.mark.parametrize(("length", "width"), [(1900.0, 1000.0), (1900.0, 1200.0), (1900.0, 1400.0), (2000.0, 900.0)])
def test_the_best_slant_fits_and_nothing_better_does(length: float, width: float) -> None:
    body = estimate(sex="male", stature=1980, mass=88)
    found = best_slant(body, length, width)
    assert _fits(body, found.spare, found.angle, length, width)
    more = found.spare + 1.0
    assert not any(_fits(body, more, k / 20.0, length, width) for k in range(901))


def test_less_than_the_diagonal_of_the_rectangle() -> None:
    body = estimate(sex="male", stature=1980, mass=88)
    assert best_slant(body, 1900.0, 1400.0).spare < math.hypot(1900.0, 1400.0) - 1980.0 - 100.0


def test_a_bed_narrower_than_the_body_is_lain_on_straight() -> None:
    found = best_slant(estimate(sex="male", stature=1980, mass=88), 1900.0, 450.0)
    assert (found.spare, found.angle) == (-80.0, 0.0)


def test_a_long_bed_leaves_its_whole_length() -> None:
    body = estimate(sex="female", stature=1650)
    assert best_slant(body, 2000.0, 700.0).spare >= 350.0
