from __future__ import annotations

from dataclasses import replace

import pytest

from parametric.core.errors import RefusedError
from parametric.core.pose import Pose, at, turn
from parametric.core.shape import Cylinder, Shape
from parametric.mechanism.draft import Draft, ModeSpec, X, Y, Z, bar, laid
from parametric.mechanism.extent import extent
from parametric.mechanism.model import VAN, Contact, ContactKind, Release, Use, VanState
from parametric.mechanism.part import Bar, Bought, Hole

DAY = VanState(roof_up=True, length=2000.0)
DOWN = (0.0, 0.0, -1.0)


@pytest.fixture
def draft() -> Draft:
    return Draft([ModeSpec(id=id, van=DAY, use=Use.NOBODY) for id in ("night", "desk")])


def slat() -> Bar:
    """A slat of 600 x 70 x 20."""
    return bar("slat", 600.0, (70.0, 20.0), "C24", 420.0)


def batten() -> Bar:
    """A batten of 800 x 28 x 45."""
    return bar("batten", 800.0, (28.0, 45.0), "C24", 420.0)


def holes(draft: Draft, name: str) -> tuple[Hole, ...]:
    """Holes of a finished piece."""
    design = draft.freeze().parts[name]
    assert isinstance(design, Bar)
    return design.holes


@pytest.mark.parametrize(
    ("x_to", "y_to", "size"),
    [
        (X, Y, (600.0, 70.0, 20.0)),
        (Y, (-1.0, 0.0, 0.0), (70.0, 600.0, 20.0)),
        (Z, Y, (20.0, 70.0, 600.0)),
        (Y, Z, (20.0, 600.0, 70.0)),
    ],
)
def test_a_part_is_laid_with_its_lower_corner_where_it_is_told(
    x_to: tuple[float, float, float], y_to: tuple[float, float, float], size: tuple[float, float, float]
) -> None:
    lo, hi = extent(slat(), laid(slat(), (10.0, 20.0, 30.0), x_to, y_to))
    assert lo == (10.0, 20.0, 30.0)
    assert tuple(b - a for a, b in zip(lo, hi, strict=True)) == size


def test_a_hole_given_in_the_van_lands_in_the_part(draft: Draft) -> None:
    draft.add("slat", slat(), laid(slat(), (100.0, -300.0, 400.0), Y, (-1.0, 0.0, 0.0)))
    draft.bore("slat", Hole(at=(135.0, -280.0, 420.0), into=DOWN, diameter=5.0, depth=20.0, through=True))
    (hole,) = holes(draft, "slat")
    assert hole.at == (20.0, 35.0, 20.0)  # 20 from its end, in the middle of its width, on top
    assert hole.into == DOWN


def test_screws_share_one_axis_in_both_parts(draft: Draft) -> None:
    draft.add("batten", batten(), at(0.0, 100.0, 355.0))
    draft.add("slat", slat(), laid(slat(), (50.0, -100.0, 400.0), Y, (-1.0, 0.0, 0.0)))
    joined = draft.screw("4x40", "slat", "batten", [(67.0, 114.0, 420.0), (103.0, 114.0, 420.0)], DOWN)
    assert joined.count == 2
    assert "4" in joined.designation
    clear, pilot = holes(draft, "slat"), holes(draft, "batten")
    assert [h.at for h in pilot] == [(67.0, 14.0, 45.0), (103.0, 14.0, 45.0)]
    assert {(h.depth, h.through) for h in clear} == {(20.0, True)}
    assert {(h.depth, h.through) for h in pilot} == {(20.0, False)}  # 40 long, 20 of it in the slat
    assert all(c.diameter > p.diameter for c, p in zip(clear, pilot, strict=True))
    assert all(c.head > c.diameter for c in clear)


def test_a_screw_may_be_driven_up_or_sideways(draft: Draft) -> None:
    draft.add("a", batten(), at(0.0, 0.0, 0.0))
    draft.add("b", batten(), at(0.0, 28.0, 0.0))
    draft.screw("4x45", "b", "a", [(100.0, 56.0, 20.0)], (0.0, -1.0, 0.0))
    (clear,), (pilot,) = holes(draft, "b"), holes(draft, "a")
    assert (clear.at, clear.depth) == ((100.0, 28.0, 20.0), 28.0)
    assert (pilot.at, pilot.depth) == ((100.0, 28.0, 20.0), 17.0)


def test_a_thin_part_is_not_countersunk(draft: Draft) -> None:
    thin = replace(batten(), height=6.0)
    draft.add("thin", thin, at(0.0, 0.0, 45.0))
    draft.add("batten", batten(), at(0.0, 0.0, 0.0))
    draft.screw("4x40", "thin", "batten", [(100.0, 14.0, 51.0)], DOWN)
    assert holes(draft, "thin")[0].head == 0.0


def test_the_van_gets_no_pilot_hole(draft: Draft) -> None:
    draft.add("cleat", batten(), at(0.0, 0.0, 400.0))
    assert draft.screw("5x70", "cleat", VAN, [(100.0, 28.0, 420.0)], (0.0, -1.0, 0.0)).count == 1
    assert len(holes(draft, "cleat")) == 1


def test_equal_pieces_share_a_design_and_others_get_a_letter(draft: Draft) -> None:
    for k in range(4):
        draft.add(f"slat_{k}", slat(), at(100.0 * k, 0.0, 0.0))
    for k in (1, 3):
        draft.bore(f"slat_{k}", Hole(at=(100.0 * k + 20.0, 35.0, 20.0), into=DOWN, diameter=5.0, depth=12.0))
    draft.bore("slat_2", Hole(at=(230.0, 35.0, 20.0), into=DOWN, diameter=5.0, depth=12.0))
    parts = draft.freeze().parts
    assert [p.name for p in parts.values()] == ["slat", "slat_b", "slat_c", "slat_b"]
    assert parts["slat_1"] == parts["slat_3"]


