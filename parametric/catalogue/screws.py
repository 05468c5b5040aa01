"""Wood screws with the holes they need."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import lru_cache
from importlib import resources

from parametric.core.errors import CatalogueError, RefusedError

WALL_SCREWS = ("5x60", "5x70", "6x80", "6x100", "6x120")
IN_WALL = 25.0  # least bite in a wall or its lining board (common practice, no source)


@dataclass(frozen=True, slots=True, kw_only=True)
class Screw:
    """A countersunk wood screw.

    Attributes:
        name: Diameter x length.
        designation: What to ask for.
        diameter: Nominal, mm.
        length: Over all, mm.
        head: Head diameter, mm.
        clearance: Hole in the part it holds, mm.
        pilot: Hole in the part it bites into, mm.
    """

    name: str
    designation: str
    diameter: float
    length: float
    head: float
    clearance: float
    pilot: float


@lru_cache(maxsize=1)
def _table() -> dict[str, Screw]:
    text = resources.files(__package__).joinpath("screws.csv").read_text(encoding="utf-8")
    numbers = ("diameter", "length", "head", "clearance", "pilot")
    return {
        row["name"]: Screw(
            name=row["name"], designation=row["designation"], **{key: float(row[key]) for key in numbers}
        )
        for row in csv.DictReader(text.splitlines())
    }


def screw(name: str) -> Screw:
    """A screw by name, such as ``5x60``.

    Raises:
        CatalogueError: The catalogue has no such screw.
    """
    try:
        return _table()[name]
    except KeyError:
        raise CatalogueError(f"screw {name}: not in the catalogue; there are {', '.join(_table())}") from None


def wall_screw(thick: float) -> str:
    """Name of the shortest screw that holds a part of a thickness (mm) to a wall.

    Raises:
        RefusedError: None is long enough.
    """
    for name in WALL_SCREWS:
        if screw(name).length >= thick + IN_WALL:
            return name
    longest = screw(WALL_SCREWS[-1]).length
    raise RefusedError(
        f"a cleat {thick:.0f} thick asks for a screw of {thick + IN_WALL:.0f} into the wall and the longest is "
        f"{longest:.0f}: bring the furniture nearer to the wall or build the wall out"
    )
