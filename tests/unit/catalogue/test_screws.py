"""Screws and the holes they need."""

from __future__ import annotations

import pytest

from parametric.catalogue.screws import screw, wall_screw
from parametric.core.errors import CatalogueError, RefusedError


@pytest.mark.parametrize("name", ["3.5x16", "4x40", "4x45", "5x60", "5x70", "6x80", "6x100", "6x120"])
def test_a_screw_passes_its_clearance_and_bites_in_its_pilot(name: str) -> None:
    kind = screw(name)
    diameter, length = (float(part) for part in name.split("x"))
    assert (kind.diameter, kind.length) == (diameter, length)
    assert kind.pilot < kind.diameter < kind.clearance < kind.head


def test_an_unknown_screw_names_the_known() -> None:
    with pytest.raises(CatalogueError, match=r"screw 9x9: not in the catalogue; there are 3\.5x16"):
        screw("9x9")


@pytest.mark.parametrize(("thick", "name"), [(35.0, "5x60"), (45.0, "5x70"), (46.0, "6x80"), (95.0, "6x120")])
def test_a_wall_screw_bites_25_into_the_wall(thick: float, name: str) -> None:
    assert wall_screw(thick) == name


def test_no_screw_for_a_very_thick_cleat() -> None:
    with pytest.raises(RefusedError, match="a cleat 118 thick asks for a screw of 143 into the wall"):
        wall_screw(118.0)