def test_the_order_of_drilling_does_not_make_parts_differ(draft: Draft) -> None:
    def hole(x: float) -> Hole:
        return Hole(at=(x, 35.0, 20.0), into=DOWN, diameter=5.0, depth=12.0)

    for name, order in (("a", (20.0, 60.0)), ("b", (60.0, 20.0))):
        draft.add(name, slat(), Pose())
        for x in order:
            draft.bore(name, hole(x))
    parts = draft.freeze().parts
    assert parts["a"] == parts["b"]


def test_noise_of_a_turned_placement_does_not_make_parts_differ(draft: Draft) -> None:
    for k, pose in enumerate((at(0.1, 0.2, 0.3), turn(Z, 33.3).moved(7.7, 1.1, 0.3))):
        draft.add(f"slat_{k}", slat(), pose)
        draft.bore(f"slat_{k}", Hole(at=pose.point((20.0, 35.0, 20.0)), into=DOWN, diameter=5.0, depth=12.0))
    assert len(set(draft.freeze().parts.values())) == 1


def test_a_bought_part_is_not_drilled(draft: Draft) -> None:
    pin = Bought(
        name="pin",
        material="steel",
        stock="p",
        density=7850.0,
        designation="pin",
        mass=0.1,
        shape=Shape((Cylinder(3.0, 30.0),)),
        envelope_volume=1.0,
    )
    draft.add("pin", pin, Pose())
    draft.bore("pin", Hole(at=(0.0, 0.0, 30.0), into=DOWN, diameter=2.0, depth=5.0))
    with pytest.raises(ValueError, match="pin: a bought or soft part is not drilled"):
        draft.freeze()


def test_a_piece_follows_what_it_rides_on(draft: Draft) -> None:
    draft.add("lid", batten(), at(0.0, 0.0, 300.0))
    draft.add("slat", slat(), at(10.0, 0.0, 345.0), "lid")
    draft.move("lid", ("desk",), turn(Z, 90.0).moved(dz=500.0))
    assert draft.world("slat", "night") == at(10.0, 0.0, 345.0)
    assert draft.world("slat", "desk") == turn(Z, 90.0).moved(0.0, 10.0, 545.0)
    modes = draft.freeze().modes
    assert {m.placements["slat"].on for m in modes.values()} == {"lid"}
    assert modes["night"].placements["slat"].pose == at(10.0, 0.0, 45.0)


def test_a_piece_may_leave_what_it_rides_on(draft: Draft) -> None:
    draft.add("lid", batten(), Pose())
    draft.add("slat", slat(), at(0.0, 0.0, 45.0), "lid")
    draft.move("slat", ("desk",), at(0.0, 0.0, 900.0))
    desk = draft.freeze().modes["desk"].placements["slat"]
    assert (desk.on, desk.pose) == (VAN, at(0.0, 0.0, 900.0))


def contact(draft: Draft) -> Contact:
    """The one contact of a draft."""
    (found,) = draft.freeze().contacts
    return found


def test_a_touch_knows_where_it_is_in_the_frame_of_the_holder(draft: Draft) -> None:
    draft.add("batten", batten(), laid(batten(), (0.0, 100.0, 355.0), Y, (-1.0, 0.0, 0.0)))
    draft.add("slat", slat(), at(-300.0, 200.0, 400.0))
    draft.touch(ContactKind.RESTS, "slat", "batten", release=Release.HAND)
    found = contact(draft)
    # the batten's x runs along van y: 200..270 there is 100..170 of it
    assert found.at == (135.0, 14.0, 45.0)
    assert found.normal == (0.0, 0.0, 1.0)
    assert sorted(found.patch) == [28.0, 70.0]
    assert found.resists == frozenset({"-n"})
    assert found.modes is None


def test_a_touch_with_the_van_lies_at_the_foot_of_the_part(draft: Draft) -> None:
    draft.add("post", batten(), laid(batten(), (100.0, 200.0, 0.0), Z, Y))
    draft.touch(ContactKind.RESTS, "post", VAN, normal=Z)
    found = contact(draft)
    assert found.at == (122.5, 214.0, 0.0)
    assert found.patch == (45.0, 28.0)


def test_a_touch_with_a_wall_lies_on_the_wall(draft: Draft) -> None:
    draft.add("cleat", batten(), at(100.0, -700.0, 400.0))
    draft.touch(ContactKind.SCREWED, "cleat", VAN, normal=Y)
    found = contact(draft)
    assert found.at == (500.0, -700.0, 422.5)
    assert found.patch == (800.0, 45.0)
    assert "m" in found.resists


def test_a_touch_in_some_modes_is_measured_in_one_of_them(draft: Draft) -> None:
    draft.add("a", batten(), at(0.0, 0.0, 0.0))
    draft.add("b", batten(), at(0.0, 0.0, 900.0))
    draft.move("b", ("desk",), at(0.0, 0.0, 45.0))
    draft.touch(ContactKind.RESTS, "b", "a", ("desk",))
    assert contact(draft).at[2] == 45.0
    assert contact(draft).holds_in("desk")
    assert not contact(draft).holds_in("night")


def test_a_blind_hole_that_comes_out_is_refused_by_name(draft: Draft) -> None:
    draft.add("slat_1", slat(), Pose())
    out = Hole(at=(20.0, 35.0, 20.0), into=DOWN, diameter=5.0, depth=20.0, purpose="pilot")
    with pytest.raises(RefusedError, match="slat_1, 70 x 20: the hole for "):
        draft.bore("slat_1", out)
