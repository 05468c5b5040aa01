"""Round edges as polygons: area, extreme points, chord error."""

from __future__ import annotations

import math

import numpy as np
import pytest

from parametric.core.shape import ArcTo, LineTo, Outline, circle, rectangle, stadium
from parametric.meshes.facets import CHORD, MOST, polygon

ROUND = {
    "circle": (circle(3.0, -4.0, 5.0), math.pi * 25.0),
    "stadium": (stadium(3.0, -4.0, 110.0, 35.0), 75.0 * 35.0 + math.pi * 17.5**2),
    "rounded": (rectangle(0.0, 0.0, 60.0, 40.0, 8.0), 2400.0 - (4.0 - math.pi) * 64.0),
    "bite": (
        Outline(
            (0.0, 0.0),
            (ArcTo((10.0, 10.0), (20.0, 0.0)), LineTo((20.0, 30.0)), LineTo((0.0, 30.0)), LineTo((0.0, 0.0))),
        ),
        600.0 - math.pi * 50.0,
    ),
    "slice": (
        Outline(
            (0.0, 0.0),
            (
                LineTo((10.0, 0.0)),
                ArcTo((10.0 * math.cos(0.3), 10.0 * math.sin(0.3)), (10.0 * math.cos(0.7), 10.0 * math.sin(0.7))),
                LineTo((0.0, 0.0)),
            ),
        ),
        35.0,
    ),
}


def _area(points: np.ndarray[tuple[int, int], np.dtype[np.float64]]) -> float:
    x, y = points.T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2.0


@pytest.mark.parametrize("name", ROUND)
def test_polygon_has_the_area_of_the_outline(name: str) -> None:
    outline, area = ROUND[name]
    assert _area(polygon(outline)) == pytest.approx(area, rel=1e-12)


def test_straight_outline_keeps_its_corners() -> None:
    assert polygon(rectangle(1.0, 2.0, 5.0, 9.0)).tolist() == [[1.0, 2.0], [5.0, 2.0], [5.0, 9.0], [1.0, 9.0]]


def test_extreme_points_of_a_circle_are_exact() -> None:
    points = polygon(circle(3.0, -4.0, 5.0))
    assert points.min(axis=0) == pytest.approx([-2.0, -9.0], abs=1e-12)
    assert points.max(axis=0) == pytest.approx([8.0, 1.0], abs=1e-12)


@pytest.mark.parametrize("radius", [0.5, 2.25, 5.0, 14.9, 45.0])
def test_no_facet_is_further_than_the_chord_error_from_the_circle(radius: float) -> None:
    points = polygon(circle(0.0, 0.0, radius))
    corners = np.linalg.norm(points, axis=1)
    middles = np.linalg.norm((points + np.roll(points, -1, axis=0)) / 2.0, axis=1)
    assert max(corners.max() - radius, radius - middles.min()) <= CHORD


def test_big_circles_stop_at_96_facets() -> None:
    assert len(polygon(circle(0.0, 0.0, 5000.0))) == MOST == 96


def test_three_points_in_line_are_a_straight_edge() -> None:
    outline = Outline((0.0, 0.0), (ArcTo((5.0, 0.0), (10.0, 0.0)), LineTo((10.0, 10.0)), LineTo((0.0, 0.0))))
    assert polygon(outline).tolist() == [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0]]
