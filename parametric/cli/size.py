"""`parametric size`: heights and lengths, and which wishes clash."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from parametric.cli import output
from parametric.core.check import Verdict, worst

if TYPE_CHECKING:
    from parametric.pipeline.size import Sized


def run(
    brief: Annotated[Path, typer.Argument(help="The brief, a TOML file.")],
    json: Annotated[bool, typer.Option("--json", help="Print one JSON document.")] = False,
) -> None:
    """Work out heights and lengths, and say which wishes clash; instant, no CAD."""
    from parametric.brief.loader import load
    from parametric.pipeline.numbers import sized_document
    from parametric.pipeline.size import size

    sized = size(load(brief))
    if json:
        output.echo_json(sized_document(sized))
    else:
        _print(sized)
    if worst(sized.checks) is Verdict.FAIL or sized.clashes:
        raise typer.Exit(1)


def _print(sized: Sized) -> None:
    from parametric.pipeline.words import advice, headline, heights

    typer.echo(f"{sized.brief.name}: {headline(sized.checks)}")
    output.print_heights(heights(sized))
    output.print_lines(advice(sized))
    output.print_clashes(sized.clashes)
    output.print_told(sized.checks)
