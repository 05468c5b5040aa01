from __future__ import annotations

import csv
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from parametric.catalogue.survey import parse_moments
from parametric.catalogue.survey_moments import main, read_rows, table_text

ROOT = Path(__file__).parents[3]
ROWS = ROOT / "tests" / "data" / "ansur2_rows.csv"
SHIPPED = ROOT / "parametric" / "catalogue" / "survey_moments.csv"


def failure(capsys: pytest.CaptureFixture[str], *arguments: object) -> str:
    assert main([str(argument) for argument in arguments]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err


def changed(tmp_path: Path, old: str, new: str) -> Path:
    """The head of the rows with one text changed."""
    path = tmp_path / "rows.csv"
    head = "\n".join(ROWS.read_text(encoding="latin-1").splitlines()[:5])
    assert old in head
    path.write_text(head.replace(old, new, 1), encoding="latin-1")
    return path


def test_run_as_a_module_it_makes_the_shipped_table_byte_for_byte(tmp_path: Path) -> None:
    made = tmp_path / "survey_moments.csv"
    command = [sys.executable, "-m", "parametric.catalogue.survey_moments", str(ROWS), "-o", str(made)]
    subprocess.run(command, check=True, cwd=ROOT)
    assert made.read_bytes() == SHIPPED.read_bytes()


def test_files_of_the_public_layout_give_the_same_table(tmp_path: Path) -> None:
    paths = []
    for sex in ("male", "female"):
        path = tmp_path / f"ANSUR_II_{sex.upper()}_Public.csv"
        with ROWS.open(encoding="latin-1", newline="") as source, path.open("w", encoding="latin-1", newline="") as out:
            rows = [row for row in csv.DictReader(source) if row["sex"] == sex]
            names = [name for name in rows[0] if name not in ("sex", "mass_100g")]
            writer = csv.writer(out)
            writer.writerow(["subjectid", *reversed(names), "weightkg", "Gender", "Installation"])
            for number, row in enumerate(rows):
                cells = [row[name] for name in reversed(names)]
                writer.writerow([number, *cells, row["mass_100g"], sex.capitalize(), "Ca\xf1on"])
        paths.append(path)
    assert table_text(read_rows(paths)) == SHIPPED.read_text(encoding="utf-8")


def test_moments_are_those_numpy_computes() -> None:
    rows = read_rows([ROWS])["female"].astype(float)
    rows[:, 1] /= 10
    table = parse_moments(SHIPPED.read_text(encoding="utf-8"), "female")
    assert table.n == len(rows) == 1479
    np.testing.assert_allclose(table.mean, rows.mean(axis=0), rtol=1e-9)
    np.testing.assert_allclose(table.cov, np.cov(rows, rowvar=False), rtol=1e-8, atol=1e-8)
    np.testing.assert_array_equal(table.least, rows.min(axis=0))
    np.testing.assert_array_equal(table.greatest, rows.max(axis=0))


def test_missing_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = failure(capsys, tmp_path / "none.csv", "-o", tmp_path / "out.csv")
    assert "none.csv: cannot be read: No such file" in said
    assert not (tmp_path / "out.csv").exists()


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("span", "wingspan", "no column 'span'; the public files of ANSUR II have it"),
        ("mass_100g", "mass", "no column 'weightkg' (or 'mass_100g')"),
        ("1776", "177.6", "rows.csv:2: stature is '177.6'; a whole number above 0 is needed"),
        ("1776", "0", "rows.csv:2: stature is '0'; a whole number above 0 is needed"),
        ("male,1776", "m,1776", "rows.csv:2: sex is 'm'; male or female is needed"),
        ("1776,", "", "rows.csv:2: 35 cells where the header has 36"),
        ("1776", "1777", "rows.csv: 4 rows of sex male; at least 36 of each sex are needed"),
    ],
)
def test_bad_rows_get_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, message: str
) -> None:
    said = failure(capsys, changed(tmp_path, old, new), "-o", tmp_path / "out.csv")
    assert message in said
    assert not (tmp_path / "out.csv").exists()


def test_one_sex_alone_is_not_enough(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "men.csv"
    lines = ROWS.read_text(encoding="latin-1").splitlines()
    path.write_text("\n".join(line for line in lines if not line.startswith("female")), encoding="latin-1")
    assert "men.csv: 0 rows of sex female" in failure(capsys, path, "-o", tmp_path / "out.csv")


def test_unwritable_output(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "cannot be written: No such file" in failure(capsys, ROWS, "-o", tmp_path / "no" / "out.csv")
