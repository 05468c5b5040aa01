"""Values of the brief that a way out may move, and how they are told."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Final

from parametric.brief.model import Brief
from parametric.sizing.clash import Balance, Lever, Rule, State, Way

FAR: Final = 1500.0
LEAST_MATTRESS: Final = 50.0


def rule(
    about: str,
    balance: Callable[[State], Balance | None],
    levers: Callable[[State], Iterator[Lever]],
    postures: Callable[[State, float], Iterator[Way]] = lambda state, short: iter(()),
) -> Rule:
    """A rule from functions that yield."""
    return Rule(
        about=about,
        balance=balance,
        levers=lambda state: tuple(levers(state)),
        postures=lambda state, short: tuple(postures(state, short)),
    )


def one(key: str) -> Any:
    """Changes that set one key."""
    return lambda value: {key: value}


def plain(what: str) -> Any:
    """A value told by what it is."""
    return lambda value, _: f"{what} {value:.0f}"


def platform_key(brief: Brief) -> str:
    """The wish that sets the seat: the platform's height if that was asked for."""
    return "bed.platform_height" if brief.bed.platform_height is not None else "sitting.seat_height"


def seat_lever(state: State, limit: float) -> Lever:
    """Move the seat, by whichever wish sets it; a wish for storage gives way where the platform comes down."""
    heights, wish = state.dims.heights, state.brief.bed.storage_height
    frame, key = heights.platform - heights.storage, platform_key(state.brief)
    by_platform = key == "bed.platform_height"
    start = heights.platform if by_platform else heights.seat

    def storage(value: float) -> float:
        return heights.platform + value - start - frame

    def changes(value: float) -> Mapping[str, Any]:
        if wish is None or storage(value) >= min(wish, heights.storage):
            return {key: value}
        return {key: value, "bed.storage_height": storage(value)}

    def says(value: float, after: State) -> str:
        what = f"platform_height {value:.0f}, " if by_platform else ""
        given_up = f", storage {storage(value):.0f}" if len(changes(value)) > 1 else ""
        return f"{what}seat {after.dims.heights.seat:.0f}{given_up}"

    return Lever(start=start, limit=start + limit - heights.seat, changes=changes, says=says)


def mattress(state: State, limit: float) -> Lever:
    """A thicker or thinner mattress; where the platform is a wish, the seat moves with it."""
    return Lever(
        start=state.brief.bed.mattress.thickness,
        limit=limit,
        changes=one("bed.mattress.thickness"),
        says=lambda value, after: f"a mattress of {value:.0f}, seat {after.dims.heights.seat:.0f}",
    )


def desk_lever(state: State, limit: float) -> Lever:
    """A wish for another desk height."""
    return Lever(
        start=state.dims.heights.desk, limit=limit, changes=one("sitting.desk_height"), says=plain("desk_height")
    )


def day_length(state: State) -> Lever:
    """More floor by day."""
    van = state.brief.van
    return Lever(
        start=van.length_day,
        limit=van.length_day + FAR,
        changes=one("van.length_day"),
        says=lambda value, _: f"{value - van.length_day:.0f} more floor length by day",
    )
