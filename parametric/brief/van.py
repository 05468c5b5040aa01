"""The van as measured: clear space, lining to come, fixed things, openings, places to screw into.

Frame: x forward from the inner face of the rear door, y to the left of the centreline, z up from the floor as
measured; mm.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from parametric.brief.fields import Clash, Flag, Key, Label, Table, Text, X, XRange, Y, YRange, Z, ZRange, count, refuse
from parametric.brief.quantities import kg, mm, newton
from parametric.brief.words import figure

Side = Literal["left", "right"]
Surface = Literal["left", "right", "floor"]
Profile = tuple[tuple[float, float], ...]

ClearWidth = Annotated[float, mm(800, 2600)]
LeftY = Annotated[float, mm(1, 1600)]
RightY = Annotated[float, mm(-1600, -1)]
Load = Annotated[float, newton(1, 100_000)]


class Station(Table):
    """The two inner walls across one x."""

    x: X = Field(description="where the section was measured, mm")
    left: Annotated[tuple[tuple[Z, LeftY], ...], count(2)] = Field(
        description="[z, y] points of the left wall, mm, y > 0"
    )
    right: Annotated[tuple[tuple[Z, RightY], ...], count(2)] = Field(
        description="[z, y] points of the right wall, mm, y < 0"
    )


class Roof(Table):
    """A raised part of the roof, lifted for the day or fixed."""

    x: XRange = Field(description="[rear, front] of its clear opening, mm")
    y: YRange = Field(description="[right, left] of its clear opening, mm")
    front: Annotated[float, mm(900, 3000)] = Field(description="clear height at its front edge when up, mm")
    rear: Annotated[float, mm(900, 3000)] = Field(description="clear height at its rear edge when up, mm")
    thickness: Annotated[float, mm(1, 150)] = Field(default=30.0, description="of the roof panel, mm")
    lifts: Flag = Field(default=True, description="false: a fixed high roof, always up")


class Lining(Table):
    """Thickness of what will still be fitted inside the measured surfaces."""

    wall: Annotated[float, mm(0, 150)] = Field(default=0.0, description="on each wall, mm")
    ceiling: Annotated[float, mm(0, 150)] = Field(default=0.0, description="under the ceiling, mm")
    floor: Annotated[float, mm(0, 150)] = Field(default=0.0, description="on the floor, mm")


class Fixed(Table):
    """A box that stays: wheel arch, cabinet, fridge."""

    name: Label = Field(description="what it is")
    x: XRange = Field(description="[rear, front], mm")
    y: YRange = Field(description="[right, left], mm")
    z: ZRange = Field(description="[bottom, top], mm")


class Opening(Table):
    """A door, window or hatch."""

    name: Label = Field(description="what it is")
    kind: Literal["rear", "side", "front", "window", "roof"] = Field(description="where it is")
    width: Annotated[float, mm(100, 3000)] = Field(description="clear width, mm")
    height: Annotated[float, mm(100, 2500)] = Field(description="clear height, mm")
    way_out: Flag = Field(default=False, description="whether a person gets out through it")


class Ground(Table):
    """A patch of a wall or of the floor."""

    surface: Surface = Field(description="left wall, right wall or floor")
    x: XRange = Field(description="[rear, front], mm")
    z: ZRange | None = Field(default=None, description="[bottom, top] on a wall, mm")
    y: YRange | None = Field(default=None, description="[right, left] on the floor, mm")

    @model_validator(mode="after")
    def _one_range(self) -> Ground:
        needed, other = ("y", "z") if self.surface == "floor" else ("z", "y")
        clashes: list[Clash] = []
        if getattr(self, needed) is None:
            clashes.append(((needed,), f'is missing: surface "{self.surface}" needs x and {needed}'))
        if getattr(self, other) is not None:
            clashes.append(((other,), f'does not belong to surface "{self.surface}": give x and {needed}'))
        refuse("ground", clashes)
        return self


class Fixing(Ground):
    """Where screws or inserts hold."""

    load: Load = Field(description="allowed on one fastener, N")


class NoDrill(Ground):
    """Where nothing may be drilled: tank, cables, airbag, window."""

    reason: Text = Field(default="", description="why not")


class Anchor(Table):
    """A lashing point."""

    at: tuple[X, Y, Z] = Field(description="[x, y, z], mm")
    load: Load = Field(description="allowed, N")


def _same_as_by_day(read: dict[str, Any]) -> float:
    return float(read["length_day"])


class Van(Table):
    """The inside of the vehicle."""

    length_day: Annotated[float, mm(1200, 8000)] = Field(
        description="clear floor length from the inner face of the rear door, front seats in day place, mm"
    )
    length_night: Annotated[float, mm(1200, 8000)] = Field(
        default_factory=_same_as_by_day, description="the same with the front seats in night place, mm"
    )
    wall: Annotated[tuple[tuple[Z, ClearWidth], ...], count(2)] | None = Field(
        default=None, description="[z, clear width] points, the same on both sides, mm"
    )
    station: tuple[Station, ...] = Field(default=(), description="instead of wall: both walls at one or more x")
    ceiling: Annotated[float, mm(900, 2600)] = Field(description="clear height with the roof down, mm")
    payload: Annotated[float, kg(1, 5000)] | None = Field(default=None, description="payload left, kg")
    roof: Roof | None = Field(default=None, description="raised roof area")
    lining: Lining = Field(default_factory=Lining, description="lining still to come")
    fixed: tuple[Fixed, ...] = Field(default=(), description="boxes that stay")
    opening: tuple[Opening, ...] = Field(default=(), description="doors, windows, hatches")
    fixing: tuple[Fixing, ...] = Field(default=(), description="where screws hold")
    no_drill: tuple[NoDrill, ...] = Field(default=(), description="where nothing may be drilled")
    anchor: tuple[Anchor, ...] = Field(default=(), description="lashing points")

    @model_validator(mode="after")
    def _walls(self) -> Van:
        refuse("van", [*_one_description(self), *_profiles(self)])
        return self


def _one_description(van: Van) -> list[Clash]:
    if van.wall is not None and van.station:
        return [(("station",), "the walls are given twice: keep either wall or [[van.station]]")]
    if van.wall is None and not van.station:
        return [(("wall",), "is missing: give wall = [[z, clear width], ...] or [[van.station]] tables")]
    return []


def _profiles(van: Van) -> list[Clash]:
    clashes = _profile(("wall",), van.wall, van.ceiling) if van.wall is not None else []
    for i, station in enumerate(van.station):
        clashes += _profile(("station", i, "left"), station.left, van.ceiling)
        clashes += _profile(("station", i, "right"), station.right, van.ceiling)
    for i, (a, b) in enumerate(pairwise(van.station), start=1):
        if a.x >= b.x:
            clashes.append((("station", i, "x"), f"read {figure(b.x)} after {figure(a.x)}; stations go forward"))
    return clashes


def _profile(key: Key, points: Profile, ceiling: float) -> list[Clash]:
    clashes: list[Clash] = []
    if points[0][0] != 0.0:
        clashes.append(((*key, 0, 0), f"read {figure(points[0][0])}; the first z is the floor, 0"))
    for i, (a, b) in enumerate(pairwise(points), start=1):
        if a[0] >= b[0]:
            clashes.append(((*key, i, 0), f"read {figure(b[0])} after {figure(a[0])}; each z is above the one before"))
    if not clashes and points[-1][0] < ceiling:
        says = f"ends at z {figure(points[-1][0])}; go on up to the ceiling at {figure(ceiling)} or above"
        clashes.append((key, says))
    return clashes
