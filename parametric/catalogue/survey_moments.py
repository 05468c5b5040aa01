"""Makes ``survey_moments.csv`` from the rows of the survey.

    python -m parametric.catalogue.survey_moments ROWS.csv [MORE.csv ...] -o survey_moments.csv

The survey is ANSUR II, the 2012 anthropometric survey of US Army personnel (Gordon et al., "2012 Anthropometric Survey
of U.S. Army Personnel: Methods and Summary Statistics", Natick/TR-15/007). It is in the public domain. The rows are
published as two files, ``ANSUR_II_MALE_Public.csv`` (4082 men) and ``ANSUR_II_FEMALE_Public.csv`` (1986 women), in
latin-1, with lengths in whole mm under column names such as ``sittingheight``, the mass in 0.1 kg as ``weightkg`` and
the sex as ``Gender``. Both files are given to this module together. It also reads a file of both sexes whose columns
for those two are ``mass_100g`` and ``sex``, as in the project's test data.

Every figure is an exact ratio of whole numbers until it is printed, so the same rows give the same bytes anywhere.
"""

from __future__ import annotations

import argparse
import csv
import io
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from parametric.catalogue.dimensions import dimensions
from parametric.catalogue.survey import SEXES, SurveySex
from parametric.core.errors import CatalogueError, OutputError, ParametricError

SOURCE = "ANSUR II 2012; Natick/TR-15/007"
_OTHER_NAMES = {"weightkg": "mass_100g", "Gender": "sex"}
_MASS_UNITS_PER_KG = 10

Rows = Mapping[SurveySex, NDArray[np.int64]]


def read_rows(paths: Sequence[Path]) -> Rows:
    """Rows of each sex, (n, k) whole numbers as published: mm, and 0.1 kg for the mass.

    Raises:
        CatalogueError: A file, a column or a figure is missing or is not what it should be, or a sex has too few rows.
    """
    found: dict[SurveySex, list[list[int]]] = {sex: [] for sex in SEXES}
    for path in paths:
        _read_file(path, found)
    least = len(dimensions()) + 1
    for sex, rows in found.items():
        if len(rows) < least:
            where = ", ".join(map(str, paths))
            raise CatalogueError(f"{where}: {len(rows)} rows of sex {sex}; at least {least} of each sex are needed")
    return {sex: np.array(rows, dtype=np.int64) for sex, rows in found.items()}


def table_text(rows: Rows) -> str:
    """The table as CSV text: for each sex the range, the means and the covariances (divisor n - 1), mm and kg."""
    names = list(dimensions())
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["sex", "statistic", "n", "source", *names])
    for sex, values in rows.items():
        for statistic, figures in _statistics(values, names).items():
            writer.writerow([sex, statistic, len(values), SOURCE, *(f"{figure:.10g}" for figure in figures)])
    return out.getvalue()


def main(arguments: Sequence[str] | None = None) -> int:
    """Run as a command; returns the exit code, 2 with one line on stderr if the rows cannot be used."""
    parser = argparse.ArgumentParser(prog="survey_moments", description="Survey rows to means and covariances.")
    parser.add_argument("rows", nargs="+", type=Path, metavar="ROWS.csv", help="public files of the survey")
    parser.add_argument("-o", "--output", required=True, type=Path, metavar="FILE.csv", help="table to write")
    given = parser.parse_args(arguments)
    try:
        _write(given.output, table_text(read_rows(given.rows)))
    except ParametricError as error:
        print(f"survey_moments: {error}", file=sys.stderr)
        return 2
    return 0


def _read_file(path: Path, found: dict[SurveySex, list[list[int]]]) -> None:
    try:
        text = path.read_text(encoding="latin-1")
    except OSError as error:
        raise CatalogueError(f"{path}: cannot be read: {error.strerror}") from error
    lines = csv.reader(text.splitlines())
    header = next(lines, [])
    columns = [_column(path, header, item.column) for item in dimensions().values()]
    sex_column = _column(path, header, "Gender")
    for number, cells in enumerate(lines, start=2):
        if len(cells) != len(header):
            raise CatalogueError(f"{path}:{number}: {len(cells)} cells where the header has {len(header)}")
        sex = cells[sex_column].lower()
        if sex not in found:
            raise CatalogueError(f"{path}:{number}: sex is {cells[sex_column]!r}; male or female is needed")
        found["male" if sex == "male" else "female"].append(
            [_whole(path, number, header[at], cells[at]) for at in columns]
        )


def _column(path: Path, header: Sequence[str], name: str) -> int:
    for candidate in (name, _OTHER_NAMES.get(name, name)):
        if candidate in header:
            return header.index(candidate)
    other = f" (or {_OTHER_NAMES[name]!r})" if name in _OTHER_NAMES else ""
    raise CatalogueError(f"{path}: no column {name!r}{other}; the public files of ANSUR II have it")


def _whole(path: Path, number: int, column: str, cell: str) -> int:
    if not (cell.isascii() and cell.isdigit() and int(cell) > 0):
        raise CatalogueError(f"{path}:{number}: {column} is {cell!r}; a whole number above 0 is needed")
    return int(cell)


def _statistics(values: NDArray[np.int64], names: Sequence[str]) -> dict[str, list[float]]:
    n = len(values)
    units = [_MASS_UNITS_PER_KG if name == "body_mass" else 1 for name in names]
    total = values.sum(axis=0).tolist()
    products = (values.T @ values).tolist()
    out = {
        "least": [x / unit for x, unit in zip(values.min(axis=0).tolist(), units, strict=True)],
        "greatest": [x / unit for x, unit in zip(values.max(axis=0).tolist(), units, strict=True)],
        "mean": [x / (n * unit) for x, unit in zip(total, units, strict=True)],
    }
    for i, name in enumerate(names):
        out[f"cov {name}"] = [
            (n * products[i][j] - total[i] * total[j]) / (n * (n - 1) * units[i] * units[j]) for j in range(len(names))
        ]
    return out


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text, encoding="utf-8", newline="\n")
    except OSError as error:
        raise OutputError(f"{path}: cannot be written: {error.strerror}") from error


if __name__ == "__main__":
    sys.exit(main())
