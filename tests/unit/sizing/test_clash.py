"""Clashes are told with their millimetres, and every way out is both enough and no more than enough."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from parametric.brief.change import changed
from parametric.brief.loader import parse
from parametric.brief.model import Brief
from parametric.pipeline.size import size
from parametric.sizing.clash import Clash, Way

VAN = """
name = "clash"
[van]
length_day = 3400
ceiling = 2100
wall = [[0, 1900], [2100, 1800]]
[[van.opening]]
name = "rear door"
kind = "rear"
width = 1500
height = 1700
way_out = true
[[sleeper]]
sex = "male"
stature = 1980
mass = 92
shoes = 10
[bed]
width = 1100
"""

# name of the clash, changes that bring it about, least number of ways out
CASES: tuple[tuple[str, Mapping[str, Any], int], ...] = (
    ("head room", {"van.ceiling": 1490.0}, 2),
    ("seat too low", {"bed.platform_height": 300.0}, 2),
    ("seat too high", {"bed.platform_height": 560.0}, 1),
    ("thigh room", {"sitting.desk_height": 690.0}, 2),
    ("desk over the elbow", {"sitting.desk_height": 860.0}, 1),
    ("desk under the elbow", {"sitting.desk_height": 700.0}, 1),
    ("sleeping length", {"van.length_day": 2130.0, "van.length_night": 2130.0}, 2),
    ("bed too short", {"bed.length": 2000.0}, 1),
    ("foot room", {"van.length_day": 2000.0, "van.length_night": 2400.0, "bed.platform_length": 1560.0}, 2),
    ("way in to the seat", {"van.length_day": 2350.0, "van.wall": [[0.0, 1500.0], [2100.0, 1500.0]]}, 2),
    ("storage height", {"bed.storage_height": 420.0}, 1),
    ("way out of bed", {"van.length_night": 2300.0, "van.wall": [[0.0, 1400.0], [2100.0, 1400.0]]}, 2),
    ("door", {"van.opening": [{"name": "hatch", "kind": "side", "width": 520.0, "height": 400.0}]}, 1),
    ("lids under the ceiling", {"van.ceiling": 1200.0, "bed.length": 2500.0, "bed.platform_length": 1930.0}, 1),
)


def _base() -> Brief:
    return parse(VAN, "clash.toml")


def _brought_about(changes: Mapping[str, Any]) -> Brief:
    brief = changed(_base(), changes)
    assert brief is not None
    return brief


def _find(brief: Brief, about: str) -> Clash | None:
    return next((c for c in size(brief).clashes if c.about == about), None)


def test_a_roomy_van_has_no_clash() -> None:
    assert size(_base()).clashes == ()


@pytest.mark.parametrize(("about", "changes", "ways"), CASES, ids=[c[0] for c in CASES])
def test_every_way_out_is_enough_and_tight(about: str, changes: Mapping[str, Any], ways: int) -> None:
    brief = _brought_about(changes)
    clash = _find(brief, about)
    assert clash is not None
    assert clash.short > 0.0
    assert f"{clash.short:.0f} short" in clash.says
    tried = [way for way in clash.ways if way.changes]
    assert len(tried) >= ways
    for way in tried:
        after = changed(brief, way.changes)
        assert after is not None
        assert _find(after, about) is None, way.says
        less = changed(brief, _one_less(brief, way))
        assert less is not None
        assert _find(less, about) is not None, f"1 mm less than {way.says} would do"


def test_head_room_of_the_worked_example() -> None:
    """Worked by hand: seat 505, sitting height 1017, 50 clearance and a ceiling of 1490 miss by 82; the seat lowered
    by 82 turns a thigh of 430 to 490 by 9.6 to 11 degrees, leaning back about the hip takes 24 degrees."""
    text = VAN.replace("ceiling = 2100", "ceiling = 1490").replace("wall = [[0, 1900], [2100, 1800]]", WALL_1490)
    brief_measured = changed(
        parse(text, "clash.toml"),
        {
            "sleeper": [
                {
                    "sex": "male",
                    "stature": 1980.0,
                    "shoes": 10.0,
                    "measured": {"sitting_height": 1017.0, "popliteal_height": 505.0},
                }
            ]
        },
    )
    assert brief_measured is not None
    clash = _find(brief_measured, "head room")
    assert clash is not None
    assert clash.demands == ("seat 505", "sitting height 1017", "clearance 50")
    assert clash.short == pytest.approx(82.0)
    told = clash.says
    assert "seat 423 with knees at 80 degrees" in told or "seat 423 with knees at 79 degrees" in told
    recline = next(w.says for w in clash.ways if w.says.startswith("recline"))
    assert recline in ("recline 23 degrees", "recline 24 degrees")


WALL_1490 = "wall = [[0, 1900], [1490, 1850]]"


def _one_less(brief: Brief, way: Way) -> dict[str, Any]:
    """The same way, one millimetre nearer to the brief."""
    out: dict[str, Any] = {}
    data = brief.model_dump()
    for key, value in way.changes.items():
        if key == "van.roof":
            out[key] = {**value, "front": value["front"] - 1.0, "rear": value["rear"] - 1.0}
            continue
        *tables, last = key.split(".")
        table = data
        for name in tables:
            table = table[name]
        now = table[last]
        if now is None:
            now = _resolved(brief, key)
        out[key] = value - 1.0 if value > now else value + 1.0
    return out


def _resolved(brief: Brief, key: str) -> float:
    """What a wish that is not made comes to."""
    dims = size(brief).dimensions
    return {
        "sitting.seat_height": dims.heights.seat,
        "sitting.desk_height": dims.heights.desk,
        "bed.platform_length": dims.lengths.platform,
        "bed.length": dims.lengths.bed,
    }[key]
