"""What the tables of a brief say against each other, where it is certain; the rest is for the checks.

Each function returns problems keyed from the table it is named after.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from parametric.brief.bed import Bed
from parametric.brief.choices import Sitting
from parametric.brief.fields import Clash, Key
from parametric.brief.interior import wall_y
from parametric.brief.sleeper import Sleeper
from parametric.brief.van import Fixed, Lining, Van
from parametric.brief.words import figure, shown

_NARROWEST = 600.0  # mm; less than shoulders between finished walls is no van to sleep in


def in_van(van: Van) -> list[Clash]:
    """Problems inside the table of the van."""
    clashes: list[Clash] = [
        *_twice("fixed", [f.name for f in van.fixed]),
        *_twice("opening", [o.name for o in van.opening]),
        *_roof(van),
        *_width(van),
    ]
    for i, box in enumerate(van.fixed):
        clashes += _outside(("fixed", i), box, van)
    for table in ("fixing", "no_drill"):
        for i, ground in enumerate(getattr(van, table)):
            clashes += _beyond((table, i, "x"), ground.x, van)
    return clashes


def in_sleepers(sleepers: Sequence[Sleeper]) -> list[Clash]:
    """Problems among the sleepers."""
    clashes = [
        ((i, "name"), f"{shown(s.name)} is the name of an earlier sleeper; names are different")
        for i, s in enumerate(sleepers)
        if s.name is not None and s.name in {other.name for other in sleepers[:i]}
    ]
    if not any(s.works for s in sleepers):
        clashes.append(((0, "works"), "nobody uses the desk; at least one sleeper has works = true"))
    return list(clashes)


def in_sitting(sitting: Sitting, van: Van | None) -> list[Clash]:
    """Problems of the seat, alone and in the van."""
    seat, desk = sitting.seat_height, sitting.desk_height
    clashes: list[Clash] = []
    if seat is not None and desk is not None and seat >= desk:
        clashes.append((("seat_height",), f"{figure(seat)} is not below the desk_height, {figure(desk)}"))
    if van is not None:
        for key, height in (("seat_height", seat), ("desk_height", desk)):
            clashes += _under_ceiling(key, height, height, van, "")
    return clashes


def in_bed(bed: Bed, van: Van | None) -> list[Clash]:
    """Problems of the bed, alone and in the van."""
    clashes: list[Clash] = []
    if bed.length is not None and bed.platform_length is not None and bed.platform_length > bed.length:
        says = f"{figure(bed.platform_length)} is more than the length of the whole bed, {figure(bed.length)}"
        clashes.append((("platform_length",), says))
    height, storage = bed.platform_height, bed.storage_height
    if height is not None and storage is not None and storage >= height:
        clashes.append((("storage_height",), f"{figure(storage)} is not below the platform_height, {figure(height)}"))
    return clashes if van is None else [*clashes, *_bed_in_van(bed, van)]


def with_seat(bed: Bed, sitting: Sitting | None) -> list[Clash]:
    """Two wishes for one height: the platform and the seat on it."""
    if sitting is None or bed.platform_height is None or sitting.seat_height is None:
        return []
    foam = bed.mattress
    gives = bed.platform_height + foam.thickness + foam.air_mat - foam.sink_seated
    if abs(gives - sitting.seat_height) <= 1.0:
        return []
    says = (
        f"{figure(bed.platform_height)} gives a seat of {figure(gives)} on this mattress, "
        f"but sitting.seat_height is {figure(sitting.seat_height)}: leave one of them out"
    )
    return [(("platform_height",), says)]


def _bed_in_van(bed: Bed, van: Van) -> Iterable[Clash]:
    lengthwise, crosswise = "length_night", "clear width"
    room = {lengthwise: van.length_night, crosswise: max(width for _, width in _clear_widths(van))}
    lies, spans = (lengthwise, crosswise) if bed.direction == "along" else (crosswise, lengthwise)
    for key, size, limit in (
        ("width", bed.width, spans),
        ("length", bed.length, lies),
        ("platform_length", bed.platform_length, lies),
    ):
        if size is not None and size > room[limit]:
            yield (key,), f"{figure(size)} is more than the {limit} of the van, {figure(room[limit])}"
    if bed.platform_height is not None:
        top = bed.platform_height + bed.mattress.thickness + bed.mattress.air_mat
        yield from _under_ceiling("platform_height", bed.platform_height, top, van, " with the mattress")
    yield from _under_ceiling("storage_height", bed.storage_height, bed.storage_height, van, "")


def _under_ceiling(key: str, read: float | None, top: float | None, van: Van, what: str) -> list[Clash]:
    ceiling = _highest(van)
    if read is None or top is None or top < ceiling:
        return []
    return [((key,), f"{figure(read)} reaches {figure(top)}{what}; the finished ceiling is at {figure(ceiling)}")]


def _twice(table: str, names: Sequence[str]) -> list[Clash]:
    return [
        ((table, i, "name"), f"{shown(name)} is the name of an earlier {table}; names are different")
        for i, name in enumerate(names)
        if name in names[:i]
    ]


def _roof(van: Van) -> Iterable[Clash]:
    if van.roof is not None:
        for key, height in (("front", van.roof.front), ("rear", van.roof.rear)):
            if height <= van.ceiling:
                yield ("roof", key), f"{figure(height)} is not above the ceiling, {figure(van.ceiling)}"
        yield from _beyond(("roof", "x"), van.roof.x, van)


def _width(van: Van) -> list[Clash]:
    """Opposite walls are measured apart in a station, so they may cross."""
    least: dict[Key, float] = {}
    for key, width in _clear_widths(van):
        least[key] = min(width, least.get(key, width))
    return [
        (key, f"leaves {figure(width)} between the finished walls; at least {figure(_NARROWEST)}")
        for key, width in least.items()
        if width < _NARROWEST
    ]


def _clear_widths(van: Van) -> Iterator[tuple[Key, float]]:
    """Finished clear width at every bend of every section measured, and the key of the section."""
    places: list[tuple[Key, float]] = [(("station", i, "right"), s.x) for i, s in enumerate(van.station)]
    for i, (key, x) in enumerate(places or [(("wall",), 0.0)]):
        for z in _bends(van, i):
            over_floor = z - van.lining.floor
            yield key, wall_y(van, "left", x, over_floor) - wall_y(van, "right", x, over_floor)


def _bends(van: Van, station: int) -> set[float]:
    if van.wall is not None:
        return {z for z, _ in van.wall}
    return {z for profile in (van.station[station].left, van.station[station].right) for z, _ in profile}


def _outside(key: Key, box: Fixed, van: Van) -> list[Clash]:
    """A box that does not touch the inside anywhere; its sizes were measured, as the van's were, before lining."""
    bare = van.model_copy(update={"lining": Lining()})
    clashes = _beyond((*key, "x"), box.x, van)
    if box.z[0] >= _highest(bare):
        clashes.append(((*key, "z"), f"begins at {figure(box.z[0])}, above the roof at {figure(_highest(bare))}"))
    elif box.y[0] >= _outermost(bare, "left", box) or box.y[1] <= _outermost(bare, "right", box):
        says = f"read [{figure(box.y[0])}, {figure(box.y[1])}]; the box lies outside the walls altogether"
        clashes.append(((*key, "y"), says))
    return clashes


def _beyond(key: Key, x: tuple[float, float], van: Van) -> list[Clash]:
    length = max(van.length_day, van.length_night)
    if x[0] < length:
        return []
    return [(key, f"begins at {figure(x[0])}, in front of the van's length of {figure(length)}")]


def _outermost(van: Van, side: str, box: Fixed) -> float:
    stations = [s.x for s in van.station if box.x[0] < s.x < box.x[1]]
    heights = [z for i in range(max(1, len(van.station))) for z in _bends(van, i) if box.z[0] < z < box.z[1]]
    places = [(x, z) for x in (*box.x, *stations) for z in (*box.z, *heights)]
    if side == "left":
        return max(wall_y(van, "left", x, z) for x, z in places)
    return min(wall_y(van, "right", x, z) for x, z in places)


def _highest(van: Van) -> float:
    top = van.ceiling if van.roof is None else max(van.roof.front, van.roof.rear)
    return top - van.lining.ceiling - van.lining.floor
