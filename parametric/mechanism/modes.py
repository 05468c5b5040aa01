"""The modes of a platform that is bed, seat and desk, and the state of the van in each."""

from __future__ import annotations

from parametric.brief.van import Van
from parametric.mechanism.draft import ModeSpec
from parametric.mechanism.model import Use, VanState
from parametric.sizing.dimensions import Dimensions

DESKS = ("desk", "desk/low", "desk/high", "desk/parked")
NIGHTS = ("night", "access/rear")
PANEL_STOWED = ("lounge", "drive", "access/front")


def modes_of(van: Van, dims: Dimensions) -> tuple[ModeSpec, ...]:
    """All modes, the one that shows the bed made up first.

    Args:
        van: The vehicle: floor length by day and night, and whether its roof lifts.
        dims: Dimensions: the desk height of each step.
    """
    lifts = van.roof is not None and van.roof.lifts
    up = VanState(roof_up=True, length=van.length_day)
    down = VanState(roof_up=not lifts, length=van.length_day)
    drive = VanState(roof_up=not lifts, length=van.length_day, driving=True)

    def desk(id: str, use: Use) -> ModeSpec:
        return ModeSpec(id=id, van=up, use=use, settings={"desk_height": dims.desk_at(id)})

    return (
        ModeSpec(id="night", van=VanState(roof_up=not lifts, length=van.length_night), use=Use.LYING),
        ModeSpec(id="lounge", van=up, use=Use.SITTING),
        desk("desk", Use.SITTING),
        desk("desk/low", Use.SITTING),
        desk("desk/high", Use.SITTING),
        desk("desk/parked", Use.NOBODY),
        ModeSpec(id="drive", van=drive, use=Use.NOBODY),
        ModeSpec(id="access/front", van=down, use=Use.NOBODY),
        ModeSpec(id="access/rear", van=VanState(roof_up=not lifts, length=van.length_night), use=Use.NOBODY),
    )
