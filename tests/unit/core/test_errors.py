from __future__ import annotations

import pytest

from parametric.core.errors import (
    BodyError,
    BriefError,
    CatalogueError,
    OutputError,
    ParametricError,
    Problem,
    RefusedError,
)


@pytest.mark.parametrize(
    ("kind", "builtin"),
    [
        (BodyError, ValueError),
        (RefusedError, ValueError),
        (CatalogueError, KeyError),
        (OutputError, OSError),
        (BriefError, ValueError),
    ],
)
def test_every_error_is_one_of_ours_and_a_builtin(kind: type[Exception], builtin: type[Exception]) -> None:
    assert issubclass(kind, ParametricError)
    assert issubclass(kind, builtin)


def test_a_problem_says_file_line_key_and_what_is_wrong() -> None:
    error = BriefError("van.toml", [Problem(key="van.opening[0].width", says="read -5; more than 0", line=12)])
    assert str(error) == "van.toml:12: van.opening[0].width: read -5; more than 0"


def test_without_line_or_key_the_rest_still_reads() -> None:
    problems = [Problem(key="bed.width", says="is missing"), Problem(key="", says="is not valid TOML", line=3)]
    assert BriefError("b.toml", problems).lines() == ["b.toml: bed.width: is missing", "b.toml:3: is not valid TOML"]


def test_all_problems_come_in_one_go() -> None:
    problems = [Problem(key=f"k{i}", says="no", line=i) for i in range(1, 4)]
    error = BriefError("b.toml", problems)
    assert error.problems == tuple(problems)
    assert str(error).count("\n") == 2


def test_an_unknown_name_is_not_printed_in_quotes() -> None:
    # a bare KeyError would show the repr of its message
    assert str(CatalogueError("no sheet is called 'oak'")) == "no sheet is called 'oak'"
    assert str(CatalogueError()) == ""
