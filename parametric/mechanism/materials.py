"""What the parts are made of, by role."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from parametric.brief.model import Brief
from parametric.catalogue.tables import sheet, timber_class

STEEL: Final = 7850.0
ALUMINIUM: Final = 2700.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Materials:
    """Timber and sheet of a brief.

    Attributes:
        timber: EN 338 class.
        timber_density: Mean density, kg/m3.
        sheet: Sheet material and nominal thickness.
        sheet_density: kg/m3.
        foam_density: kg/m3.
    """

    timber: str
    timber_density: float
    sheet: str
    sheet_density: float
    foam_density: float


def materials(brief: Brief) -> Materials:
    """The materials a brief asks for."""
    stock = brief.stock
    board = sheet(stock.sheet, stock.panel_thickness)
    return Materials(
        timber=stock.timber,
        timber_density=timber_class(stock.timber).rho_mean,
        sheet=f"{stock.sheet} {stock.panel_thickness:g}",
        sheet_density=board.density,
        foam_density=brief.bed.mattress.density,
    )
