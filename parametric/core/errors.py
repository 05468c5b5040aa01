"""The error tree. Messages say where, what was read, and what would be right.

    ParametricError
    ├── BriefError        the brief cannot be used (all problems in one go)     exit code 2
    ├── CatalogueError    a stock name, survey dimension or section is unknown  exit code 2
    ├── BodyError         a body dimension given is not that of a person        exit code 2
    ├── RefusedError      a combination this version does not build             exit code 2
    └── OutputError       the result cannot be written                          exit code 2

A design that merely fails a check is not an error: that is a `Check` with verdict `fail`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


class ParametricError(Exception):
    """Base of every error a user can mend."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing wrong with a brief.

    Attributes:
        key: Dotted path of the field, for example ``van.opening[0].width``; empty for the file.
        says: What was read and what is allowed.
        line: Line in the file, counted from 1; None where it cannot be known.
    """

    key: str
    says: str
    line: int | None = None


class BriefError(ParametricError, ValueError):
    """The brief is unusable; carries every problem found."""

    def __init__(self, path: str, problems: Sequence[Problem]) -> None:
        self.path = path
        self.problems = tuple(problems)
        super().__init__("\n".join(self.lines()))

    def lines(self) -> list[str]:
        """One message for each problem: file, line, key path, what is wrong."""
        out = []
        for problem in self.problems:
            place = self.path if problem.line is None else f"{self.path}:{problem.line}"
            key = f" {problem.key}:" if problem.key else ""
            out.append(f"{place}:{key} {problem.says}")
        return out


class CatalogueError(ParametricError, KeyError):
    """A name is not in a catalogue table."""

    def __str__(self) -> str:
        return str(self.args[0]) if self.args else ""


class BodyError(ParametricError, ValueError):
    """What is said of a body cannot be true; the message says what is allowed."""


class RefusedError(ParametricError, ValueError):
    """The combination asked for cannot be built; the message says why and what can."""


class OutputError(ParametricError, OSError):
    """The result cannot be written where it was asked for."""
