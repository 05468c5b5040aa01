"""Who may import whom: the contracts of pyproject.toml hold, and each of them notices what it forbids."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """Import-linter on the package in a folder, without its cache."""
    command = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports(no_cache=True))"
    return subprocess.run([sys.executable, "-c", command], cwd=folder, capture_output=True, text=True, check=False)


def broken(output: str) -> set[str]:
    """Names of the contracts said to be broken."""
    return {line.removesuffix(" BROKEN") for line in output.splitlines() if line.endswith(" BROKEN")}


def test_all_contracts_are_kept() -> None:
    result = lint(ROOT)
    assert result.returncode == 0, result.stdout + result.stderr
    assert " 0 broken" in result.stdout


@pytest.fixture(scope="module")
def faulty(tmp_path_factory: pytest.TempPathFactory) -> str:
    """What import-linter says of a copy of the package with a fault of every sort planted."""
    folder = tmp_path_factory.mktemp("faulty")
    shutil.copy(ROOT / "pyproject.toml", folder)
    shutil.copytree(ROOT / "parametric", folder / "parametric", ignore=shutil.ignore_patterns("__pycache__"))
    for room, line in (
        ("core/pose.py", "import parametric.body.body"),
        ("sizing/late.py", "def f() -> None:\n    import trimesh"),
        ("checks/late.py", "def f() -> None:\n    import parametric.checks.cad"),
        ("checks/cad.py", "import OCP"),
        ("exports/talk.py", "import rich"),
        ("mechanism/valid.py", "import pydantic"),
        ("body/read.py", "import parametric.brief.loader"),
    ):
        path = folder / "parametric" / room
        path.write_text(f"{path.read_text() if path.exists() else ''}\n{line}\n")
    result = lint(folder)
    assert result.returncode == 1, result.stdout + result.stderr
    return result.stdout


@pytest.mark.parametrize(
    "contract",
    [
        "Rooms are stacked and data flows one way",
        "No cycles between siblings at any depth",
        "Numbers see neither CAD, meshes nor the terminal",
        "Checking reaches no CAD kernel",
        "Only solids, exports and pipeline.model touch the CAD kernel",
        "Only the command line talks to the terminal",
        "Only the brief is validated by pydantic, and only it reads unit strings",
        "Briefs are read at the door",
    ],
)
def test_a_planted_import_breaks_the_contract(faulty: str, contract: str) -> None:
    assert contract in broken(faulty)


def test_a_new_room_must_be_given_its_place(tmp_path: Path) -> None:
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    shutil.copytree(ROOT / "parametric", tmp_path / "parametric", ignore=shutil.ignore_patterns("__pycache__"))
    (tmp_path / "parametric" / "attic").mkdir()
    (tmp_path / "parametric" / "attic" / "__init__.py").touch()
    result = lint(tmp_path)
    assert result.returncode == 1
    assert "attic" in result.stdout + result.stderr
