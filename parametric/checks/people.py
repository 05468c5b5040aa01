"""Who is where in a mode: the bodies as shapes, at the desk, on the seat or lying."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.brief.model import Brief
from parametric.core.shape import Shape
from parametric.mechanism.model import Mode, Use
from parametric.mechanism.modes import DESKS
from parametric.posture.figure import lying_figure, seated_figure
from parametric.posture.kinds.feet_down import solve
from parametric.posture.lying import lie
from parametric.posture.workplace import Workplace
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.solve import People


def bodies_in(who: People, brief: Brief, dims: Dimensions, mode: Mode) -> Mapping[str, Shape]:
    """Body segments in the van frame by name, for the people a mode has in it."""
    if mode.use is Use.SITTING:
        return _seated(who, dims, mode)
    if mode.use is Use.LYING:
        return _lying(who, brief, dims)
    return {}


def pressed_in(who: People, dims: Dimensions, mode: Mode) -> float:
    """How far the front of the thighs is pushed into the foam because the seat is over the hollow of the knee, mm."""
    over = dims.heights.seat - who.at_desk.mean["popliteal_height"] - who.shoes
    return max(0.0, over) if mode.use is Use.SITTING else 0.0


def workplace(who: People, dims: Dimensions, mode: Mode) -> Workplace:
    """The seat, and the desk where there is one, as the body meets them."""
    return Workplace(
        seat=dims.heights.seat,
        back=dims.lengths.back,
        place=dims.widths.place,
        desk=dims.desk_at(mode.id) if mode.id in DESKS else None,
        shoes=who.shoes,
    )


def _seated(who: People, dims: Dimensions, mode: Mode) -> Mapping[str, Shape]:
    place = workplace(who, dims, mode)
    return seated_figure(who.at_desk, solve(who.at_desk, place), place)


def _lying(who: People, brief: Brief, dims: Dimensions) -> Mapping[str, Shape]:
    """Sleepers side by side, each in the middle of an equal share of the bed."""
    share = brief.bed.width / len(who.bodies)
    surface = dims.heights.platform + dims.heights.mattress - brief.bed.mattress.sink_lying
    out: dict[str, Shape] = {}
    for k, body in enumerate(who.bodies):
        bed = (dims.lengths.rear, dims.lengths.rear + dims.lengths.bed)
        lying = lie(body, head=brief.bed.head, bed=bed, y=dims.widths.right + share * (k + 0.5), z=surface)
        prefix = "" if len(who.bodies) == 1 else f"sleeper {k + 1} "
        out |= {f"{prefix}{name}": shape for name, shape in lying_figure(body, lying).items()}
    return out
