"""The whole brief."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field, ValidationInfo, field_validator

from parametric.brief.bed import Bed
from parametric.brief.choices import Arrangement, Rules, Shop, Sitting
from parametric.brief.coherence import in_bed, in_sitting, in_sleepers, in_van, with_seat
from parametric.brief.fields import Slug, Table, Text, count, refuse
from parametric.brief.sleeper import Sleeper
from parametric.brief.stock import Stock
from parametric.brief.van import Van


class Brief(Table):
    """What the user asks for: all lengths in mm, masses in kg, forces in N.

    A problem between two tables is looked for as soon as those two are sound, whatever else is wrong.
    """

    name: Slug = Field(description="name of the design and of its output folder")
    note: Text = Field(default="", description="free text, printed with the results")
    van: Van = Field(description="the inside of the vehicle")
    sleeper: Annotated[tuple[Sleeper, ...], count(1, 2)] = Field(description="who sleeps and works in it")
    sitting: Sitting = Field(default_factory=Sitting, description="seat, hours, devices")
    bed: Bed = Field(description="the bed wanted")
    arrangement: Arrangement = Field(default_factory=Arrangement, description="extension and desk support")
    stock: Stock = Field(default_factory=Stock, description="timber, sheets, prices")
    shop: Shop = Field(default_factory=Shop, description="how the parts are made")
    rules: Rules = Field(default_factory=Rules, description="limits moved by the user")

    @field_validator("van", mode="after")
    @classmethod
    def _van(cls, van: Van) -> Van:
        refuse("van", in_van(van))
        return van

    @field_validator("sleeper", mode="after")
    @classmethod
    def _sleepers(cls, sleepers: tuple[Sleeper, ...]) -> tuple[Sleeper, ...]:
        refuse("sleeper", in_sleepers(sleepers))
        return sleepers

    @field_validator("sitting", mode="after")
    @classmethod
    def _sitting(cls, sitting: Sitting, info: ValidationInfo) -> Sitting:
        refuse("sitting", in_sitting(sitting, info.data.get("van")))
        return sitting

    @field_validator("bed", mode="after")
    @classmethod
    def _bed(cls, bed: Bed, info: ValidationInfo) -> Bed:
        refuse("bed", [*in_bed(bed, info.data.get("van")), *with_seat(bed, info.data.get("sitting"))])
        return bed

    @property
    def workers(self) -> tuple[Sleeper, ...]:
        """Those who use the desk, at least one."""
        return tuple(s for s in self.sleeper if s.works)

    def to_dict(self) -> dict[str, Any]:
        """Every field resolved, in plain JSON types; lengths mm, masses kg, forces N. Reads back as the same brief."""
        return self.model_dump(mode="json")
