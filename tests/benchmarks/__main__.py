"""Speeds as ratios within one run, beside what was set as the aim. It judges nothing: python -m tests.benchmarks."""

from __future__ import annotations

import argparse
from pathlib import Path

from tests.benchmarks.commands import measure

ROOT = Path(__file__).parents[2]


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    parser.add_argument("--brief", type=Path, default=ROOT / "configs" / "compact_van.toml")
    parser.add_argument("--mode", default="desk", help="mode whose near pairs are judged twice")
    parser.add_argument("--rounds", type=int, default=5, help="interleaved runs of every command")
    options = parser.parse_args()
    rows = measure(options.brief, options.rounds)
    # only now: a child starts with the peak memory of its parent, which must be small until the commands are measured
    from tests.benchmarks.verdicts import compare

    rows += compare(options.brief, options.mode, options.rounds)
    widths = [max(len(row[k]) for row in rows) for k in range(3)]
    for what, found, aim in rows:
        print(f"{what:<{widths[0]}}  {found:>{widths[1]}}  {aim:<{widths[2]}}".rstrip())


if __name__ == "__main__":
    main()
