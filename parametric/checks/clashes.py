"""Clashes as checks, so that a design with a clash never passes as one in which all checks hold."""

from __future__ import annotations

from collections.abc import Iterable

from parametric.core.check import Check, Verdict, variant_of
from parametric.sizing.clash import Clash

FAMILY = "clash"
MODES = {
    "sleeping length": "night",
    "bed too short": "night",
    "way out of bed": "night",
    "way in to the seat": "desk/parked",
    "storage height": "access/front",
    "lids under the ceiling": "access/front",
    "frame over what stays": None,
    "door": None,
}  # what is not named here is about sitting at the desk


def clash_checks(clashes: Iterable[Clash]) -> list[Check]:
    """A fail for every clash."""
    return [
        Check(
            id=f"{FAMILY}.{clash.about.replace(' ', '_')}",
            says=clash.says.split(" Any one of:")[0].split(" No single")[0],
            verdict=Verdict.FAIL,
            source="worked out from the other limits of this list",
            mode=MODES.get(clash.about, "desk"),
            variant=variant_of(MODES.get(clash.about, "desk")),
            proposal="; or ".join(w.told for w in clash.ways) or None,
            value=clash.need,
            unit="mm",
            max=clash.have,
            margin=-clash.short,
        )
        for clash in clashes
    ]
