"""`parametric build`: check the design and write its files."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from parametric.cli import output
from parametric.core.check import Verdict, worst
from parametric.core.errors import RefusedError
from parametric.pipeline.kinds import KINDS, USUAL

if TYPE_CHECKING:
    from parametric.pipeline.check import Checked


def run(
    brief: Annotated[Path, typer.Argument(help="The brief, a TOML file.")],
    output_dir: Annotated[
        Path | None, typer.Option("--output", "-o", help="Folder to write; outputs/NAME if left out.")
    ] = None,
    only: Annotated[str | None, typer.Option(help=f"Only these files, of {','.join(KINDS)}.")] = None,
    author: Annotated[str, typer.Option(help="Name for the header of the STEP files.")] = "",
    date: Annotated[str | None, typer.Option(help="Date for the header of the STEP files, such as 2026-11-25.")] = None,
    quiet: Annotated[bool, typer.Option("--quiet", help="No progress; one line.")] = False,
) -> None:
    """Check the design, then write STEP, STL and documents into one folder."""
    from parametric.brief.loader import load

    kinds, stamp = _kinds(only), _stamp(date)
    read = load(brief)
    target = output_dir if output_dir is not None else Path("outputs") / read.name
    from parametric.exports.step import NO_STAMP, Heading
    from parametric.pipeline.model import build

    heading = Heading(name=read.name, author=author, stamp=stamp or NO_STAMP)
    with output.working(quiet) as progress:
        checked = build(read, target, kinds=kinds, heading=heading, progress=progress)
    _print(checked, quiet)
    files = sorted((p.is_dir(), p.name) for p in target.iterdir())
    typer.echo(f"Wrote {target}: {', '.join(name + '/' * folder for folder, name in files)}")
    if worst(checked.checks) is Verdict.FAIL:
        raise typer.Exit(1)


def _print(checked: Checked, quiet: bool) -> None:
    from parametric.pipeline.words import CAUTIONS, headline, heights

    typer.echo(f"{checked.sized.brief.name}: {headline(checked.checks)}")
    if quiet:
        return
    output.print_heights(heights(checked.sized))
    output.print_clashes(checked.sized.clashes)
    output.print_told(checked.checks)
    output.print_cautions(CAUTIONS)


def _stamp(date: str | None) -> str | None:
    if date is None:
        return None
    try:
        return datetime.fromisoformat(date).isoformat(timespec="seconds")
    except ValueError:
        raise RefusedError(f"--date {date}: write a date such as 2026-11-25") from None


def _kinds(only: str | None) -> tuple[str, ...]:
    if only is None:
        return USUAL
    wanted = tuple(k.strip() for k in only.split(",") if k.strip())
    wrong = [k for k in wanted if k not in KINDS]
    if wrong or not wanted:
        raise RefusedError(f"--only {only}: there are {', '.join(KINDS)}")
    return tuple(k for k in KINDS if k in wanted)
