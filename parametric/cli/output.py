"""What commands share in talking to the terminal: JSON, tables, verdict colours, progress."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING, TextIO

import typer

from parametric.core.check import Check, Verdict, by_mode
from parametric.exports.documents import to_bytes

if TYPE_CHECKING:
    from rich.console import Console

    from parametric.sizing.clash import Clash

WIDTH = 80
STYLES: Mapping[Verdict, str] = {Verdict.PASS: "green", Verdict.CAUTION: "yellow", Verdict.FAIL: "bold red"}


def echo_json(document: Mapping[str, object]) -> None:
    """Print one document and nothing else, as a build writes it."""
    typer.echo(to_bytes(document).decode(), nl=False)


def console() -> Console:
    """A console on standard output, wide enough for any table where it is not a terminal.

    Its own answer to a closed pipe would be exit code 1, which here means that a check fails.
    """
    from rich.console import Console

    class Piped(Console):
        def on_broken_pipe(self) -> None:
            raise BrokenPipeError

    return Piped(highlight=False, width=None if _terminal(sys.stdout) else 2 * WIDTH)


@contextmanager
def working(quiet: bool) -> Iterator[Callable[[str], None]]:
    """Show on standard error what is being done, if that is a terminal and nobody asked for quiet."""
    if quiet or not _terminal(sys.stderr):
        yield lambda step: None
        return
    from rich.console import Console

    with Console(stderr=True).status("starting") as status:
        yield status.update


def _terminal(stream: TextIO | None) -> bool:
    """Whether somebody reads along; a stream that was closed before we started is None."""
    return stream is not None and stream.isatty()


def print_heights(rows: Sequence[tuple[str, str]]) -> None:
    """Print label and length, one a line."""
    wide = max(len(label) for label, _ in rows) + 2
    for label, value in rows:
        typer.echo(f"  {label:<{wide}}{value}")
    typer.echo("  all lengths in mm")


def print_lines(lines: Sequence[str]) -> None:
    """Print advice below the heights."""
    typer.echo("")
    for line in lines:
        typer.echo(_wrapped(line, "  "))


def print_clashes(clashes: Sequence[Clash]) -> None:
    """Print what cannot hold together, and the ways out."""
    for clash in clashes:
        typer.echo("")
        echo_wrapped(f"CLASH {clash.says}")


def print_cautions(cautions: Sequence[str]) -> None:
    """Print the cautions that go with every design."""
    typer.echo("")
    for caution in cautions:
        echo_wrapped(f"! {caution}")


def echo_wrapped(text: str) -> None:
    """Print a sentence, its further lines set in."""
    typer.echo(_wrapped(text))


def print_checks(checks: Sequence[Check]) -> None:
    """Print a table of checks with figures, worst first, then one line for each question without one."""
    from rich.table import Table

    table = Table(box=None, pad_edge=False, header_style="bold", collapse_padding=True)
    table.add_column("check", no_wrap=True)
    table.add_column("mode", no_wrap=True)
    for name in ("value", "limit", "margin", "chance"):
        table.add_column(name, justify="right", no_wrap=True)
    for verdict in reversed(Verdict):
        rows = [_row(c) for c in checks if c.verdict is verdict and _has_figure(c)]
        if rows:
            table.add_row(f"[{STYLES[verdict]}]{verdict}[/]")
        for row in rows:
            table.add_row(*row)
    console().print(table)
    _print_questions(checks)


def print_told(checks: Sequence[Check]) -> None:
    """Print every fail and caution in words, with what would mend it; after an empty line, if there are any."""
    told = [c for verdict in (Verdict.FAIL, Verdict.CAUTION) for c in checks if c.verdict is verdict]
    out = console()
    if told:
        out.print()
    for check, modes in by_mode(told):
        if check.id.startswith("clash."):
            continue  # told at length with its ways out
        mode = f" ({', '.join(modes)})" if modes else ""
        text = _wrapped(f"{check.verdict} {check.id}{mode}: {check.says}").removeprefix(check.verdict)
        out.print(f"[{STYLES[check.verdict]}]{check.verdict}[/]{_plain(text)}")
        if check.proposal:
            out.print(_plain(_wrapped(f"to mend: {check.proposal}", "      ")))


def print_sources(checks: Sequence[Check]) -> None:
    """Print where the limits come from, each source once."""
    seen: dict[str, list[str]] = {}
    for check in checks:
        ids = seen.setdefault(check.source, [])
        if check.id not in ids:
            ids.append(check.id)
    console().print("\n[bold]where the limits come from[/]")
    for source, ids in seen.items():
        typer.echo(_wrapped(f"{', '.join(ids)}: {source}", "  "))


def _print_questions(checks: Sequence[Check]) -> None:
    groups: dict[str, list[Check]] = {}
    for check in checks:
        if not _has_figure(check):
            groups.setdefault(check.id, []).append(check)
    for id, group in groups.items():
        count = {v: sum(c.verdict is v for c in group) for v in Verdict}
        tally = ", ".join(f"{n} {v}" for v, n in count.items() if n)
        modes = len({c.mode for c in group if c.mode})
        typer.echo(f"  {id:<22}{tally}" + (f" in {modes} mode{'s' * (modes > 1)}" if modes else ""))


def _row(check: Check) -> tuple[str, ...]:
    unit = "" if check.unit in (None, "mm") else f" {check.unit}"
    margin = "" if check.margin is None else f"{check.margin:.1f}"
    chance = "" if check.chance is None else f"{check.chance:.0%}"
    return f"  {check.id}", check.mode or "", f"{check.value:.1f}{unit}", _limit(check), margin, chance


def _has_figure(check: Check) -> bool:
    """Whether a check is a row of the table; questions of fit have a figure only where something is wrong."""
    return check.value is not None and not check.id.startswith("fit.")


def _limit(check: Check) -> str:
    low = "" if check.min is None else f"{check.min:g}"
    high = "" if check.max is None else f"{check.max:g}"
    if low and high:
        return f"{low} to {high}"
    return f">= {low}" if low else f"<= {high}" if high else ""


def _wrapped(text: str, indent: str = "") -> str:
    lines = textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False)
    return "\n".join(lines)


def _plain(text: str) -> str:
    from rich.markup import escape

    return escape(text)
