"""Reads a brief and reports every problem at once, each with file, line and key path."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from parametric.brief.lines import key_lines, line_of
from parametric.brief.model import Brief
from parametric.brief.sentences import dotted, sentences
from parametric.brief.words import clipped
from parametric.core.errors import BriefError, Problem

_LARGEST = 1_000_000  # bytes; a brief is a few thousand
_SENTENCE = 200  # characters of somebody else's wording
_MOST = 50  # problems reported at once


def load(path: str | Path) -> Brief:
    """The brief in a file.

    Raises:
        BriefError: The file cannot be read or the brief in it is unusable; carries every problem.
    """
    data = _bytes(Path(path))
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise _unusable(path, "is not UTF-8 text; save it as UTF-8", line) from None
    return parse(text, path)


def parse(text: str, path: str | Path) -> Brief:
    """The brief in a text.

    Args:
        text: TOML.
        path: Name of the file for messages.

    Raises:
        BriefError: The brief is unusable; carries every problem.
    """
    read = _toml(text, path)
    try:
        return Brief.model_validate(read)
    except ValidationError as error:
        lines = key_lines(text)
        problems = [Problem(key=dotted(key), says=says, line=line_of(key, lines)) for key, says in sentences(error)]
    problems.sort(key=lambda p: (p.line is None, p.line or 0))
    if len(problems) > _MOST:
        more = Problem(key="", says=f"and {len(problems) - _MOST} more problems")
        problems = [*problems[:_MOST], more]
    raise BriefError(str(path), problems)


def _bytes(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            data = file.read(_LARGEST + 1)
    except FileNotFoundError:
        raise _unusable(path, "there is no such file; `parametric new FILE` writes one to fill in") from None
    except IsADirectoryError:
        raise _unusable(path, "is a folder; name the brief in it") from None
    except PermissionError:
        raise _unusable(path, "may not be read; change its permissions") from None
    except (OSError, ValueError) as error:
        raise _unusable(path, f"cannot be read: {clipped(str(error), _SENTENCE)}") from None
    if len(data) > _LARGEST:
        raise _unusable(path, f"is longer than {_LARGEST} bytes, so it is not a brief")
    return data


def _toml(text: str, path: str | Path) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise _unusable(path, "is not valid TOML: lists are nested too deep") from None
    except ValueError as error:
        says, line = _toml_problem(str(error), text)
        raise _unusable(path, f"is not valid TOML: {says}", line) from None


def _toml_problem(message: str, text: str) -> tuple[str, int | None]:
    """The parser's words without their place, and the line they speak of."""
    if (match := re.search(r" \(at line (\d+), column (\d+)\)$", message)) is not None:
        line, says = int(match[1]), f"{clipped(message[: match.start()], _SENTENCE)} at column {match[2]}"
        written = text.split("\n")[line - 1] if line <= text.count("\n") + 1 else ""
        if re.search(r"=\s*[\d.]+\s*[A-Za-z'\"]", written):
            says += '; a figure with a unit needs quotes, for example "1.98 m"'
        return says, line
    if message.endswith("(at end of document)"):
        return clipped(message, _SENTENCE), text.rstrip("\n").count("\n") + 1
    return clipped(message, _SENTENCE), None


def _unusable(path: str | Path, says: str, line: int | None = None) -> BriefError:
    return BriefError(str(path), [Problem(key="", says=says, line=line)])
