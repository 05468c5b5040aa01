"""What is done between modes, as wishes in order; paths for them are found elsewhere."""

from __future__ import annotations

from parametric.mechanism.draft import Draft
from parametric.mechanism.mattress import front_piece_on_floor
from parametric.mechanism.model import ChangeOver, Move
from parametric.sizing.dimensions import Dimensions


def build(draft: Draft, dims: Dimensions) -> None:
    """Add the change-overs of a platform with a loose panel."""
    to_desk, to_bed = _legs(dims, "lower_desk"), _legs(dims, "lower_night")
    where = "on the floor before the seat" if front_piece_on_floor(dims) else "on the others"
    away = Move(parts=("mattress_end",), says="Lay the end piece of the mattress on the rear piece.")
    lift = Move(parts=("panel",), says="Undo the latches, lift the panel off the ledger and turn its legs out.")
    engage = Move(
        parts=("panel",), says="Slide the panel's wall edge into the groove of the desk cleat and drop in the pin."
    )
    ride = Move(
        parts=("panel",), says="Turn the panel round and lay it on the rear lid, stiffener behind the rear bearer."
    )
    drop = Move(parts=("panel",), says="Drop the panel over the ledger's dowels and close the latches.")
    back = Move(parts=("mattress_end",), says="Lay the end piece of the mattress on the panel.")
    raise_rear = Move(parts=("mattress_rear", "mattress_end"), says="Lift the rear pieces of the mattress aside.")
    relay = Move(parts=("mattress_rear", "mattress_end"), says="Lay the rear pieces back on the panel.")
    relay_slats = Move(parts=("mattress_rear",), says="Lay the rear piece back on the slats.")
    park = Move(
        parts=("panel", *to_desk, "locking_pin"),
        says="Draw the pin, slide the panel forward and drop the pin in again.",
        joint="panel_slide",
        hands=2,
        person="standing",
    )
    work = Move(
        parts=("panel", *to_desk, "locking_pin"),
        says="Sit down, draw the panel to you and drop in the pin.",
        joint="panel_slide",
        person="seated",
    )
    set_up = (_unclip(to_bed), _plug(to_bed, "bed"), drop)
    for change in (
        ChangeOver(
            start="night", end="desk", moves=(away, lift, *_spare(dims, "night"), _plug(to_desk, "desk"), engage)
        ),
        ChangeOver(
            start="desk", end="night", moves=(_draw(dims), *_spare(dims, "desk"), _plug(to_bed, "bed"), drop, back)
        ),
        ChangeOver(start="night", end="lounge", moves=(away, lift, _clip(to_bed), raise_rear, ride, relay)),
        ChangeOver(
            start="lounge",
            end="night",
            moves=(raise_rear, *set_up, relay_slats, back),
        ),
        ChangeOver(start="desk", end="desk/parked", moves=(park,)),
        ChangeOver(start="desk/parked", end="desk", moves=(work,)),
        ChangeOver(start="lounge", end="drive", moves=(_strap(),)),
        ChangeOver(start="lounge", end="access/front", moves=_open("front_lid", "mattress_front", where)),
        ChangeOver(start="night", end="access/rear", moves=_open("rear_lid", "mattress_rear")),
    ):
        draft.change_over(change)


def _legs(dims: Dimensions, lower: str) -> tuple[str, ...]:
    lowers = ("lower",) if dims.legs.kind == "telescopic" else (lower,)
    return tuple(f"leg_{leg}_{part}" for leg in ("near", "far") for part in ("upper", *lowers))


def _plug(legs: tuple[str, ...], height: str) -> Move:
    return Move(parts=legs, says=f"Pin both legs at {height} height and screw them into the panel.")


def _unclip(legs: tuple[str, ...]) -> Move:
    return Move(parts=legs, says="Take the legs out of their clips.", hands=1)


def _draw(dims: Dimensions) -> Move:
    return Move(
        parts=("panel", *_legs(dims, "lower_desk"), "locking_pin"),
        says="Draw the pin, lift the aisle edge a little and pull the panel out of the groove.",
    )


def _spare(dims: Dimensions, height: str) -> tuple[Move, ...]:
    """Put away the lower stages that the other height does not use, where each height has its own."""
    if dims.legs.kind == "telescopic":
        return ()
    parts = tuple(f"leg_{leg}_lower_{height}" for leg in ("near", "far"))
    return (Move(parts=parts, says=f"Pull the {height} stages out of both legs and clip them under the platform."),)


def _clip(legs: tuple[str, ...]) -> Move:
    return Move(parts=legs, says="Clip the legs under the platform.")


def _strap() -> Move:
    return Move(
        parts=("strap_1", "strap_2", "strap_3"), says="Pull the straps over mattress and panel, hook and tighten."
    )


def _open(lid: str, piece: str, where: str = "on its neighbour") -> tuple[Move, ...]:
    side = lid.removesuffix("_lid")
    return (
        Move(parts=(piece,), says=f"Lay the {side} piece of the mattress {where}."),
        Move(
            parts=(f"{lid}_batten_middle",),
            says=f"Swing the {side} lid up and lean it on the mattress.",
            joint=f"{lid}_swing",
            hands=1,
        ),
    )
