"""The same design gives the same files, in whatever process and order they are written."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

SAMPLE = Path(__file__).parents[2] / "conftest.py"
WRITE = """
import runpy, sys
from pathlib import Path
from parametric.exports import step, stl
folder, order = Path(sys.argv[1]), int(sys.argv[2])
assembly = runpy.run_path(sys.argv[3])["sample_assembly"]()
heading = step.Heading(name="demo")
for mode in list(assembly.mechanism.modes)[::order]:
    step.write_mode(assembly, mode, folder / f"{mode}.step", heading)
    stl.write_mode(assembly, mode, folder / f"{mode}.stl", "demo")
for item in list(assembly.items.values())[::order]:
    step.write_part(item, folder / f"{item.number}.step", heading)
    stl.write_part(item, folder / f"{item.number}.stl", "demo")
"""


def _start(folder: Path, seed: str, order: int) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-c", WRITE, str(folder), str(order), str(SAMPLE)]
    return subprocess.Popen(
        command, env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)}
    )


def _sums(folder: Path) -> dict[str, str]:
    files = sorted(p for p in folder.rglob("*") if p.is_file())
    return {str(p.relative_to(folder)): hashlib.sha256(p.read_bytes()).hexdigest() for p in files}


def test_step_and_stl_are_the_same_in_two_processes(tmp_path: Path) -> None:
    runs = [_start(tmp_path / seed, seed, order) for seed, order in (("1", 1), ("4242", -1))]
    assert [run.wait() for run in runs] == [0, 0]
    first, second = _sums(tmp_path / "1"), _sums(tmp_path / "4242")
    assert len(first) == 14
    assert first == second
