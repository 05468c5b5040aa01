"""Use case `build`: check the design, then write solids, meshes and documents into one folder."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from parametric.assembly.placed import Assembly, Item
from parametric.brief.model import Brief
from parametric.exports import step, stl
from parametric.exports.documents import checks_document, to_bytes
from parametric.exports.folder import replacing, write
from parametric.exports.step import Heading
from parametric.pipeline.check import Checked, Progress, check
from parametric.pipeline.document import design_document
from parametric.pipeline.kinds import USUAL
from parametric.pipeline.summary import summary


def build(
    brief: Brief,
    target: Path,
    *,
    kinds: tuple[str, ...] = USUAL,
    heading: Heading,
    progress: Progress = lambda step: None,
) -> Checked:
    """Check a brief and write everything asked for; the folder appears whole or not at all.

    Args:
        brief: As read.
        target: Folder to replace.
        kinds: Which files to write beside the documents, of `parametric.pipeline.kinds.KINDS`.
        heading: Author and date for the STEP header.
        progress: Told what is being done.

    Raises:
        RefusedError: The kinds asked for are not built by this version, or cannot stand.
        OutputError: The folder cannot be written.
    """
    with replacing(target) as folder:
        checked = check(brief, progress)
        progress("documents")
        write(folder / "design.json", to_bytes(design_document(checked)))
        write(folder / "checks.json", to_bytes(checks_document(brief.name, checked.checks)))
        write(folder / "summary.txt", summary(checked).encode())
        if "step" in kinds:
            _each(checked.assembly, folder / "step", "step", _step_writer(heading), progress)
        if "stl" in kinds:
            _each(checked.assembly, folder / "stl", "stl", _stl_writer(brief.name), progress)
        if "context" in kinds:
            _context(checked, folder, heading, progress)
    return checked


Writer = Callable[[Assembly, str | Item, Path], None]


def part_file(item: Item) -> str:
    """Name of a part's files without the ending."""
    return f"{item.number}_{item.design.name}"


def _each(assembly: Assembly, folder: Path, ending: str, writer: Writer, progress: Progress) -> None:
    for id, mode in assembly.mechanism.modes.items():
        progress(f"{ending} {id}")
        writer(assembly, id, folder / f"{mode.file_name}.{ending}")
    progress(f"{ending} parts")
    for item in assembly.items.values():
        writer(assembly, item, folder / "parts" / f"{part_file(item)}.{ending}")


def _context(checked: Checked, folder: Path, heading: Heading, progress: Progress) -> None:
    """The van and the people of every mode, for whoever wants to see the furniture in its place."""
    for scene in checked.scenes:
        progress(f"context {scene.mode.id}")
        name = f"context-{scene.mode.file_name}"
        step.write_context(scene, folder / "step" / f"{name}.step", heading)
        if scene.bodies:
            stl.write_context(scene, folder / "stl" / f"{name}.stl", heading.name)


def _step_writer(heading: Heading) -> Writer:
    def writer(assembly: Assembly, what: str | Item, path: Path) -> None:
        if isinstance(what, str):
            step.write_mode(assembly, what, path, heading)
        else:
            step.write_part(what, path, heading)

    return writer


def _stl_writer(name: str) -> Writer:
    def writer(assembly: Assembly, what: str | Item, path: Path) -> None:
        if isinstance(what, str):
            stl.write_mode(assembly, what, path, name)
        else:
            stl.write_part(what, path, name)

    return writer
