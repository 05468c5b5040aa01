"""Who sleeps and works in the van."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StrictStr

from parametric.brief.fields import Flag, Label, Table
from parametric.brief.quantities import kg, mm
from parametric.brief.words import clipped, near
from parametric.catalogue.dimensions import dimensions

Sex = Literal["male", "female", "unspecified"]
_OWN_KEYS = {"body_mass": "mass", "stature": "stature"}


def _dimension_name(name: str) -> str:
    if name in _OWN_KEYS:
        raise ValueError(f"belongs one table up, as {_OWN_KEYS[name]} of [[sleeper]]")
    known = [d for d in dimensions() if d not in _OWN_KEYS]
    if name not in known:
        hint = near(name, known) or "; `parametric body` lists the names"
        raise ValueError(f"is not a body dimension{hint}")
    return name


DimensionName = Annotated[StrictStr, AfterValidator(_dimension_name)]


class Sleeper(Table):
    """One person. Lengths barefoot; a measurement always wins over an estimate."""

    name: Label | None = Field(default=None, description="what to call the person in reports")
    sex: Sex = Field(description="which survey to estimate from")
    stature: Annotated[float, mm(1200, 2300)] = Field(description="standing height, barefoot, mm")
    mass: Annotated[float, kg(30, 250)] | None = Field(default=None, description="body mass, kg")
    shoes: Annotated[float, mm(0, 60)] = Field(default=10.0, description="sole and heel worn while working, mm")
    works: Flag = Field(default=True, description="uses the desk")
    measured: Mapping[DimensionName, Annotated[float, mm(10, 2800)]] = Field(
        default_factory=dict, description="measured dimensions by their ISO 7250-1 names, mm"
    )

    @property
    def label(self) -> str:
        """Name, or the stature where there is none."""
        return clipped(self.name) if self.name is not None else f"sleeper of {self.stature:g} mm"
