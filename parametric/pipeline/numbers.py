"""What `size` has to say, as a plain document."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from parametric.core.check import worst
from parametric.pipeline.size import Sized
from parametric.pipeline.words import CAUTIONS, holes

SCHEMA = "parametric.design/1"


def sized_document(sized: Sized) -> dict[str, Any]:
    """What `size` has to say.

    Args:
        sized: The numbers of a brief.
    """
    return {
        "schema": SCHEMA,
        "name": sized.brief.name,
        "verdict": str(worst(sized.checks)),
        "dimensions": dimensions_document(sized),
        "clashes": [
            {
                "about": c.about,
                "demands": list(c.demands),
                "need": c.need,
                "have": c.have,
                "short": c.short,
                "ways": [{"says": w.says, "changes": dict(w.changes), "opens": list(w.opens)} for w in c.ways],
                "says": c.says,
            }
            for c in sized.clashes
        ],
        "worth_measuring": [asdict(w) for w in sized.worth],
        "bodies": [_body(sized, i) for i in range(len(sized.people.bodies))],
        "cautions": list(CAUTIONS),
    }


def dimensions_document(sized: Sized) -> dict[str, Any]:
    """Heights, lengths, widths, legs and sections, mm."""
    dims = sized.dimensions
    return {
        "heights": {**asdict(dims.heights), "desk_under": dims.heights.desk_under},
        "lengths": {**asdict(dims.lengths), "front": dims.lengths.front, "extension": dims.lengths.extension},
        "widths": asdict(dims.widths),
        "legs": asdict(dims.legs),
        "sections": asdict(dims.sections),
        "steps": [
            {"hole": k, "desk": step, "elbow_from": low, "elbow_to": high} for k, step, low, high in holes(sized)
        ],
        "pitch": dims.pitch,
    }


def _body(sized: Sized, index: int) -> dict[str, Any]:
    body, sleeper = sized.people.bodies[index], sized.brief.sleeper[index]
    return {
        "sex": body.sex,
        "label": sleeper.label,
        "at_desk": index == sized.people.worker,
        "known": sorted(body.known),
        "mean": dict(body.mean),
        "sd": dict(body.sd),
        "notes": list(body.notes),
        "cautions": list(body.cautions),
    }
