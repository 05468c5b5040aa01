"""What commands share in talking to the terminal: JSON, tables, verdict colours, progress."""

from __future__ import annotations

import json
import sys
import textwrap
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING

import typer

from parametric.core.check import Check, Verdict

if TYPE_CHECKING:
    from rich.console import Console

    from parametric.sizing.clash import Clash

STYLES: Mapping[Verdict, str] = {Verdict.PASS: "green", Verdict.CAUTION: "yellow", Verdict.FAIL: "bold red"}


def echo_json(document: Mapping[str, object]) -> None:
    """Print one document and nothing else, lengths rounded to a micrometre."""
    typer.echo(json.dumps(_rounded(document), indent=1, ensure_ascii=False, allow_nan=False))


def console() -> Console:
    """A console on standard output, 80 columns where it is not a terminal."""
    from rich.console import Console

    return Console(highlight=False, width=None if sys.stdout.isatty() else 80)


@contextmanager
def working(quiet: bool) -> Iterator[Callable[[str], None]]:
    """Show on standard error what is being done, if that is a terminal and nobody asked for quiet."""
    if quiet or not sys.stderr.isatty():
        yield lambda step: None
        return
    from rich.console import Console

    with Console(stderr=True).status("starting") as status:
        yield status.update


def print_pairs(rows: Sequence[tuple[str, str]]) -> None:
    """Print label and value, one a line."""
    wide = max(len(label) for label, _ in rows) + 2
    for label, value in rows:
        typer.echo(f"  {label:<{wide}}{value}")


def print_clashes(clashes: Sequence[Clash]) -> None:
    """Print what cannot hold together, and the ways out."""
    for clash in clashes:
        typer.echo("")
        for line in textwrap.wrap(f"CLASH {clash.says}", 80, subsequent_indent="  "):
            typer.echo(line)


def print_cautions(cautions: Sequence[str]) -> None:
    """Print the cautions that go with every design."""
    typer.echo("")
    for caution in cautions:
        typer.echo(f"! {caution}")


def print_checks(checks: Sequence[Check]) -> None:
    """Print a table of checks with figures, worst first, then one line for each question of fit."""
    from rich.table import Table

    table = Table(box=None, pad_edge=False, header_style="bold", collapse_padding=True)
    table.add_column("", no_wrap=True)
    table.add_column("check", no_wrap=True)
    table.add_column("mode", no_wrap=True)
    for name in ("value", "limit", "margin"):
        table.add_column(name, justify="right", no_wrap=True)
    out = console()
    for check in sorted(checks, key=lambda c: list(STYLES).index(c.verdict), reverse=True):
        if check.value is None or check.id.startswith("fit."):
            continue
        verdict = f"[{STYLES[check.verdict]}]{check.verdict}[/]"
        figures = (f"{check.value:.1f}", _limit(check), "" if check.margin is None else f"{check.margin:.1f}")
        unit = "" if check.unit in (None, "mm") else f" {check.unit}"
        table.add_row(verdict, check.id, check.mode or "", figures[0] + unit, *figures[1:])
    out.print(table)
    _print_questions(checks)


def print_told(checks: Sequence[Check]) -> None:
    """Print every fail and caution in words, with what would mend it."""
    out = console()
    for verdict in (Verdict.FAIL, Verdict.CAUTION):
        for check in (c for c in checks if c.verdict is verdict):
            mode = f" ({check.mode})" if check.mode else ""
            out.print(f"[{STYLES[verdict]}]{verdict}[/] {check.id}{mode}: {_plain(check.says)}")
            if check.proposal:
                out.print(f"      to mend: {_plain(check.proposal)}")


def print_sources(checks: Sequence[Check]) -> None:
    """Print where the limits come from, each source once."""
    seen: dict[str, list[str]] = {}
    for check in checks:
        ids = seen.setdefault(check.source, [])
        if check.id not in ids:
            ids.append(check.id)
    out = console()
    out.print("[bold]sources[/]")
    for source, ids in seen.items():
        out.print(f"  {', '.join(ids)}: {_plain(source)}")


def _print_questions(checks: Sequence[Check]) -> None:
    groups: dict[str, list[Check]] = {}
    for check in checks:
        if check.id.startswith("fit."):
            groups.setdefault(check.id, []).append(check)
    for id, group in groups.items():
        count = {v: sum(c.verdict is v for c in group) for v in Verdict}
        tally = ", ".join(f"{n} {v}" for v, n in count.items() if n)
        modes = len({c.mode for c in group if c.mode})
        typer.echo(f"  {id:<22}{tally}" + (f" in {modes} modes" if modes else ""))


def _limit(check: Check) -> str:
    low = "" if check.min is None else f"{check.min:g}"
    high = "" if check.max is None else f"{check.max:g}"
    if low and high:
        return f"{low} to {high}"
    return f">= {low}" if low else f"<= {high}" if high else ""


def _plain(text: str) -> str:
    from rich.markup import escape

    return escape(text)


def _rounded(value: object) -> object:
    if isinstance(value, float):
        return round(value, 3)
    if isinstance(value, Mapping):
        return {key: _rounded(v) for key, v in value.items()}
    if isinstance(value, list | tuple):
        return [_rounded(v) for v in value]
    return value
