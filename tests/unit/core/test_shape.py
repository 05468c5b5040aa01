from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.core.shape import ArcTo, LineTo, Outline, Point2, circle, rectangle, rounded, stadium
from parametric.mechanism.part import area


def shoelace(outline: Outline, facets: int = 2000) -> float:
    """Area of an outline whose arcs are cut into many chords: an oracle that knows nothing of circle segments."""
    points = [outline.start]
    for edge in outline.edges:
        if isinstance(edge, ArcTo):
            points += chords(points[-1], edge, facets)
        else:
            points.append(edge.end)
    return sum(p[0] * q[1] - q[0] * p[1] for p, q in pairwise([*points, points[0]])) / 2.0


def chords(start: Point2, arc: ArcTo, facets: int) -> list[Point2]:
    """Points along an arc, by the angles at its centre."""
    (ax, ay), (bx, by), (cx, cy) = start, arc.through, arc.end
    d = 2.0 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    a2, b2, c2 = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    ox = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / d
    oy = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / d
    first, middle, last = (math.atan2(y - oy, x - ox) for x, y in (start, arc.through, arc.end))
    turn = (last - first) % (2.0 * math.pi)
    if (middle - first) % (2.0 * math.pi) > turn:
        turn -= 2.0 * math.pi
    r = math.hypot(ax - ox, ay - oy)
    angles = [first + turn * (k + 1) / facets for k in range(facets)]
    return [(ox + r * math.cos(t), oy + r * math.sin(t)) for t in angles]


def test_a_plain_rectangle_has_four_straight_edges() -> None:
    outline = rectangle(1.0, 2.0, 11.0, 7.0)
    assert outline.start == (1.0, 2.0)
    assert [type(e) for e in outline.edges] == [LineTo] * 4
    assert outline.edges[-1].end == outline.start
    assert area(outline) == 50.0


def test_rounding_takes_what_is_left_of_a_square_outside_its_circle() -> None:
    # 4 corners of r = 20: 4 r2 - pi r2 = 343.363
    assert area(rectangle(0.0, 0.0, 600.0, 400.0, 20.0)) == pytest.approx(240_000.0 - 343.3629)


def test_each_corner_has_its_own_radius() -> None:
    corners = ((0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0))
    outline = rounded(corners, (0.0, 10.0, 0.0, 20.0))
    lost = (1.0 - math.pi / 4.0) * (10.0**2 + 20.0**2)
    assert area(outline) == pytest.approx(5000.0 - lost)
    assert [e.end for e in outline.edges if isinstance(e, ArcTo)] == [(100.0, 10.0), (0.0, 30.0)]


def test_an_arc_passes_through_the_middle_of_its_corner() -> None:
    arc = next(e for e in rectangle(0.0, 0.0, 100.0, 100.0, 10.0).edges if isinstance(e, ArcTo))
    assert math.dist(arc.through, (10.0, 10.0)) == pytest.approx(10.0)


def test_an_inner_corner_keeps_material() -> None:
    corners = ((0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (20.0, 30.0), (20.0, 10.0), (0.0, 10.0))
    sharp = rounded(corners, (0.0,) * 6)
    filleted = rounded(corners, (0.0, 0.0, 0.0, 0.0, 4.0, 0.0))
    assert area(sharp) == 500.0
    assert area(filleted) - area(sharp) == pytest.approx((1.0 - math.pi / 4.0) * 16.0)


@pytest.mark.parametrize("radius", [25.1, 60.0])
def test_a_radius_that_does_not_fit_is_refused(radius: float) -> None:
    corners = ((0.0, 0.0), (100.0, 0.0), (100.0, 25.0), (0.0, 25.0))
    with pytest.raises(ValueError, match=rf"radius {radius} does not fit an edge of 25\.0"):
        rounded(corners, (radius, 0.0, 0.0, 0.0))


def test_as_many_radii_as_corners() -> None:
    with pytest.raises(ValueError, match="shorter"):
        rounded(((0.0, 0.0), (1.0, 0.0), (1.0, 1.0)), (0.0, 0.0))


def test_a_circle_is_two_half_arcs() -> None:
    outline = circle(5.0, -3.0, 10.0)
    assert outline.edges[-1].end == outline.start == (15.0, -3.0)
    assert area(outline) == pytest.approx(math.pi * 100.0)


def test_a_stadium_is_a_rectangle_between_half_circles() -> None:
    outline = stadium(100.0, 50.0, 110.0, 32.0)
    assert area(outline) == pytest.approx(78.0 * 32.0 + math.pi * 16.0**2)
    xs = [outline.start[0]] + [p[0] for e in outline.edges for p in ([e.through] if isinstance(e, ArcTo) else [e.end])]
    assert (min(xs), max(xs)) == (45.0, 155.0)


def test_a_stadium_no_longer_than_wide_is_a_circle() -> None:
    assert stadium(1.0, 2.0, 30.0, 30.0) == circle(1.0, 2.0, 15.0)


@given(
    st.floats(10.0, 2000.0),
    st.floats(10.0, 2000.0),
    st.tuples(*[st.floats(0.0, 0.5)] * 4),
)
def test_the_area_agrees_with_chords(width: float, height: float, shares: tuple[float, float, float, float]) -> None:
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    radii = tuple(0.0 if s < 1e-3 else s * min(width, height) for s in shares)
    outline = rounded(corners, radii)
    assert area(outline) == pytest.approx(shoelace(outline), rel=1e-5)


def test_an_arc_longer_than_half_a_turn_counts_whole() -> None:
    # three quarters of a circle of 10 about the origin, closed over its centre
    r, half = 10.0, 10.0 / math.sqrt(2.0)
    outline = Outline((r, 0.0), (ArcTo((-half, half), (0.0, -r)), LineTo((0.0, 0.0)), LineTo((r, 0.0))))
    assert area(outline) == pytest.approx(0.75 * math.pi * r * r)
    assert area(outline) == pytest.approx(shoelace(outline), rel=1e-5)


def test_an_arc_that_bends_inwards_takes_away() -> None:
    bite = ArcTo((5.0, 1.0), (6.0, 0.0))
    ends = ((10.0, 0.0), (10.0, 10.0), (0.0, 10.0), (0.0, 0.0), (4.0, 0.0))
    outline = Outline((6.0, 0.0), (*(LineTo(end) for end in ends), bite))
    assert area(outline) == pytest.approx(100.0 - math.pi / 2.0)
