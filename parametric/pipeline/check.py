"""Use case `check`: every question in every mode, on meshes made straight from part data. No CAD kernel."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from parametric.assembly.placed import Assembly, assemble
from parametric.brief.model import Brief
from parametric.checks.access import opening_checks
from parametric.checks.fit import fit_checks
from parametric.checks.people import bodies_in, pressed_in
from parametric.checks.posture import Work, posture_checks, work_place
from parametric.checks.scene import Scene, pieces_of, scene
from parametric.checks.support import support_checks
from parametric.core.check import Check
from parametric.mechanism.build import build as build_mechanism
from parametric.mechanism.model import Mechanism
from parametric.pipeline.size import Sized, size

Progress = Callable[[str], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A design with everything judged.

    Attributes:
        sized: The numbers.
        assembly: Parts in place.
        scenes: Every mode as placed meshes.
        checks: All answers, numbers first.
        work: The posture at the desk.
    """

    sized: Sized
    assembly: Assembly
    scenes: tuple[Scene, ...]
    checks: tuple[Check, ...]
    work: Work


def check(brief: Brief, progress: Progress = lambda step: None) -> Checked:
    """Build the mechanism of a brief and judge it in every mode.

    Args:
        brief: As read.
        progress: Told what is being done.

    Raises:
        RefusedError: The kinds asked for are not built by this version, or cannot stand.
    """
    progress("sizes")
    sized = size(brief)
    return judge(sized, build_mechanism(brief, sized.dimensions), progress)


def judge(sized: Sized, mechanism: Mechanism, progress: Progress = lambda step: None) -> Checked:
    """Judge a mechanism against the numbers it was made for."""
    brief, dims = sized.brief, sized.dimensions
    progress("parts")
    assembly = assemble(mechanism)
    pieces, scenes = pieces_of(assembly), []
    for mode in mechanism.modes.values():
        progress(f"mode {mode.id}")
        bodies, pressed = bodies_in(sized.people, brief, dims, mode), pressed_in(sized.people, dims, mode)
        scenes.append(scene(assembly, pieces, brief.van, mode, bodies, pressed))
    progress("posture")
    work = work_place(brief, sized.people, dims)
    progress("fit")
    checks = (
        *sized.checks,
        *posture_checks(brief, work),
        *support_checks(brief, dims, assembly),
        *opening_checks(brief, assembly),
        *fit_checks(scenes, brief.rules.moving_clearance),
    )
    return Checked(sized=sized, assembly=assembly, scenes=tuple(scenes), checks=checks, work=work)


def of_mode(checks: tuple[Check, ...], mode: str) -> tuple[Check, ...]:
    """The checks of one mode with its variants, and those that concern the whole design."""
    return tuple(c for c in checks if c.mode is None or c.mode == mode or c.mode.startswith(f"{mode}/"))
