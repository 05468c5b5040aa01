"""Which wishes cannot hold together, by how many millimetres, and the least change that frees each.

A rule compares what some demands need together with what there is. A way out changes one value of the brief; the
least change is looked for in whole millimetres by solving the changed brief, so that every way shown has been tried.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from parametric.brief.change import changed
from parametric.brief.model import Brief
from parametric.core.errors import RefusedError
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.solve import People, solve

SLIGHT = 1e-6  # mm: as little as a check forgives, so that a way out also passes its check


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One change that frees a clash.

    Attributes:
        says: The change in words.
        changes: New values by key of the brief; empty where it is a way of sitting, not of building.
        opens: Other clashes the change would open, with their millimetres.
    """

    says: str
    changes: Mapping[str, Any]
    opens: tuple[str, ...] = ()

    @property
    def told(self) -> str:
        """The change in words with what it opens."""
        return f"{self.says} (but then {' and '.join(self.opens)})" if self.opens else self.says


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Demands that cannot all hold.

    Attributes:
        about: What they compete for, such as ``head room``.
        demands: The smallest set that clashes, with their figures.
        need: What they need together, mm.
        have: What there is, mm.
        ways: One change each that frees it, tried.
    """

    about: str
    demands: tuple[str, ...]
    need: float
    have: float
    ways: tuple[Way, ...]

    @property
    def short(self) -> float:
        """By how much they miss, mm."""
        return self.need - self.have

    @property
    def says(self) -> str:
        """The whole of it in words."""
        first, last = self.demands[:-1], self.demands[-1]
        what = f"{', '.join(first)} and {last}" if first else last
        need = "need" if first else "needs"
        short = f"{self.short:.0f}" if self.short >= 1.0 else "under 1"
        ways = f" Any one of: {'; '.join(w.told for w in self.ways)}." if self.ways else " No single change frees it."
        return f"{self.about}: {what} {need} {self.need:.0f}; there are {self.have:.0f}: {short} short.{ways}"


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """A brief and what came of it."""

    brief: Brief
    who: People
    dims: Dimensions


@dataclass(frozen=True, slots=True, kw_only=True)
class Balance:
    """What some demands need together against what there is.

    Attributes:
        demands: The demands in words.
        need: mm.
        have: mm.
    """

    demands: tuple[str, ...]
    need: float
    have: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Lever:
    """A value of the brief that may be moved to free a clash.

    Attributes:
        start: The value now.
        limit: As far as it may go.
        changes: The changes of the brief that a value means.
        says: The change in words, from the value and what comes of it.
    """

    start: float
    limit: float
    changes: Callable[[float], Mapping[str, Any]]
    says: Callable[[float, State], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One thing demands may compete for.

    Attributes:
        about: Its name.
        balance: Need and have of a design; None where the rule does not apply.
        levers: What may be moved.
        postures: Ways of sitting that free it.
    """

    about: str
    balance: Callable[[State], Balance | None]
    levers: Callable[[State], Sequence[Lever]]
    postures: Callable[[State, float], Sequence[Way]] = lambda state, short: ()


def clash_of(rule: Rule, state: State) -> Clash | None:
    """The clash a rule finds in a design, with the ways out that were tried; None if there is none."""
    found = rule.balance(state)
    if found is None or found.need - found.have <= SLIGHT:
        return None
    ways = [way for lever in rule.levers(state) if (way := least_change(rule, state, lever)) is not None]
    ways += rule.postures(state, found.need - found.have)
    return Clash(about=rule.about, demands=found.demands, need=found.need, have=found.have, ways=tuple(ways))


def least_change(rule: Rule, state: State, lever: Lever) -> Way | None:
    """The least move of a lever, in whole millimetres, after which the rule holds; None if even its limit does not do.

    The further a lever goes the better it must be for the rule: then halving finds the least move.
    """
    sense = 1.0 if lever.limit > lever.start else -1.0
    steps = int(abs(lever.limit - lever.start))

    def tried(step: int) -> State | None:
        return solved(state, lever.changes(_value(lever, sense, step)))

    # past some step the brief may be no brief any more, or nothing can be built of it
    legal = steps if steps < 1 or tried(steps) is not None else _first(steps, lambda k: tried(k) is None) - 1
    if legal < 1 or not _holds(rule, tried(legal)):
        return None
    least = _first(legal, lambda k: _holds(rule, tried(k)))
    value, after = _value(lever, sense, least), tried(least)
    return None if after is None else Way(says=lever.says(value, after), changes=lever.changes(value))


def _first(last: int, true: Callable[[int], bool]) -> int:
    """The first step from 1 on at which something turns true that is true at `last`."""
    low, high = 0, last
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if true(middle) else (middle, high)
    return high


def _value(lever: Lever, sense: float, step: int) -> float:
    """A whole millimetre where the start is not one, so that what is printed is what was tried."""
    start = lever.start if step == 0 else float(int(lever.start) if sense > 0 else -int(-lever.start))
    return start + sense * step


def _holds(rule: Rule, state: State | None) -> bool:
    if state is None:
        return False
    found = rule.balance(state)
    return found is None or found.need - found.have <= SLIGHT


def shortfall(rule: Rule, state: State) -> float:
    """By how much a rule is broken in a design, mm; 0 where it holds or does not apply."""
    found = rule.balance(state)
    return 0.0 if found is None else max(0.0, found.need - found.have)


def solved(state: State, changes: Mapping[str, Any]) -> State | None:
    """The design of a changed brief; None if that is no brief, or nothing can be built of it."""
    brief = changed(state.brief, changes)
    if brief is None:
        return None
    try:
        return State(brief=brief, who=state.who, dims=solve(brief, state.who))
    except RefusedError:
        return None
