"""Outlines as polygons: how round edges become flat facets.

Each quarter of an arc is cut into equal facets whose ends lie on the arc and whose other corners lie a little outside
it, just so far that the polygon encloses the same area as the arc. Volumes are then exact, the extreme points of a
circle are exact, and the surface is nowhere further than `CHORD` from the true one (up to `MOST` facets a circle).
"""

from __future__ import annotations

import itertools
import math

import numpy as np
from numpy.typing import NDArray

from parametric.core.shape import ArcTo, LineTo, Outline, Point2

CHORD = 0.02
MOST = 96

_QUARTER = math.pi / 2.0
_SAME_ANGLE = 1e-9


def polygon(outline: Outline) -> NDArray[np.float64]:
    """Corners of the polygon that stands for a closed path, shape (n, 2), mm."""
    points: list[Point2] = [outline.start]
    for edge in outline.edges:
        points.extend(_facets(points[-1], edge))
    if math.dist(points[0], points[-1]) < _SAME_ANGLE:
        points.pop()
    return np.asarray(points)


def _facets(start: Point2, edge: LineTo | ArcTo) -> list[Point2]:
    """Corners after `start`, up to the end of the edge."""
    circle = _circle(start, edge.through, edge.end) if isinstance(edge, ArcTo) else None
    if circle is None:
        return [edge.end]
    centre, radius, begin, sweep = circle
    stops = _stops(begin, sweep)
    points: list[Point2] = []
    for a, b in itertools.pairwise(stops):
        points.extend(_piece(centre, radius, a, b))
    return [*points[:-1], edge.end]


def _circle(p: Point2, m: Point2, q: Point2) -> tuple[Point2, float, float, float] | None:
    """Centre, radius, first angle and signed sweep of the arc through three points; None if they are in line."""
    ax, ay, bx, by = m[0] - p[0], m[1] - p[1], q[0] - p[0], q[1] - p[1]
    cross = 2.0 * (ax * by - ay * bx)
    if abs(cross) < 1e-12:
        return None
    a2, b2 = ax * ax + ay * ay, bx * bx + by * by
    ux, uy = (by * a2 - ay * b2) / cross, (ax * b2 - bx * a2) / cross
    centre = (p[0] + ux, p[1] + uy)
    begin = math.atan2(-uy, -ux)
    sweep = (math.atan2(q[1] - centre[1], q[0] - centre[0]) - begin) % (2.0 * math.pi)
    return centre, math.hypot(ux, uy), begin, sweep if cross > 0.0 else sweep - 2.0 * math.pi


def _stops(begin: float, sweep: float) -> list[float]:
    """Angles at which an arc starts, passes an extreme point, and ends."""
    low, high = sorted((begin, begin + sweep))
    first = math.ceil((low + _SAME_ANGLE) / _QUARTER)
    last = math.floor((high - _SAME_ANGLE) / _QUARTER)
    stops = [low, *(k * _QUARTER for k in range(first, last + 1)), high]
    return stops if sweep > 0.0 else stops[::-1]


def _piece(centre: Point2, radius: float, a: float, b: float) -> list[Point2]:
    """Corners after angle `a` up to `b`, raised so that the area under them is that under the arc."""
    n, most = 2, max(2, math.ceil(MOST * abs(b - a) / (4.0 * _QUARTER) - _SAME_ANGLE))
    while n < most and radius * (_raised(b - a, n) - 1.0) > CHORD:
        n += 1
    out = radius * _raised(b - a, n)
    corners = [(a + k * (b - a) / n, out) for k in range(1, n)] + [(b, radius)]
    return [(centre[0] + r * math.cos(t), centre[1] + r * math.sin(t)) for t, r in corners]


def _raised(sweep: float, n: int) -> float:
    """Distance of the inner corners from the centre of a unit arc cut into `n` facets."""
    share = sweep / math.sin(sweep / n)
    return share / 2.0 if n == 2 else (math.sqrt(1.0 + (n - 2) * share) - 1.0) / (n - 2)
