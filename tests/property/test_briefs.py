"""Briefs drawn at random: they are sized, or refused in words, and what is sized keeps its promises."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from parametric.brief.change import changed
from parametric.brief.model import Brief
from parametric.core.check import Verdict
from parametric.core.errors import ParametricError
from parametric.pipeline.check import check
from parametric.pipeline.size import Sized, size
from parametric.sizing.kinds.cleat_legs import LEAST_APART, least_overlap

Judge = Callable[[Brief], None]


def drawn(count: int) -> Callable[[Judge], Judge]:
    """So many briefs for a test; the smallest that fails is not looked for, as each takes a while."""
    phases = (Phase.explicit, Phase.reuse, Phase.generate)
    few = settings(
        max_examples=count, deadline=None, phases=phases, suppress_health_check=[HealthCheck.filter_too_much]
    )
    return lambda judge: few(given(briefs())(judge))


def maybe(strategy: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """A value, or as often none."""
    return st.none() | strategy


@st.composite
def vans(draw: st.DrawFn) -> dict[str, Any]:
    """Small and large, leaning walls, with and without a raised roof and things that stay."""
    ceiling = draw(st.integers(1050, 2200))
    width = draw(st.integers(1100, 2100))
    waist, top = (draw(st.integers(0, 150)) for _ in range(2))
    day = draw(st.integers(1700, 4000))
    van: dict[str, Any] = {
        "length_day": day,
        "length_night": day + draw(st.integers(0, 400)),
        "ceiling": ceiling,
        "wall": [[0, width], [ceiling / 2.0, width - waist], [ceiling, width - waist - top]],
    }
    if draw(st.booleans()):
        front, rear = (ceiling + draw(st.integers(50, 700)) for _ in range(2))
        start = draw(st.integers(0, 800))
        stop = start + draw(st.integers(600, 1600))
        van["roof"] = {"x": [start, stop], "y": [-500, 500], "front": front, "rear": rear, "lifts": draw(st.booleans())}
    if draw(st.booleans()):
        x, y = draw(st.integers(0, day - 200)), draw(st.integers(-width // 2, width // 2 - 50))
        tall = draw(st.integers(50, 900))
        van["fixed"] = [{"name": "box", "x": [x, x + 200], "y": [y, y + 200], "z": [0, tall]}]
    return van


@st.composite
def sleepers(draw: st.DrawFn) -> list[dict[str, Any]]:
    """One or two people, some of them measured."""
    people = []
    for _ in range(draw(st.integers(1, 2))):
        person: dict[str, Any] = {
            "sex": draw(st.sampled_from(["male", "female", "unspecified"])),
            "stature": draw(st.floats(1450.0, 2150.0)),
            "shoes": draw(st.integers(0, 40)),
        }
        if draw(st.booleans()):
            person["mass"] = draw(st.floats(45.0, 140.0))
        if draw(st.booleans()):
            person["measured"] = {"elbow_height_sitting": draw(st.floats(180.0, 310.0))}
        people.append(person)
    return people


@st.composite
def beds(draw: st.DrawFn) -> dict[str, Any]:
    """With wishes and without."""
    thickness = draw(st.integers(30, 200))
    bed = {
        "width": draw(st.integers(550, 1400)),
        "length": draw(maybe(st.integers(1500, 2400))),
        "platform_height": draw(maybe(st.integers(240, 650))),
        "platform_length": draw(maybe(st.integers(900, 1800))),
        "storage_height": draw(maybe(st.integers(150, 420))),
        "head": draw(st.sampled_from(["front", "rear"])),
        "mattress": {
            "thickness": thickness,
            "sink_seated": draw(st.floats(0.0, 0.6)) * thickness,
            "sink_lying": draw(st.floats(0.0, 0.5)) * thickness,
            "air_mat": draw(st.sampled_from([0, 10])),
        },
    }
    return {key: value for key, value in bed.items() if value is not None}


@st.composite
def briefs(draw: st.DrawFn) -> Brief:
    """What the loader would let through."""
    sitting = {"desk_height": draw(maybe(st.integers(500, 850))), "seat_height": draw(maybe(st.integers(330, 560)))}
    read = {
        "name": "drawn",
        "van": draw(vans()),
        "sleeper": draw(sleepers()),
        "bed": draw(beds()),
        "sitting": {key: value for key, value in sitting.items() if value is not None}
        | {"keyboard": draw(st.booleans())},
        "rules": {"thigh_gap": draw(st.integers(0, 60)), "entry_slot": draw(st.integers(150, 800))},
    }
    try:
        return Brief.model_validate(read)
    except ValidationError:
        assume(False)
        raise


def sized_or_none(brief: Brief) -> Sized | None:
    """The numbers, or none where the brief is refused in words; any other error fails the test."""
    try:
        return size(brief)
    except ParametricError as error:
        refused(error)
        return None


def refused(error: ParametricError) -> None:
    """A refusal is a sentence."""
    assert len(str(error)) > 30


def promises(sized: Sized) -> None:
    """What every design keeps, whatever fails in it."""
    brief, dims, body = sized.brief, sized.dimensions, sized.people.at_desk
    h, le, w, legs = dims.heights, dims.lengths, dims.widths, dims.legs

    assert h.seat == pytest.approx(h.platform + h.mattress - brief.bed.mattress.sink_seated)
    assert h.storage < h.platform
    assert brief.sitting.desk_height is not None or h.platform < h.desk
    assert {b - a for a, b in pairwise(dims.steps)} <= {20.0}
    assert dims.steps[0] == h.desk_low <= h.desk < h.desk_high == dims.steps[-1]
    assert h.desk in dims.steps

    assert le.near >= le.belly - 0.5  # whole mm
    assert le.parked >= le.near
    assert le.back + body.mean["buttock_popliteal_length"] == pytest.approx(le.seat_front + 60.0)
    assert le.rear < le.middle < le.front < le.seat_front
    assert le.extension == pytest.approx(le.panel_depth + 3.0)
    assert le.rear + le.bed <= brief.van.length_night - 5.0 + 1e-6

    assert legs.far - legs.near >= LEAST_APART - 1e-6
    assert legs.overlap >= least_overlap(dims.sections.leg)
    assert legs.upper >= 180.0
    assert w.right < w.place < w.left
    assert w.left - w.right == pytest.approx(brief.bed.width)
    assert w.panel_length > 0.0


def wishes(sized: Sized) -> None:
    """What was asked for is kept, to half a millimetre where heights are whole."""
    bed, sitting, dims = sized.brief.bed, sized.brief.sitting, sized.dimensions
    if bed.platform_height is not None:
        assert dims.heights.platform == pytest.approx(bed.platform_height, abs=0.5)
    elif sitting.seat_height is not None:
        assert dims.heights.seat == pytest.approx(sitting.seat_height, abs=0.5)
    if sitting.desk_height is not None:
        assert dims.heights.desk == sitting.desk_height
    if bed.platform_length is not None:
        assert dims.lengths.platform == bed.platform_length
    if bed.length is not None and bed.length <= sized.brief.van.length_night - dims.lengths.rear - 5.0:
        assert dims.lengths.bed == bed.length


def sized_or_refused(brief: Brief) -> None:
    """Finite figures, promises and wishes kept, or a refusal in words."""
    sized = sized_or_none(brief)
    if sized is None:
        return
    assert all(c.value is None or math.isfinite(c.value) for c in sized.checks)
    assert all(c.short > 0.0 and c.demands for c in sized.clashes)
    promises(sized)
    wishes(sized)


def freed(brief: Brief) -> None:
    """Every way out of a clash frees it."""
    sized = sized_or_none(brief)
    for clash in sized.clashes if sized else ():
        for way in clash.ways:
            if way.changes:
                after = changed(brief, way.changes)
                assert after is not None, way.says
                assert clash.about not in {c.about for c in size(after).clashes}, way.says


def built_or_refused(brief: Brief) -> None:
    """Furniture that is judged in every mode, or a refusal in words."""
    try:
        checked = check(brief)
    except ParametricError as error:
        refused(error)
        return
    modes = set(checked.assembly.mechanism.modes)
    assert {c.mode for c in checked.checks if c.id == "fit.interference"} == modes
    assert {c.verdict for c in checked.checks} <= set(Verdict)


@drawn(80)
def test_a_legal_brief_is_sized_as_promised_or_refused_in_words(brief: Brief) -> None:
    sized_or_refused(brief)


@drawn(20)
def test_every_way_out_of_a_clash_frees_it(brief: Brief) -> None:
    freed(brief)


@drawn(3)
def test_furniture_is_built_or_refused_in_words(brief: Brief) -> None:
    built_or_refused(brief)


@pytest.mark.heavy
@drawn(1000)
def test_a_thousand_briefs_are_sized_or_refused(brief: Brief) -> None:
    sized_or_refused(brief)


@pytest.mark.heavy
@drawn(300)
def test_ways_out_of_many_clashes_free_them(brief: Brief) -> None:
    freed(brief)


@pytest.mark.heavy
@drawn(40)
def test_furniture_of_many_is_built_or_refused(brief: Brief) -> None:
    built_or_refused(brief)
