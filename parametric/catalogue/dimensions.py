"""The body dimensions this tool knows: names after ISO 7250-1, and their columns in the survey."""

from __future__ import annotations

import csv
import difflib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from parametric.core.errors import CatalogueError


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """One body dimension.

    Attributes:
        name: Name used everywhere, after ISO 7250-1:2017.
        iso: Clause title of that standard, from memory.
        column: Column in the public files of ANSUR II.
        unit: ``mm``, or ``kg`` for the body mass.
        description: From where to where, in which posture.
        source: Where the row comes from.
    """

    name: str
    iso: str
    column: str
    unit: str
    description: str
    source: str


@cache
def dimensions() -> dict[str, Dimension]:
    """Every dimension by name, in the order of the survey tables."""
    text = files("parametric.catalogue").joinpath("dimensions.csv").read_text(encoding="utf-8")
    return {row["name"]: Dimension(**row) for row in csv.DictReader(text.splitlines())}


def dimension(name: str) -> Dimension:
    """The dimension of that name.

    Raises:
        CatalogueError: No dimension has this name; the message proposes near ones.
    """
    table = dimensions()
    if name not in table:
        near = difflib.get_close_matches(name, table, n=3)
        hint = f"did you mean {' or '.join(near)}?" if near else f"known are {', '.join(table)}"
        raise CatalogueError(f"{name!r} is not a body dimension; {hint}")
    return table[name]
