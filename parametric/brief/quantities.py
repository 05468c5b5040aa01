"""Figures with a unit and bounds, as a brief and the command line may write them."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from parametric.brief.words import figure, shown


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Kind:
    """What a figure measures.

    Attributes:
        noun: ``a length``, for messages.
        unit: Unit of a plain number and of the value read.
        write: Examples of what may be written.
        everyday: Factor to `unit` of each unit that is read without pint.
        guesses: Units a plain number out of bounds was perhaps meant in.
    """

    noun: str
    unit: str
    write: str
    everyday: dict[str, float]
    guesses: tuple[str, ...] = ()


_INCHES = ('"', "''", "\u2033", "\u201d", "in")  # typed, double prime, curly
_FEET = ("'", "\u2032", "\u2019", "ft")
LENGTH = Kind(
    noun="a length",
    unit="mm",
    write='write 1980, "1.98 m" or "6 ft 6 in"',
    everyday={"mm": 1.0, "cm": 10.0, "m": 1000.0} | dict.fromkeys(_INCHES, 25.4) | dict.fromkeys(_FEET, 304.8),
    guesses=("m", "cm", "in"),
)
MASS = Kind(
    noun="a mass",
    unit="kg",
    write='write 82, "82 kg" or "180 lb"',
    everyday={"kg": 1.0, "g": 0.001, "lb": 0.45359237, "lbs": 0.45359237},
    guesses=("lb",),
)
FORCE = Kind(noun="a force", unit="N", write='write 500 or "500 N"', everyday={"N": 1.0, "kN": 1000.0})
HOURS = Kind(noun="hours", unit="h", write='write 6 or "6 h"', everyday={"h": 1.0, "min": 1 / 60})
DENSITY = Kind(noun="a density", unit="kg/m3", write="write a plain number such as 35", everyday={})
PRICE = Kind(noun="a price", unit="each", write="write a plain number such as 12.50", everyday={})

_NUMBER = r"\d+\s+\d+/\d+|\d+/\d+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_UNIT = r"[A-Za-z]+|''|['\"\u2032\u2033\u2019\u201d]"
_TERM = re.compile(rf"\s*({_NUMBER})\s*({_UNIT})?\s*")
_LONGEST = 60  # characters; no honest figure is longer


@dataclass(frozen=True, slots=True)
class Quantity:
    """Reads one figure: a number in the unit of its kind, or text with units; both bounds belong to it."""

    kind: Kind
    low: float
    high: float

    def read(self, value: object) -> float:
        """The figure in the unit of its kind.

        Raises:
            ValueError: It is no such figure or out of bounds; the message says what was read and what is allowed.
        """
        number, plain = _number(value, self.kind)
        if not math.isfinite(number):
            raise ValueError(f"read {shown(value)}; write {self.kind.noun} from {self.allowed}")
        if not self.low <= number <= self.high:
            same = "" if plain else f" = {figure(number)} {self.kind.unit}"
            raise ValueError(f"read {shown(value)}{same}; allowed are {self.allowed}{self._hint(number, plain)}")
        return number

    @property
    def allowed(self) -> str:
        """The bounds in words."""
        return f"{figure(self.low)} to {figure(self.high)} {self.kind.unit}"

    def _hint(self, number: float, plain: bool) -> str:
        if not plain:
            return ""
        for unit in self.kind.guesses:
            meant = number * self.kind.everyday[unit]
            if self.low <= meant <= self.high:
                return f'; plain numbers are {self.kind.unit}: write "{figure(number)} {unit}" or {figure(meant)}'
        return f"; plain numbers are {self.kind.unit}" if self.kind.guesses else ""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Let pydantic read the figure by `read`."""
        return core_schema.no_info_plain_validator_function(self.read)


def mm(low: float, high: float) -> Quantity:
    """A length between two bounds, mm."""
    return Quantity(LENGTH, low, high)


def kg(low: float, high: float) -> Quantity:
    """A mass between two bounds, kg."""
    return Quantity(MASS, low, high)


def newton(low: float, high: float) -> Quantity:
    """A force between two bounds, N."""
    return Quantity(FORCE, low, high)


def _number(value: object, kind: Kind) -> tuple[float, bool]:
    """The number in the unit of the kind, and whether it was written without a unit."""
    if isinstance(value, str):
        return _from_text(value, kind)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError(f"read {shown(value)}; {kind.write}")
    try:
        return float(value), True
    except OverflowError:
        return math.inf, True


def _from_text(text: str, kind: Kind) -> tuple[float, bool]:
    terms = _terms(text, kind)
    sign = -1.0 if text.lstrip().startswith("-") else 1.0
    if len(terms) == 1 and terms[0][1] == "":
        return sign * terms[0][0], True
    factors = [_factor(unit, kind) if unit else None for _, unit in terms]
    sizes = [f for f in factors if f is not None]
    if len(sizes) < len(factors) or any(a <= b for a, b in pairwise(sizes)):
        raise _unreadable(text, kind)
    # micrometres are far below any saw; this only tidies 1981.1999999999998
    return round(sign * sum(n * f for (n, _), f in zip(terms, sizes, strict=True)), 6), False


def _terms(text: str, kind: Kind) -> list[tuple[float, str]]:
    """Number and unit of each term; ``6'6`` is six feet six."""
    body = text.strip().removeprefix("-").removeprefix("+")
    terms: list[tuple[float, str]] = []
    at = 0
    while at < len(body) and len(text) <= _LONGEST:
        match = _TERM.match(body, at)
        if match is None:
            break
        unit = match[2] or ("in" if terms and terms[-1][1] in _FEET and match.end() == len(body) else "")
        terms.append((_plain(match[1], text, kind), unit))
        at = match.end()
    if not terms or at < len(body):
        raise _unreadable(text, kind)
    return terms


def _plain(number: str, text: str, kind: Kind) -> float:
    try:
        return float(sum(Fraction(part) for part in number.split())) if "/" in number else float(number)
    except (ZeroDivisionError, OverflowError):
        raise _unreadable(text, kind) from None


def _factor(unit: str, kind: Kind) -> float:
    if unit in kind.everyday:
        return kind.everyday[unit]
    factor = _pint_factor(unit, kind.unit) if kind.everyday else None
    if factor is None:
        raise ValueError(f"cannot read {shown(unit)} as the unit of {kind.noun}: {kind.write}")
    return factor


@cache
def _pint_factor(unit: str, to: str) -> float | None:
    import pint  # 0.4 s, so only for units that are not everyday ones

    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    for name in (unit, unit.lower()):
        try:
            return float(registry.Quantity(1.0, name).to(to).magnitude)
        except (pint.PintError, AttributeError, ValueError, TypeError):
            continue
    return None


def _unreadable(text: str, kind: Kind) -> ValueError:
    comma = "; decimals take a point, not a comma" if "," in text else ""
    return ValueError(f"cannot read {shown(text, quote=chr(39))} as {kind.noun}: {kind.write}{comma}")
