"""What the parts are made of."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from pydantic import AfterValidator, Field, StrictStr, model_validator

from parametric.brief.fields import Label, Table, refuse
from parametric.brief.quantities import PRICE, Quantity, mm
from parametric.brief.words import choices, figure, near, shown
from parametric.catalogue.tables import sheet, sheet_materials, timber_classes
from parametric.core.errors import CatalogueError

_SLIP = 3.0  # mm; a measured thickness further from its tolerance belongs to another sheet


def _timber(name: str) -> str:
    if name not in timber_classes():
        raise ValueError(f"read {shown(name)}; known are {', '.join(timber_classes())}")
    return name


def _sheet(name: str) -> str:
    if name not in sheet_materials():
        raise ValueError(f"read {shown(name)}; write {choices(sheet_materials())}{near(name, sheet_materials())}")
    return name


Side = Annotated[float, mm(8, 250)]
Size = tuple[Side, Side]
Timber = Annotated[StrictStr, AfterValidator(_timber)]
SheetMaterial = Annotated[StrictStr, AfterValidator(_sheet)]


class Sections(Table):
    """Timber section of each role as [width, height] in place, mm; one left out is chosen."""

    slat: Size | None = Field(default=None, description="slat")
    batten: Size | None = Field(default=None, description="batten under the slats of a lid")
    rail: Size | None = Field(default=None, description="side rail")
    bearer: Size | None = Field(default=None, description="end and middle bearer")
    post: Size | None = Field(default=None, description="post under a rail")
    ledger: Size | None = Field(default=None, description="ledger that carries the panel at night")
    cleat: Size | None = Field(default=None, description="cleat on a wall")
    strip: Size | None = Field(default=None, description="strip")
    stiffener: Size | None = Field(default=None, description="batten on edge under the panel")


class Stock(Table):
    """Timber, sheets and prices."""

    timber: Timber = Field(default="C24", description="strength class of EN 338")
    sheet: SheetMaterial = Field(default="birch_plywood", description="sheet material")
    panel_thickness: Annotated[float, mm(3, 45)] = Field(default=18.0, description="nominal, mm")
    panel_measured: Annotated[float, mm(3, 45)] | None = Field(default=None, description="as measured, mm")
    sections: Sections = Field(default_factory=Sections, description="timber sections by role")
    prices: Mapping[Label, Annotated[float, Quantity(PRICE, 0, 1_000_000)]] = Field(
        default_factory=dict, description="price by name of the stock"
    )

    @model_validator(mode="after")
    def _sold(self) -> Stock:
        try:
            row = sheet(self.sheet, self.panel_thickness)
        except CatalogueError as error:
            refuse("stock", [(("panel_thickness",), str(error))])
            raise
        measured = self.panel_measured
        if measured is not None and not row.min - _SLIP <= measured <= row.max + _SLIP:
            says = (
                f"read {figure(measured)}; {self.sheet} sold as {figure(row.nominal)} "
                f"measures {figure(row.min)} to {figure(row.max)}: measure again or name the nominal thickness sold"
            )
            refuse("stock", [(("panel_measured",), says)])
        return self

    @property
    def panel(self) -> float:
        """Thickness to build with, mm: as measured, else the mean of the catalogue."""
        if self.panel_measured is not None:
            return self.panel_measured
        return sheet(self.sheet, self.panel_thickness).mean
