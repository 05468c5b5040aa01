"""`parametric check`: all checks in all modes, or one mode's."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from parametric.cli import output
from parametric.core.check import Verdict, worst
from parametric.core.errors import RefusedError

if TYPE_CHECKING:
    from parametric.core.check import Check
    from parametric.pipeline.check import Checked


def run(
    brief: Annotated[Path, typer.Argument(help="The brief, a TOML file.")],
    mode: Annotated[str | None, typer.Option(help="Only this mode, such as desk or desk/low.")] = None,
    json: Annotated[bool, typer.Option("--json", help="Print one JSON document.")] = False,
    quiet: Annotated[bool, typer.Option("--quiet", help="No progress, no figures; only what fails.")] = False,
) -> None:
    """Run every check in every mode."""
    from parametric.brief.loader import load
    from parametric.exports.documents import checks_document
    from parametric.pipeline.check import check, of_mode

    with output.working(quiet or json) as progress:
        checked = check(load(brief), progress)
    checks = checked.checks if mode is None else of_mode(checked.checks, _known(checked, mode))
    if json:
        output.echo_json(checks_document(checked.sized.brief.name, checks))
    else:
        _print(checked, mode, checks, quiet)
    if worst(checks) is Verdict.FAIL:
        raise typer.Exit(1)


def _print(checked: Checked, mode: str | None, checks: tuple[Check, ...], quiet: bool) -> None:
    from parametric.checks.posture import in_words
    from parametric.pipeline.words import CAUTIONS, advice, headline, heights

    only = f", only {mode}" if mode else ""
    typer.echo(f"{checked.sized.brief.name}{only}: {headline(checks)}")
    if not quiet:
        output.print_heights(heights(checked.sized))
        output.print_lines([*advice(checked.sized), *in_words(checked.work)])
        typer.echo("")
        output.print_checks(checks)
    output.print_clashes(checked.sized.clashes)
    output.print_told([c for c in checks if c.verdict is Verdict.FAIL or not quiet])
    if not quiet:
        output.print_sources(checks)
        output.print_cautions(CAUTIONS)


def _known(checked: Checked, mode: str) -> str:
    modes = list(checked.assembly.mechanism.modes)
    known = list(dict.fromkeys([*modes, *(m.split("/")[0] for m in modes)]))
    if mode not in known:
        raise RefusedError(f"--mode {mode}: there is no such mode; there are {', '.join(known)}")
    return mode
