"""Wall time and peak memory of whole commands, against importing the CAD kernel."""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[2]
BASE = "import cadquery"
Row = tuple[str, str, str]

AIMS = {
    "--help": "under 0.25",
    "new": "under 0.25",
    "body": "under 0.25",
    "size": "under 0.25",
    "check": "under 1.5",
    "build": "under 5",
}


def measure(brief: Path, rounds: int) -> list[Row]:
    """Run every command in turn, `rounds` times after one to warm up, and tell medians.

    Args:
        brief: What to size, check and build.
        rounds: How often.
    """
    with tempfile.TemporaryDirectory() as scratch:
        runs = [_round(brief, Path(scratch) / str(n)) for n in range(rounds + 1)][1:]
    seconds = {name: median(run[name][0] for run in runs) for name in runs[0]}
    peak = max(run["build"][1] for run in runs)
    return [
        (f"median of {rounds}, in units of `python -c '{BASE}'`", f"{seconds[BASE]:.2f} s", "aim"),
        *((f"parametric {name}", f"{seconds[name] / seconds[BASE]:.2f}", aim) for name, aim in AIMS.items()),
        ("peak memory of build", f"{peak / 1e9:.2f} GB", "under 1.5 GB"),
    ]


def _round(brief: Path, folder: Path) -> dict[str, tuple[float, int]]:
    folder.mkdir()
    return {
        BASE: _run(("-c", BASE)),
        "--help": _command("--help"),
        "new": _command("new", str(folder / "new.toml")),
        "body": _command("body", "--stature", "1.96m", "--sex", "male"),
        "size": _command("size", str(brief)),
        "check": _command("check", str(brief)),
        "build": _command("build", str(brief), "-o", str(folder / "build")),
    }


def _command(*arguments: str) -> tuple[float, int]:
    return _run(("-m", "parametric", *arguments))


def _run(arguments: Sequence[str]) -> tuple[float, int]:
    """Seconds on the clock and peak memory in bytes of one silent run of Python.

    Raises:
        RuntimeError: It could not do what was asked; a design that fails its checks is no reason.
    """
    silent = [(os.POSIX_SPAWN_OPEN, stream, os.devnull, os.O_WRONLY, 0) for stream in (1, 2)]
    start = time.perf_counter()
    process = os.posix_spawn(
        sys.executable,
        (sys.executable, *arguments),
        {**os.environ, "PYTHONPATH": str(ROOT)},
        file_actions=silent,
    )
    _, status, usage = os.wait4(process, 0)
    seconds = time.perf_counter() - start
    code = os.waitstatus_to_exitcode(status)
    if code not in {0, 1}:
        raise RuntimeError(f"{' '.join(arguments)} ended with {code}")
    return seconds, usage.ru_maxrss * (1 if sys.platform == "darwin" else 1024)
