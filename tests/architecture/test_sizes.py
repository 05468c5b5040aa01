"""One concept a file, small functions, and a docstring on everything public."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FILES = sorted((ROOT / "parametric").rglob("*.py"))
LONGEST_FILE = 400
LONGEST_FUNCTION = 80

Function = ast.FunctionDef | ast.AsyncFunctionDef


def short(path: Path) -> str:
    """Path from the root, as a test id."""
    return str(path.relative_to(ROOT))


def functions(tree: ast.AST) -> Iterator[Function]:
    """Every function, also inside others."""
    return (node for node in ast.walk(tree) if isinstance(node, Function))


def public(body: list[ast.stmt], owner: str = "") -> Iterator[tuple[str, Function | ast.ClassDef]]:
    """Public functions and classes of a module, and public methods of its public classes."""
    for node in body:
        if isinstance(node, Function | ast.ClassDef) and not node.name.startswith("_"):
            yield f"{owner}{node.name}", node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body, f"{node.name}.")


def test_there_is_something_to_measure() -> None:
    assert len(FILES) > 50


@pytest.mark.parametrize("path", FILES, ids=short)
def test_a_file_holds_one_concept_and_small_functions(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    lines = text.count("\n")
    assert lines <= LONGEST_FILE
    lengths = {f.name: (f.end_lineno or f.lineno) - f.lineno + 1 for f in functions(ast.parse(text))}
    assert {name: n for name, n in lengths.items() if n > LONGEST_FUNCTION} == {}


@pytest.mark.parametrize("path", FILES, ids=short)
def test_what_is_public_says_what_it_is(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert ast.get_docstring(tree), "the module"
    assert [name for name, node in public(tree.body) if not ast.get_docstring(node)] == []
