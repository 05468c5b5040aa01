from __future__ import annotations

import json
import math
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.check import Checked
from parametric.pipeline.document import design_document
from parametric.pipeline.numbers import sized_document


@pytest.fixture(scope="module")
def document(checked: Checked) -> dict[str, Any]:
    return design_document(checked)


def test_it_is_plain_json_without_nan(document: dict[str, Any]) -> None:
    again = json.loads(json.dumps(document, allow_nan=False))
    assert again["schema"] == "parametric.design/1"
    assert again["name"] == "compact_van"


def test_the_brief_in_it_reads_back(document: dict[str, Any], checked: Checked) -> None:
    assert Brief.model_validate(json.loads(json.dumps(document["brief"]))) == checked.sized.brief


def test_every_part_is_listed_once(document: dict[str, Any], checked: Checked) -> None:
    listed = [name for part in document["parts"] for name in part["instances"]]
    assert sorted(listed) == sorted(checked.assembly.mechanism.parts)
    assert all(part["quantity"] == len(part["instances"]) for part in document["parts"])
    numbers = [part["number"] for part in document["parts"]]
    assert len(set(numbers)) == len(numbers)


def test_mass_is_that_of_all_pieces(document: dict[str, Any]) -> None:
    assert document["mass"] == pytest.approx(sum(p["mass"] * p["quantity"] for p in document["parts"]))


def test_sizes_to_cut(document: dict[str, Any], checked: Checked) -> None:
    sizes = {part["name"]: part["size"] for part in document["parts"]}
    dims = checked.sized.dimensions
    assert sizes["panel"] == pytest.approx([dims.lengths.panel_depth, dims.widths.panel_length, 17.6])
    assert sizes["right_rail"] == [dims.lengths.platform, 28.0, 95.0]
    assert sizes["leg_pin"] == []
    for part in document["parts"]:
        if part["kind"] == "bar":
            assert part["volume"] <= math.prod(part["size"])


def test_modes_and_change_overs(document: dict[str, Any]) -> None:
    assert document["modes"]["night"]["use"] == "lying"
    assert document["modes"]["drive"]["driving"] is True
    assert document["modes"]["desk/high"]["settings"] == {"desk_height": 786.0}
    assert {"from": "desk", "to": "desk/parked"}.items() <= document["change_overs"][4].items()


def test_the_numbers_are_those_of_size(document: dict[str, Any], checked: Checked) -> None:
    numbers = sized_document(checked.sized)
    assert {key: document[key] for key in numbers if key != "verdict"} == {
        key: value for key, value in numbers.items() if key != "verdict"
    }
    assert document["verdict"] == "caution"
