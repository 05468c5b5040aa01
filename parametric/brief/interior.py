"""Where the finished walls and ceiling are.

Heights here are over the *finished* floor, so lining still to come on the floor lowers everything measured before it.
Walls run straight between the measured points of a profile, and straight along x between stations; beyond the first
and last point they go on unchanged.
"""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise

from parametric.brief.van import Fixed, Profile, Side, Van

_Section = tuple[float, Profile]


def wall_y(van: Van, side: Side, x: float, z: float) -> float:
    """y of the finished inner wall at a place, mm; positive on the left, negative on the right.

    Args:
        van: As measured.
        side: Which wall.
        x: mm from the rear door.
        z: mm over the finished floor.
    """
    inward = -van.lining.wall if side == "left" else van.lining.wall
    return _measured(_sections(van, side), x, z + van.lining.floor) + inward


def narrowest(van: Van, side: Side, x0: float, x1: float, z0: float, z1: float) -> float:
    """The most inward y of a finished wall over a patch, mm: the least on the left, the greatest on the right.

    Exact, because such a wall has its extremes where a profile bends or at the rim of the patch.

    Args:
        van: As measured.
        side: Which wall.
        x0: Rear end of the patch, mm.
        x1: Front end, mm.
        z0: Bottom over the finished floor, mm.
        z1: Top, mm.
    """
    sections = _sections(van, side)
    floor = van.lining.floor
    bends_x = {x0, x1} | {x for x, _ in sections if x0 < x < x1}
    bends_z = {z0, z1} | {z - floor for _, profile in sections for z, _ in profile if z0 < z - floor < z1}
    found = [wall_y(van, side, x, z) for x in bends_x for z in bends_z]
    return min(found) if side == "left" else max(found)


def ceiling_at(van: Van, x: float, y: float, roof_up: bool) -> float:
    """Height of the finished ceiling over the finished floor at a place, mm.

    A raised roof counts within its plan rectangle, rim included, when it is up or does not lift; its height runs
    straight from the rear edge to the front edge.

    Args:
        van: As measured.
        x: mm from the rear door.
        y: mm left of the centreline.
        roof_up: State of a lifting roof.
    """
    lining = van.lining.ceiling + van.lining.floor
    roof = van.roof
    if roof is None or not (roof_up or not roof.lifts):
        return van.ceiling - lining
    (x0, x1), (y0, y1) = roof.x, roof.y
    if not (x0 <= x <= x1 and y0 <= y <= y1):
        return van.ceiling - lining
    return roof.rear + (roof.front - roof.rear) * (x - x0) / (x1 - x0) - lining


def fixed_things(van: Van) -> tuple[Fixed, ...]:
    """The boxes that stay, with their heights over the finished floor like all else here."""
    floor = van.lining.floor
    if floor == 0.0:
        return van.fixed
    return tuple(f.model_copy(update={"z": (f.z[0] - floor, f.z[1] - floor)}) for f in van.fixed)


def _sections(van: Van, side: Side) -> tuple[_Section, ...]:
    if van.wall is not None:
        half = 0.5 if side == "left" else -0.5
        return ((0.0, tuple((z, half * width) for z, width in van.wall)),)
    return tuple((s.x, s.left if side == "left" else s.right) for s in van.station)


def _measured(sections: tuple[_Section, ...], x: float, z: float) -> float:
    after = bisect_right([s[0] for s in sections], x)
    if after == 0 or after == len(sections):
        return _along(sections[min(after, len(sections) - 1)][1], z)
    (x0, rear), (x1, front) = sections[after - 1], sections[after]
    y0, y1 = _along(rear, z), _along(front, z)
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def _along(profile: Profile, z: float) -> float:
    if z <= profile[0][0]:
        return profile[0][1]
    for (z0, y0), (z1, y1) in pairwise(profile):
        if z <= z1:
            return y0 + (y1 - y0) * (z - z0) / (z1 - z0)
    return profile[-1][1]
