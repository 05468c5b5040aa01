"""One page of plain text that goes with a build: heights, verdict, what to mend, cautions."""

from __future__ import annotations

import textwrap

from parametric.checks.posture import in_words
from parametric.core.check import Check, Verdict, by_mode
from parametric.pipeline.check import Checked
from parametric.pipeline.words import CAUTIONS, advice, headline, heights

WIDTH = 80


def summary(checked: Checked) -> str:
    """The page."""
    sized = checked.sized
    lines = [f"{sized.brief.name}: {headline(checked.checks)}", ""]
    if sized.brief.note:
        lines += [*textwrap.wrap(sized.brief.note, WIDTH), ""]
    rows = heights(sized)
    room = max(len(label) for label, _ in rows) + 2
    for label, value in rows:
        lines += textwrap.wrap(f"{label:<{room}}{value}", WIDTH, subsequent_indent=" " * room)
    lines += ["all lengths in mm", "", *advice(sized), *in_words(checked.work), ""]
    for clash in sized.clashes:
        lines += [*textwrap.wrap(f"CLASH {clash.says}", WIDTH), ""]
    for verdict in (Verdict.FAIL, Verdict.CAUTION):
        told = by_mode(c for c in checked.checks if c.verdict is verdict and not c.id.startswith("clash."))
        if told:
            lines += [verdict.value.upper(), *(line for c, modes in told for line in _told(c, modes)), ""]
    lines += ["CHANGE-OVERS", *_change_overs(checked), ""]
    lines += ["CAUTIONS", *(line for caution in CAUTIONS for line in _bullet(caution))]
    return "\n".join(lines) + "\n"


def _change_overs(checked: Checked) -> list[str]:
    """The steps from one mode to another, numbered."""
    lines = []
    for change in checked.assembly.mechanism.change_overs:
        lines.append(f"{change.start} to {change.end}")
        for k, move in enumerate(change.moves, start=1):
            lines += textwrap.wrap(move.says, WIDTH, initial_indent=f"  {k}. ", subsequent_indent="     ")
    return lines


def _told(check: Check, modes: tuple[str, ...]) -> list[str]:
    where = f" [{', '.join(modes)}]" if modes else ""
    mend = f" To mend: {check.proposal}." if check.proposal else ""
    return _bullet(f"{check.id}{where}: {check.says}.{mend}")


def _bullet(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="- ", subsequent_indent="  ")
