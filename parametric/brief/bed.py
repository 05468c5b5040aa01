"""The bed that is wanted: size, place and mattress."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from parametric.brief.fields import Clash, Table, refuse
from parametric.brief.quantities import DENSITY, Quantity, mm
from parametric.brief.words import figure


class Mattress(Table):
    """Foam on the platform."""

    thickness: Annotated[float, mm(20, 300)] = Field(default=100.0, description="unloaded, mm")
    sink_seated: Annotated[float, mm(0, 150)] = Field(default=30.0, description="under a sitting person, mm")
    sink_lying: Annotated[float, mm(0, 150)] = Field(default=25.0, description="under a lying person, mm")
    density: Annotated[float, Quantity(DENSITY, 10, 150)] = Field(default=35.0, description="of the foam, kg/m3")
    air_mat: Annotated[float, mm(0, 50)] = Field(default=0.0, description="thickness of a mat under the foam, mm")

    @model_validator(mode="after")
    def _sinks(self) -> Mattress:
        clashes: list[Clash] = [
            ((key,), f"{figure(sink)} is not less than the mattress thickness, {figure(self.thickness)}")
            for key, sink in (("sink_seated", self.sink_seated), ("sink_lying", self.sink_lying))
            if sink >= self.thickness
        ]
        refuse("mattress", clashes)
        return self


class Bed(Table):
    """Sizes left out are worked out; sizes given are kept and judged."""

    width: Annotated[float, mm(500, 2200)] = Field(description="width of the platform, mm")
    side: Literal["right", "left", "both"] = Field(default="right", description="wall it stands against")
    direction: Literal["along", "across"] = Field(default="along", description="how a person lies in the van")
    head: Literal["front", "rear"] = Field(default="rear", description="end where the head lies")
    length_allowance: Annotated[float, mm(0, 500)] = Field(default=150.0, description="added to stature, mm")
    length: Annotated[float, mm(1200, 2600)] | None = Field(default=None, description="wish: sleeping length, mm")
    platform_height: Annotated[float, mm(100, 1800)] | None = Field(default=None, description="wish: slat top, mm")
    platform_length: Annotated[float, mm(400, 2600)] | None = Field(default=None, description="wish: slat ends, mm")
    storage_height: Annotated[float, mm(0, 1700)] | None = Field(
        default=None, description="wish: least clear height under the slats, mm"
    )
    mattress: Mattress = Field(default_factory=Mattress, description="foam on the platform")
