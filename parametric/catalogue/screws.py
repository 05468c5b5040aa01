"""Wood screws with the holes they need."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import lru_cache
from importlib import resources

from parametric.core.errors import CatalogueError


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
