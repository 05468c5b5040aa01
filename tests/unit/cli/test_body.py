"""`parametric body`: options, units, the table and the document."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest

from parametric.catalogue.dimensions import dimensions

if TYPE_CHECKING:
    from tests.unit.cli.conftest import Answer

    Run = Callable[..., Answer]


@pytest.mark.parametrize("stature", ["1960", "1960mm", "196 cm", "1.96m", "1.96 m", "77.16535 in", "6 ft 5.16535 in"])
def test_a_stature_in_any_unit_gives_the_same_body(run: Run, stature: str) -> None:
    code, out, err = run("body", "--stature", stature, "--sex", "male", "--json")
    assert (code, err) == (0, "")
    assert json.loads(out)["dimensions"]["stature"]["mean"] == pytest.approx(1960.0, abs=0.01)


@pytest.mark.parametrize("mass", ["88", "88kg", "194.0068 lb"])
def test_a_mass_in_any_unit(run: Run, mass: str) -> None:
    _, out, _ = run("body", "--stature", "1960", "--mass", mass, "--json")
    assert json.loads(out)["dimensions"]["body_mass"]["mean"] == pytest.approx(88.0, abs=0.001)


def test_the_document_has_every_dimension_with_its_spread(run: Run) -> None:
    _, out, _ = run("body", "--stature", "1.80m", "--json")
    document = json.loads(out)
    assert list(document) == ["schema", "sex", "dimensions", "measure_next", "notes", "cautions"]
    assert document["schema"] == "parametric.body/1"
    assert document["sex"] == "unspecified"
    assert list(document["dimensions"]) == list(dimensions())
    for name, row in document["dimensions"].items():
        assert list(row) == ["unit", "mean", "sd", "p5", "p50", "p95", "known"], name
        assert row["p5"] <= row["p50"] <= row["p95"], name
        assert (row["sd"] == 0.0) == row["known"] == (name == "stature"), name


def test_a_measurement_is_taken_as_it_is_and_no_longer_asked_for(run: Run) -> None:
    arguments = ["body", "--stature", "1.96m", "--sex", "male", "--mass", "88", "--measured", "popliteal_height=49cm"]
    document = json.loads(run(*arguments, "--measured", "elbow_height_sitting = 10.25 in", "--json").out)
    assert document["dimensions"]["popliteal_height"]["p95"] == pytest.approx(490.0)
    assert document["dimensions"]["elbow_height_sitting"]["p5"] == pytest.approx(260.35)
    asked = {n["name"] for rows in document["measure_next"].values() for n in rows}
    assert asked
    assert not asked & {"stature", "body_mass", "popliteal_height", "elbow_height_sitting"}
    for rows in document["measure_next"].values():
        assert all(n["after"] <= n["before"] for n in rows)


def test_the_table_has_three_percentiles_and_what_to_measure(run: Run) -> None:
    code, out, err = run("body", "--stature", "1.96m", "--sex", "male", "--mass", "88")
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[0].split()[-3:] == ["p5", "p50", "p95"]
    rows = {line.split()[0]: line.split()[1:] for line in lines[1 : len(dimensions()) + 1]}
    assert list(rows) == list(dimensions())
    assert rows["stature"] == ["1960", "given"]
    assert all(int(a) < int(b) < int(c) for a, b, c in (r for r in rows.values() if r[-1] != "given"))
    assert "with popliteal_height measured" in out
    assert "with elbow_height_sitting measured" in out
    assert max(map(len, lines)) <= 80


def test_a_known_seat_height_is_said_to_be_known(run: Run) -> None:
    out = run("body", "--stature", "1.96m", "--measured", "popliteal_height=490").out
    assert "  seat height: known" in out.splitlines()


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--stature", "3m"], '--stature: read "3m" = 3000 mm; allowed are 1200 to 2300 mm'),
        (["--stature", "-5"], "--stature: read"),
        (["--stature", "nan"], "--stature: cannot read"),
        (["--stature", "inf"], "--stature: cannot read"),
        (["--stature", ""], "--stature: "),
        (["--stature", "1.96 bananas"], "bananas"),
        (["--stature", "88 kg"], '"kg" as the unit of a length'),
        (["--stature", "1960", "--mass", "2t"], '--mass: read "2t" = 2000 kg; allowed are'),
        (["--stature", "1960", "--mass", "1.9 m"], '"m" as the unit of a mass'),
        (["--stature", "1960", "--measured", "popliteal_height"], "write NAME=VALUE"),
        (["--stature", "1960", "--measured", "=5"], "is not a body dimension"),
        (["--stature", "1960", "--measured", "popliteal=490"], "'popliteal' is not a body dimension"),
        (["--stature", "1960", "--measured", "popliteal_height=490kg"], "--measured popliteal_height: "),
        (["--stature", "1960", "--measured", "popliteal_height=4900"], "--measured popliteal_height: read"),
    ],
)
def test_what_is_no_body_gets_one_message(run: Run, options: list[str], says: str) -> None:
    code, out, err = run("body", *options)
    assert (code, out) == (2, "")
    assert says in err
    assert err.count("\n") == 1
