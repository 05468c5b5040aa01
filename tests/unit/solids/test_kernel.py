"""What is said when the CAD kernel does not load."""

from __future__ import annotations

import builtins
import importlib
import sys
from collections.abc import Callable

import pytest

from parametric.core.errors import OutputError
from parametric.solids import kernel


def _failing(message: str) -> Callable[..., object]:
    real = builtins.__import__

    def importer(name: str, *args: object) -> object:
        if name == "cadquery":
            raise ImportError(message)
        return real(name, *args)  # type: ignore[arg-type]

    return importer


def _reload(monkeypatch: pytest.MonkeyPatch, message: str) -> None:
    monkeypatch.delitem(sys.modules, kernel.__name__)
    monkeypatch.setattr(builtins, "__import__", _failing(message))
    importlib.import_module(kernel.__name__)


def test_missing_system_library_names_the_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(OutputError, match=r"libGL\.so\.1.*apt-get install libgl1 libx11-6"):
        _reload(monkeypatch, "libGL.so.1: cannot open shared object file: No such file or directory")


def test_other_import_errors_are_not_dressed_up(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(ImportError, match="No module named 'cadquery'"):
        _reload(monkeypatch, "No module named 'cadquery'")
