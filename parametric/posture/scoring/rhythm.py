"""How long to sit before getting up, and how often in a day."""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Final, Literal

STIR_EVERY: Final = 30.0
STIR: Final = 1.0
STIR_SOURCE: Final = "Univ. of Iowa: 1-2 min every 30 min"

Kind = Literal["feet_down", "footwell", "crossed", "stretched"]
_ON_THE_PLATFORM: Final = ("crossed", "stretched")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One limit on a spell of sitting.

    Attributes:
        case: What it applies to.
        spell: Longest time to sit, min; 0 if the posture is none to work in.
        pause: Break after it, min.
        source: Where it comes from.
    """

    case: str
    spell: float
    pause: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rhythm:
    """A working day in spells and breaks.

    Attributes:
        spell: Longest time to sit, min; 0 if the posture is none to work in.
        pause: Break after each spell but the last, min.
        breaks: How many breaks the hours at the desk take.
        day: Hours at the desk and breaks together, min.
        stir_every: Move for a minute or two after so long, min; None where the spell is no longer than that.
        source: Where the deciding rule comes from.
    """

    spell: float
    pause: float
    breaks: int
    day: float
    stir_every: float | None
    source: str


def rhythm(kind: Kind, *, grand: int, hours: float, back_rest: bool) -> Rhythm:
    """The strictest of the rules for the RULA grand score, the kind of seat and the back rest.

    A back rest counts on the platform only: at a desk with feet down RULA's trunk score has it already.

    Args:
        kind: How the person sits.
        grand: RULA grand score, 1 to 7.
        hours: At the desk on a working day, breaks not counted, h.
        back_rest: Something firm is behind the back.

    Raises:
        ValueError: The score is not 1 to 7 or the hours are negative.
    """
    if grand not in range(1, 8):
        raise ValueError(f"a RULA grand score is 1 to 7, not {grand}")
    if not hours >= 0.0:
        raise ValueError(f"hours at the desk are 0 or more, not {hours:g}")
    cases = [("grand_1_2", "grand_3_4", "grand_5_6", "grand_7")[(grand - 1) // 2]]
    if kind == "crossed":
        cases.append("crossed")
    if kind in _ON_THE_PLATFORM and not back_rest:
        cases.append("no_back_rest")
    rule = min((rules()[case] for case in cases), key=lambda r: r.spell)
    breaks = max(math.ceil(hours * 60.0 / rule.spell - 1e-9) - 1, 0) if rule.spell else 0
    return Rhythm(
        spell=rule.spell,
        pause=rule.pause,
        breaks=breaks,
        day=hours * 60.0 + breaks * rule.pause,
        stir_every=STIR_EVERY if rule.spell > STIR_EVERY else None,
        source=rule.source,
    )


@cache
def rules() -> dict[str, Rule]:
    """Every rule by its case."""
    text = files("parametric.posture.scoring").joinpath("rhythm.csv").read_text(encoding="utf-8")
    return {
        row["case"]: Rule(case=row["case"], spell=float(row["spell"]), pause=float(row["pause"]), source=row["source"])
        for row in csv.DictReader(text.splitlines())
    }
