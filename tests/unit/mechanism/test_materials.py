from __future__ import annotations

from collections.abc import Callable

from parametric.brief.model import Brief
from parametric.mechanism.materials import materials


def test_what_the_brief_asks_for(demo: Callable[..., Brief]) -> None:
    stock = {"timber": "C18", "sheet": "poplar_plywood", "panel_thickness": 15}
    stuff = materials(demo(stock=stock, bed={"mattress": {"density": 42}}))
    assert (stuff.timber, stuff.sheet, stuff.foam_density) == ("C18", "poplar_plywood 15", 42.0)
    # EN 338:2016, mean density: C18 380, C24 420 kg/m3
    assert stuff.timber_density == 380.0
    assert materials(demo()).timber_density == 420.0
    assert materials(demo()).sheet == "birch_plywood 18"


def test_poplar_is_lighter_than_birch(demo: Callable[..., Brief]) -> None:
    poplar = materials(demo(stock={"sheet": "poplar_plywood", "panel_thickness": 15}))
    assert poplar.sheet_density < materials(demo()).sheet_density
