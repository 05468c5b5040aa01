from __future__ import annotations

import json
import pickle
from collections.abc import Callable, Iterator

import pytest
from pydantic import BaseModel, ValidationError

from parametric.brief.loader import parse
from parametric.brief.model import Brief
from parametric.brief.sentences import model_in
from parametric.brief.template import template_text

Read = Callable[..., Brief]


def test_defaults(read: Read) -> None:
    brief = read()
    assert brief.note == ""
    assert brief.van.length_night == brief.van.length_day == 2600.0
    assert brief.van.roof is None
    assert brief.van.lining.floor == 0.0
    assert brief.sleeper[0].shoes == 10.0
    assert (brief.sitting.seat, brief.sitting.hours, brief.sitting.screen) == ("feet_down", 6.0, "laptop")
    assert (brief.bed.side, brief.bed.direction, brief.bed.head) == ("right", "along", "rear")
    assert (brief.bed.length_allowance, brief.bed.length) == (150.0, None)
    mattress = brief.bed.mattress
    assert (mattress.thickness, mattress.sink_seated, mattress.sink_lying, mattress.density) == (100, 30, 25, 35)
    assert (brief.arrangement.extension, brief.arrangement.support) == ("panel", "cleat_legs")
    assert (brief.stock.timber, brief.stock.sheet, brief.stock.panel_thickness) == ("C24", "birch_plywood", 18)
    assert (brief.shop.cut, brief.shop.kerf, brief.shop.cutter, brief.shop.tolerance) == ("hand", 3, 8, "m")
    rules = brief.rules
    assert (rules.head_clearance, rules.thigh_gap, rules.entry_slot, rules.moving_clearance) == (50, 20, 330, 2)


def test_figures_are_floats_in_mm_and_kg(read: Read) -> None:
    brief = read(("1960", '"6 ft 6 in"\nmass = "180 lb"'), ("1150", '"1.15 m"'))
    assert brief.sleeper[0].stature == pytest.approx(1981.2)
    assert brief.sleeper[0].mass == pytest.approx(81.65, abs=0.01)
    assert brief.bed.width == 1150.0
    assert isinstance(brief.van.ceiling, float)


def test_length_by_night_is_kept_when_given(read: Read) -> None:
    assert read(("length_day", "length_night = 2800\nlength_day")).van.length_night == 2800


def test_a_brief_does_not_change(read: Read) -> None:
    with pytest.raises(ValidationError, match="frozen"):
        read().bed.width = 3.0  # type: ignore[misc]


@pytest.mark.parametrize("text", [template_text("x"), None])
def test_dump_is_plain_json_and_reads_back_equal(text: str | None, minimal: str) -> None:
    brief = parse(text or minimal, "x.toml")
    dump = json.loads(json.dumps(brief.to_dict(), allow_nan=False))
    assert Brief.model_validate(dump) == brief
    assert dump["van"]["length_night"] == 2600.0


def test_a_brief_can_be_sent_to_another_process(read: Read) -> None:
    brief = read()
    assert pickle.loads(pickle.dumps(brief)) == brief


def test_workers_are_those_at_the_desk(read: Read) -> None:
    second = '[[sleeper]]\nsex = "female"\nstature = 1700\nworks = false\n[bed]'
    brief = read(("[bed]", second))
    assert [s.stature for s in brief.workers] == [1960]


def test_measured_thickness_wins_over_the_mean(read: Read) -> None:
    assert read().stock.panel == 17.6  # mean of an 18 mm birch plywood: Handbook of Finnish Plywood, from memory
    assert read(("[bed]", "[stock]\npanel_measured = 17.9\n[bed]")).stock.panel == 17.9


def test_every_field_says_what_it_means() -> None:
    def fields(model: type[BaseModel]) -> Iterator[tuple[str, str | None]]:
        for name, field in model.model_fields.items():
            yield f"{model.__name__}.{name}", field.description
            if (inner := model_in(field.annotation)) is not None:
                yield from fields(inner)

    assert [name for name, description in fields(Brief) if not description] == []
