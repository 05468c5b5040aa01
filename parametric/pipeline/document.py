"""The resolved design as a plain document: every number, the parts, and the brief they came from."""

from __future__ import annotations

import platform
from dataclasses import asdict
from importlib.metadata import PackageNotFoundError, version
from typing import Any

from parametric import __version__
from parametric.core.check import worst
from parametric.mechanism.part import Bar, Board, Bought, PartDesign, Soft, Tube
from parametric.pipeline.check import Checked
from parametric.pipeline.numbers import sized_document

_MADE_WITH = ("cadquery", "cadquery-ocp", "manifold3d", "numpy", "python-fcl")


def design_document(checked: Checked) -> dict[str, Any]:
    """The whole resolved design."""
    assembly, brief = checked.assembly, checked.sized.brief
    return {
        **sized_document(checked.sized),
        "verdict": str(worst(checked.checks)),
        "note": brief.note,
        "brief": brief.to_dict(),
        "posture": _posture(checked),
        "mass": assembly.mass,
        "parts": [
            {
                "number": item.number,
                "name": item.design.name,
                "quantity": len(item.instances),
                "instances": list(item.instances),
                "kind": type(item.design).__name__.lower(),
                "material": item.design.material,
                "stock": item.design.stock,
                "size": _size(item.design),
                "volume": item.design.volume,
                "mass": item.mass,
            }
            for item in assembly.items.values()
        ],
        "modes": {
            name: {
                "use": str(mode.use),
                "roof_up": mode.van.roof_up,
                "length": mode.van.length,
                "driving": mode.van.driving,
                "settings": dict(mode.settings),
            }
            for name, mode in assembly.mechanism.modes.items()
        },
        "change_overs": [
            {"from": c.start, "to": c.end, "steps": [m.says for m in c.moves]} for c in assembly.mechanism.change_overs
        ],
        "made_with": {"parametric": __version__, "python": platform.python_version(), **_versions()},
    }


def _posture(checked: Checked) -> dict[str, Any]:
    """The solved posture at the middle desk step: angles in degrees, joints as (x, z) in the van frame."""
    work = checked.work
    return {
        "exists": bool(work.solved.exists),
        "angles": asdict(work.solved.angles),
        "joints": asdict(work.solved.joints),
        "viewing_distance": work.solved.view,
        "riser": work.riser,
        "rula": int(work.rula.grand),
        "work_minutes": work.plan.spell,
        "break_minutes": work.plan.pause,
    }


def _size(design: PartDesign) -> list[float]:
    """Overall length, width and thickness of what is cut; empty for bought parts."""
    match design:
        case Board():
            xs = [design.outline.start[0], *(e.end[0] for e in design.outline.edges)]
            ys = [design.outline.start[1], *(e.end[1] for e in design.outline.edges)]
            return [max(xs) - min(xs), max(ys) - min(ys), design.thickness]
        case Bar() | Tube():
            return [design.length, design.width, design.height]
        case Soft():
            return [design.length, design.width, design.thickness]
        case Bought():
            return []


def _versions() -> dict[str, str]:
    out = {}
    for name in _MADE_WITH:
        try:
            out[name] = version(name)
        except PackageNotFoundError:
            continue
    return out
