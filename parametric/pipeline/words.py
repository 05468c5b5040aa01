"""The few words and figures every human-readable output carries."""

from __future__ import annotations

from collections.abc import Iterable

from parametric.core.check import Check, Verdict, worst
from parametric.pipeline.size import Sized

CAUTIONS = (
    "These rules give millimetres and degrees; none of them says that anything is safe.",
    "Nobody travels on this furniture: it is not a travelling seat and is not crash-tested.",
    "Strength and fixing have not been calculated by this version: local codes and a licensed engineer decide.",
    "Before driving: panel, mattress and legs stowed, straps tight, nothing loose.",
    "Keep two ways out clear with the bed made up; never sleep with an open flame; keep vents uncovered.",
    "Mind fingers at lids, panel and leg pins.",
)


def holes(sized: Sized) -> list[tuple[int, float, float, float]]:
    """Which hole for which elbow: hole from below, desk height, least and greatest elbow height over the seat, mm."""
    dims = sized.dimensions
    half = dims.pitch / 2.0
    return [
        (k, step, step - dims.heights.seat - half, step - dims.heights.seat + half)
        for k, step in enumerate(dims.steps, start=1)
    ]


def advice(sized: Sized) -> list[str]:
    """What to measure, and which hole serves whom."""
    lines = [f"measure {w.name}: {w.about} goes from +/-{w.before:.0f} to +/-{w.after:.0f}" for w in sized.worth]
    lines += [
        f"desk hole {k}: {step:.0f}, for an elbow {low:.0f} to {high:.0f} over the seat"
        for k, step, low, high in holes(sized)
    ]
    return lines


def headline(checks: Iterable[Check]) -> str:
    """The verdict in words, with the warning that no file may go without."""
    listed = list(checks)
    count = {v: sum(c.verdict is v for c in listed) for v in Verdict}
    tally = f"{count[Verdict.FAIL]} fail, {count[Verdict.CAUTION]} caution, {count[Verdict.PASS]} pass"
    return f"DO NOT BUILD: {tally}" if worst(listed) is Verdict.FAIL else f"No check fails: {tally}"


def heights(sized: Sized) -> list[tuple[str, str]]:
    """The figures that matter, as label and value."""
    h, le, w, legs = sized.dimensions.heights, sized.dimensions.lengths, sized.dimensions.widths, sized.dimensions.legs
    steps = " ".join(f"{s:.0f}" for s in sized.dimensions.steps)
    swapped = f"lower {legs.lower_desk:.0f} (desk) or {legs.lower_night:.0f} (bed)"
    lower = swapped if legs.lower_night else f"lower {legs.lower_desk:.0f}"
    return [
        ("loaded seat height", f"{h.seat:.0f}"),
        ("platform height (slat top)", f"{h.platform:.0f}"),
        ("desk height", f"{h.desk:.0f}"),
        ("desk steps", steps),
        ("clear storage height", f"{h.storage:.0f}"),
        ("sleeping length", f"{le.bed:.0f}"),
        ("platform length", f"{le.platform:.0f}"),
        ("extension", f"{le.extension:.0f}"),
        ("panel (desk top)", f"{le.panel_depth:.0f} x {w.panel_length:.0f} x {h.panel:.1f}"),
        ("middle bearer from its rear end", f"{le.middle - le.rear:.0f}"),
        ("aisle", f"{w.aisle:.0f}"),
        (f"legs ({legs.kind})", f"upper {legs.upper:.0f}; {lower}"),
    ]
