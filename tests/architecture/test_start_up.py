"""What the quick commands must not load, and that checking needs no CAD kernel."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
BRIEF = str(ROOT / "configs" / "compact_van.toml")
HEAVY = {"scipy", "trimesh", "cadquery", "OCP", "vtkmodules", "fcl", "manifold3d"}


def loaded(report: str) -> set[str]:
    """Top-level modules in the report of `python -X importtime`."""
    return {name.split(".", 1)[0] for name in re.findall(r"^import time:.*\|\s+(\S+)$", report, re.MULTILINE)}


def run(*arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """Run Python with the project importable from any folder."""
    path = f"import sys; sys.path.insert(0, {str(ROOT)!r}); "
    *options, code = arguments
    return subprocess.run(
        [sys.executable, *options, "-c", path + code], cwd=cwd, capture_output=True, text=True, check=False
    )


def command(*arguments: str, before: str = "") -> str:
    """Code that does what `python -m parametric ARGUMENTS` does."""
    return (
        f"{before}import runpy; sys.argv = {['parametric', *arguments]!r}; "
        "runpy.run_module('parametric', run_name='__main__', alter_sys=True)"
    )


@pytest.mark.parametrize(
    "arguments",
    [("--help",), ("new", "brief.toml"), ("body", "--stature", "1.96m", "--sex", "male"), ("size", BRIEF)],
    ids=lambda arguments: arguments[0],
)
def test_quick_commands_load_nothing_heavy(arguments: tuple[str, ...], tmp_path: Path) -> None:
    result = run("-X", "importtime", command(*arguments), cwd=tmp_path)
    assert result.returncode == 0, result.stdout + result.stderr
    assert "parametric" in loaded(result.stderr)
    assert loaded(result.stderr) & HEAVY == set()


def test_check_works_where_the_cad_kernel_cannot_be_imported(tmp_path: Path) -> None:
    blocked = "sys.modules['cadquery'] = None; sys.modules['OCP'] = None; "
    result = run(command("check", BRIEF, "--json", before=blocked), cwd=tmp_path)
    assert result.returncode == 0, result.stdout + result.stderr
    answer = json.loads(result.stdout)
    assert {"night", "desk", "drive"} <= {str(c["mode"]).split("/", 1)[0] for c in answer["checks"]}
