"""From dimensions to the whole mechanism: frame, lids, extension, desk support, mattress, change-overs."""

from __future__ import annotations

from parametric.brief.model import Brief
from parametric.mechanism import change_overs, lids, mattress, platform
from parametric.mechanism.draft import Draft
from parametric.mechanism.kinds import cleat_legs, panel
from parametric.mechanism.materials import materials
from parametric.mechanism.model import Mechanism
from parametric.mechanism.modes import modes_of
from parametric.sizing.dimensions import Dimensions


def build(brief: Brief, dims: Dimensions) -> Mechanism:
    """The furniture of a brief as data.

    Raises:
        RefusedError: A post finds no floor, or the leg stages no place to ride.
    """
    stuff = materials(brief)
    draft = Draft(modes_of(brief.van, dims))
    frame = platform.build(draft, dims, stuff, brief.van)
    both = lids.build(draft, dims, stuff, frame)
    panel.build(draft, dims, stuff, both)
    cleat_legs.build(draft, dims, stuff, frame, brief.van)
    foam = brief.bed.mattress
    mattress.build(draft, dims, stuff, both, (foam.sink_seated, foam.sink_lying))
    change_overs.build(draft, dims)
    return draft.freeze()
