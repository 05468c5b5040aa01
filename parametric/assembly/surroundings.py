"""The van round the furniture as solid pieces: floor, walls, doors, roof, and the things that stay."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from itertools import pairwise

from parametric.brief.interior import ceiling_at, fixed_things, wall_y
from parametric.brief.van import Side, Van
from parametric.core.pose import Vec3
from parametric.core.shape import Box, Hull, Shape
from parametric.mechanism.model import VanState

THICK = 150.0  # how far the pieces reach outwards: more than anything could pass in one step
_WIDE = 1500.0
TWIST = 0.1  # mm a strip of a twisted wall may stand behind it
_TOP = 3200.0


def shell(van: Van, state: VanState) -> Mapping[str, Shape]:
    """The van's inner surfaces as solids, by name.

    Args:
        van: As measured.
        state: Roof and floor length in a mode.
    """
    out = {
        "floor": _box((-THICK, -_WIDE, -THICK), (state.length + THICK, _WIDE, 0.0)),
        "rear door": _box((-THICK, -_WIDE, 0.0), (0.0, _WIDE, _TOP)),
        "front end": _box((state.length, -_WIDE, 0.0), (state.length + THICK, _WIDE, _TOP)),
    }
    for side in ("right", "left"):
        out |= dict(_wall(van, side, state.length))
    raised = van.roof is not None and (state.roof_up or not van.roof.lifts)
    return out | (_raised_roof(van, state) if raised else _flat_roof(van, state))


def things_that_stay(van: Van) -> Mapping[str, Shape]:
    """The things that stay, by name."""
    return {f.name: _box((f.x[0], f.y[0], f.z[0]), (f.x[1], f.y[1], f.z[1])) for f in fixed_things(van)}


def _wall(van: Van, side: Side, length: float) -> Iterator[tuple[str, Shape]]:
    """A wall as convex stretches between the heights and stations measured; a twisted one in strips that hug it."""
    xs, zs = _stations(van, length), _heights(van, side)
    out = _WIDE if side == "left" else -_WIDE
    for i, (x0, x1) in enumerate(pairwise(xs)):
        for j, (z0, z1) in enumerate(pairwise(zs)):
            twist = _twist(van, side, (x0, x1), (z0, z1))
            strips = max(1, math.ceil(twist / TWIST))
            back = math.copysign(twist / strips, out)
            stops = [x0 + (x1 - x0) * k / strips for k in range(strips + 1)]
            for k, (a, b) in enumerate(pairwise(stops)):
                inner: list[Vec3] = [(x, wall_y(van, side, x, z) + back, z) for x in (a, b) for z in (z0, z1)]
                outer: list[Vec3] = [(x, out, z) for x in (a, b) for z in (z0, z1)]
                name = f"{side} wall {i + 1}.{j + 1}" + (f".{k + 1}" if strips > 1 else "")
                yield name, Shape((Hull((*inner, *outer)),))


def _twist(van: Van, side: Side, x: tuple[float, float], z: tuple[float, float]) -> float:
    """How far the flat hull of a stretch would stand in front of the wall that sizes were taken from, mm.

    A strip of it, stood back by its share of that, is nowhere in front of the wall and hardly behind it.
    """
    a, b, c, d = (wall_y(van, side, u, v) for u in x for v in z)
    twist = abs(a - b - c + d) / 4.0
    return twist if twist > 1e-6 else 0.0


def _stations(van: Van, length: float) -> list[float]:
    inside = [s.x for s in van.station if 0.0 < s.x < length]
    return [0.0, *inside, length]


def _heights(van: Van, side: Side) -> list[float]:
    profiles = [getattr(s, side) for s in van.station] or [van.wall or ()]
    floor = van.lining.floor
    marks = {round(z - floor, 6) for profile in profiles for z, _ in profile if z - floor > 0.0}
    return [0.0, *sorted(marks), max(marks) + 900.0]


def _ceiling(van: Van) -> float:
    return van.ceiling - van.lining.ceiling - van.lining.floor


def _flat_roof(van: Van, state: VanState) -> dict[str, Shape]:
    z = _ceiling(van)
    return {"ceiling": _box((-THICK, -_WIDE, z), (state.length + THICK, _WIDE, z + THICK))}


def _raised_roof(van: Van, state: VanState) -> dict[str, Shape]:
    """Ceiling with a hole, the raised roof over it, and the fabric or wall between them."""
    roof = van.roof
    assert roof is not None
    z, (x0, x1), (y0, y1) = _ceiling(van), roof.x, roof.y
    rear, front = (ceiling_at(van, x, (y0 + y1) / 2.0, True) for x in (x0, x1))
    top = max(rear, front) + THICK
    corners: list[Vec3] = [(x, y, h) for x, h in ((x0, rear), (x1, front)) for y in (y0, y1)]
    lid: list[Vec3] = [(x, y, top) for x in (x0, x1) for y in (y0, y1)]
    return {
        "ceiling behind the roof": _box((-THICK, -_WIDE, z), (x0, _WIDE, top)),
        "ceiling before the roof": _box((x1, -_WIDE, z), (state.length + THICK + x1, _WIDE, top)),
        "ceiling right of the roof": _box((x0, -_WIDE, z), (x1, y0, top)),
        "ceiling left of the roof": _box((x0, y1, z), (x1, _WIDE, top)),
        "raised roof": Shape((Hull((*corners, *lid)),)),
    }


def _box(lo: Vec3, hi: Vec3) -> Shape:
    return Shape((Box(lo, hi),))
