from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.checks.people import bodies_in, workplace
from parametric.mechanism.build import build
from parametric.meshes.mesh import solid
from parametric.pipeline.size import Sized, size

Make = Callable[..., Brief]


def bounds(sized: Sized, mode: str) -> dict[str, tuple[float, ...]]:
    """Boxes of the body segments in a mode: x0, y0, z0, x1, y1, z1."""
    mechanism = build(sized.brief, sized.dimensions)
    shapes = bodies_in(sized.people, sized.brief, sized.dimensions, mechanism.modes[mode])
    return {name: tuple(solid(shape).bounding_box()) for name, shape in shapes.items()}


def whole(boxes: dict[str, tuple[float, ...]]) -> tuple[list[float], list[float]]:
    """Box round all segments."""
    rows = list(boxes.values())
    return [min(r[i] for r in rows) for i in range(3)], [max(r[i + 3] for r in rows) for i in range(3)]


@pytest.mark.parametrize("mode", ["drive", "desk/parked", "access/front", "access/rear"])
def test_nobody_is_there_while_things_are_moved(sized: Sized, mode: str) -> None:
    assert bounds(sized, mode) == {}


def test_the_seated_body_is_as_tall_as_the_numbers_say(sized: Sized) -> None:
    lo, hi = whole(bounds(sized, "desk"))
    assert hi[2] == pytest.approx(sized.dimensions.heights.head, abs=3.0)
    assert lo[2] == pytest.approx(0.0, abs=1.0)
    assert lo[0] == pytest.approx(sized.dimensions.lengths.back, abs=25.0)


def test_the_body_sits_in_the_middle_of_the_bed(sized: Sized) -> None:
    lo, hi = whole(bounds(sized, "lounge"))
    assert (lo[1] + hi[1]) / 2.0 == pytest.approx(sized.dimensions.widths.place, abs=1.0)


@pytest.mark.parametrize(("mode", "desk"), [("desk", True), ("desk/high", True), ("lounge", False)])
def test_there_is_a_desk_in_the_modes_that_have_one(sized: Sized, mode: str, desk: bool) -> None:
    modes = build(sized.brief, sized.dimensions).modes
    place = workplace(sized.people, sized.dimensions, modes[mode])
    assert place.desk == (sized.dimensions.desk_at(mode) if desk else None)
    assert place.seat == sized.dimensions.heights.seat


def test_the_sleeper_lies_within_the_bed_sunk_into_the_foam(sized: Sized) -> None:
    lo, hi = whole(bounds(sized, "night"))
    le, w, h = sized.dimensions.lengths, sized.dimensions.widths, sized.dimensions.heights
    assert le.rear <= lo[0] < hi[0] <= le.rear + le.bed
    assert w.right <= lo[1] < hi[1] <= w.left
    assert lo[2] == pytest.approx(h.platform + h.mattress - 25.0, abs=1.0)


def test_two_lie_side_by_side_without_meeting(demo: Make) -> None:
    two: list[dict[str, Any]] = [
        {"name": "A", "sex": "male", "stature": 1900},
        {"name": "B", "sex": "female", "stature": 1650, "works": False},
    ]
    sized = size(demo(sleeper=two, bed={"width": 1100}))
    boxes = bounds(sized, "night")
    first = whole({n: b for n, b in boxes.items() if n.startswith("sleeper 1 ")})
    second = whole({n: b for n, b in boxes.items() if n.startswith("sleeper 2 ")})
    assert len(boxes) == 2 * sum(n.startswith("sleeper 1 ") for n in boxes)
    assert first[1][1] <= second[0][1] + 30.0


@pytest.mark.parametrize("head", ["front", "rear"])
def test_the_head_lies_where_it_is_wanted(demo: Make, head: str) -> None:
    sized = size(demo(bed={"head": head}))
    boxes = bounds(sized, "night")
    crown = boxes["head"]
    middle = sized.dimensions.lengths.rear + sized.dimensions.lengths.bed / 2.0
    assert ((crown[0] + crown[3]) / 2.0 > middle) == (head == "front")
