"""The boundary of a solid as entities of ISO 10303-42, written by the CAD kernel and free of everything else."""

from __future__ import annotations

import io
import re
from functools import lru_cache

from parametric.core.shape import Shape
from parametric.solids.kernel import OCP
from parametric.solids.solid import solid

_ENTITY = re.compile(r"#(\d+) = (.*?);\n", re.DOTALL)
_REFERENCE = re.compile(r"#(\d+)")
_SOLID = re.compile(r"MANIFOLD_SOLID_BREP\('',#(\d+)\)")


@lru_cache(maxsize=1024)
def shell(shape: Shape) -> tuple[str, ...]:
    """Entities of the boundary of a recipe, mm, referring to each other from ``#1``, which is the closed shell.

    Raises:
        ValueError: The recipe does not give one solid, or the solid has a hollow inside.
    """
    bodies = {int(m[1]): re.sub(r"\n *", "", m[2]) for m in _ENTITY.finditer(_exchange_text(shape))}
    solids = [m for m in map(_SOLID.fullmatch, bodies.values()) if m]
    if len(solids) != 1:
        raise ValueError(f"a recipe gives a solid with a hollow inside, which no part here has: {shape}")
    order = _reached(bodies, int(solids[0][1]))
    number = {old: k for k, old in enumerate(order, 1)}
    return tuple(_REFERENCE.sub(lambda m: f"#{number[int(m[1])]}", bodies[old]) for old in order)


def _reached(bodies: dict[int, str], root: int) -> list[int]:
    """Entities a root needs, each after the first that needs it."""
    order: dict[int, None] = {}
    waiting = [root]
    while waiting:
        at = waiting.pop()
        if at not in order:
            order[at] = None
            waiting.extend(int(r) for r in reversed(_REFERENCE.findall(bodies[at])))
    return list(order)


def _exchange_text(shape: Shape) -> str:
    step = OCP.STEPControl
    writer = step.STEPControl_Writer()  # the settings below are only heard once a writer exists
    settings = OCP.Interface.Interface_Static
    settings.SetIVal_s("write.surfacecurve.mode", 0)
    settings.SetCVal_s("write.step.schema", "AP214IS")
    settings.SetCVal_s("write.step.unit", "MM")
    writer.Transfer(solid(shape).wrapped, step.STEPControl_StepModelType.STEPControl_AsIs)
    out = io.BytesIO()
    writer.WriteStream(out)
    return out.getvalue().decode("ascii")
