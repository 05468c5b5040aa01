"""Faults planted in sound furniture, one at a time: each is found by the name of its part, and nothing else is."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.core.check import Check, Verdict
from parametric.core.pose import Pose, turn
from parametric.core.shape import Box, Cylinder, Shape, rectangle
from parametric.mechanism.model import VAN, Contact, ContactKind, Mechanism, Placement, frozen_map
from parametric.mechanism.modes import DESKS, NIGHTS
from parametric.mechanism.part import Bar, Board, Bought, PartDesign, Tube
from parametric.pipeline.check import Checked, judge
from parametric.pipeline.check import check as judged_brief
from parametric.pipeline.size import size

Judge = Callable[[Mechanism], Checked]


def fails(checked: Checked) -> list[Check]:
    """What failed, told once: a clash of demands repeats a check in other words."""
    return [c for c in checked.checks if c.verdict is Verdict.FAIL and not c.id.startswith("clash.")]


def ids(checks: Iterable[Check]) -> set[str]:
    """Their codes."""
    return {c.id for c in checks}


def accused(checks: Iterable[Check]) -> set[str]:
    """Parts that every check names, so that the culprit is among them."""
    named = [set(c.parts) for c in checks]
    return set.intersection(*named) if named else set()


def with_design(mechanism: Mechanism, name: str, design: PartDesign) -> Mechanism:
    """One piece made otherwise; its fellows stay as they were."""
    parts = {**mechanism.parts, name: replace(design, name=f"{design.name}_faulty")}
    return replace(mechanism, parts=frozen_map(parts))


def moved(mechanism: Mechanism, name: str, change: Callable[[Pose], Pose], modes: Iterable[str] = ()) -> Mechanism:
    """One piece put elsewhere in some modes, or in all."""
    chosen = tuple(modes) or tuple(mechanism.modes)
    out = dict(mechanism.modes)
    for id in chosen:
        here = out[id].placements[name]
        placements = {**out[id].placements, name: Placement(name, here.on, change(here.pose))}
        out[id] = replace(out[id], placements=frozen_map(placements))
    return replace(mechanism, modes=frozen_map(out))


def without(mechanism: Mechanism, gone: Callable[[Contact], bool]) -> Mechanism:
    """Some contacts not declared."""
    return replace(mechanism, contacts=tuple(c for c in mechanism.contacts if not gone(c)))


def bar(mechanism: Mechanism, name: str) -> Bar:
    """A piece of timber."""
    design = mechanism.parts[name]
    assert isinstance(design, Bar)
    return design


def test_without_a_fault_nothing_fails(sound: Checked) -> None:
    assert fails(sound) == []


def test_the_cautions_of_the_demo_are_these(sound: Checked) -> None:
    """A demo tuned to silence would show here."""
    cautions = {(c.id, c.mode) for c in sound.checks if c.verdict is Verdict.CAUTION}
    assert cautions == {
        ("comfort.back_support", "desk"),
        ("comfort.desk_height", "desk/low"),
        ("comfort.head_room_roof_shut", "lounge"),
        ("posture.gaze", "desk"),
        ("posture.rula", "desk"),
        ("sleep.ventilation", "night"),
        ("access.entry_slot", "desk/parked"),
    }


def test_a_slat_3_too_long_touches_the_rail(judged: Judge, mechanism: Mechanism) -> None:
    slat = bar(mechanism, "rear_lid_slat_3")
    found = fails(judged(with_design(mechanism, "rear_lid_slat_3", replace(slat, length=slat.length + 3.0))))
    assert ids(found) == {"fit.clearance"}
    assert accused(found) >= {"rear_lid_slat_3"}
    assert {part for c in found for part in c.parts} <= {"rear_lid_slat_3", "left_rail", "right_rail"}
    assert "night" in {c.mode for c in found}


def test_a_slat_6_too_long_is_inside_the_rail(judged: Judge, mechanism: Mechanism) -> None:
    slat = bar(mechanism, "rear_lid_slat_3")
    found = fails(judged(with_design(mechanism, "rear_lid_slat_3", replace(slat, length=slat.length + 6.0))))
    assert "fit.interference" in ids(found)
    assert accused(found) in ({"rear_lid_slat_3", "left_rail"}, {"rear_lid_slat_3", "right_rail"})


@pytest.mark.parametrize("shift", [20.0, -20.0])
def test_a_leg_hole_one_step_off_meets_its_pin(judged: Judge, mechanism: Mechanism, shift: float) -> None:
    name = "leg_far_lower_night"
    tube = mechanism.parts[name]
    assert isinstance(tube, Tube)
    first, *rest = tube.holes
    x, y, z = first.at
    faulty = replace(tube, holes=(replace(first, at=(x + shift, y, z)), *rest))
    found = fails(judged(with_design(mechanism, name, faulty)))
    assert "fit.interference" in ids(found)
    assert accused(found) == {name, next(p for c in found for p in c.parts if p.startswith("leg_far_pin"))}
    assert {c.mode for c in found} == set(NIGHTS)


def test_a_desk_stage_drilled_one_step_off_fails_at_the_desk_only(judged: Judge, mechanism: Mechanism) -> None:
    name = "leg_near_lower_desk"
    tube = mechanism.parts[name]
    assert isinstance(tube, Tube)
    lifted = tuple(replace(h, at=(h.at[0] + 10.0, h.at[1], h.at[2])) for h in tube.holes)
    found = fails(judged(with_design(mechanism, name, replace(tube, holes=lifted))))
    assert name in accused(found)
    assert {c.mode for c in found} == set(DESKS)
    assert all(part.startswith("leg_near") for c in found for part in c.parts)


def test_a_night_cleat_2_low_does_not_touch_the_panel(judged: Judge, mechanism: Mechanism) -> None:
    found = fails(judged(moved(mechanism, "night_cleat", lambda pose: pose.moved(dz=-2.0))))
    assert ids(found) == {"fit.contact"}
    assert {(c.parts, c.mode) for c in found} == {(("panel", "night_cleat"), mode) for mode in NIGHTS}
    assert all(c.value == pytest.approx(2.0) for c in found)
    assert "panel should touch night_cleat and is 2.0 away" in {c.says for c in found}


def test_a_desk_cleat_2_low_does_not_carry_the_panel(judged: Judge, mechanism: Mechanism) -> None:
    found = fails(judged(moved(mechanism, "desk_cleat", lambda pose: pose.moved(dz=-2.0), DESKS)))
    assert ("desk_cleat", "panel") in {tuple(sorted(c.parts)) for c in found if c.id == "fit.interference"}
    # what rides on the cleat is led astray with it
    riders = {"desk_cleat", "locking_pin"} | {p for p in mechanism.parts if p.startswith("cleat_bolt")}
    assert all(set(c.parts) & riders for c in found)
    assert {c.mode for c in found} <= set(DESKS)


def test_a_panel_too_wide_for_the_tapering_wall(judged: Judge, mechanism: Mechanism) -> None:
    panel = mechanism.parts["panel"]
    assert isinstance(panel, Board)
    xs = [e.end[0] for e in panel.outline.edges]
    ys = [e.end[1] for e in panel.outline.edges]
    wide = replace(panel, outline=rectangle(0.0, -30.0, max(xs), max(ys)))
    found = fails(judged(with_design(mechanism, "panel", wide)))
    walls = [c for c in found if c.id == "fit.van"]
    assert {c.mode for c in walls} >= set(NIGHTS)
    assert all(c.parts[0] == "panel" and c.parts[1].startswith("right wall") for c in walls)
    assert accused(found) == {"panel"}


def test_a_van_that_tapers_more_than_measured(demo: Callable[..., Brief], mechanism: Mechanism) -> None:
    """The same furniture in a van 12 narrower at desk height on each side: only what is there is accused."""
    sized = size(demo())
    narrow = demo(van={"wall": [[0, 1500], [500, 1500], [700, 1460], [900, 1456], [1320, 1420]]})
    found = [c for c in fails(judge(replace(sized, brief=narrow), mechanism)) if c.id != "fit.fixing_ground"]
    assert ids(found) == {"fit.van"}
    parts = {c.parts[0] for c in found}
    assert {"upright_1", "desk_cleat"} & parts
    assert not parts & {"night_cleat", "ledger", "rear_right_post", "leg_near_upper"}


def test_a_ceiling_10_too_low(demo: Callable[..., Brief], sized: Any) -> None:
    crown = sized.dimensions.heights.head

    def head_room(spare: float) -> list[Check]:
        brief = demo(van={"roof": {"front": crown + 50.0 + spare, "rear": crown + 50.0 + spare}})
        return fails(judged_brief(brief))

    assert head_room(5.0) == []
    low = head_room(-5.0)
    assert {(c.id, c.mode) for c in low} == {("comfort.head_room", "desk"), ("comfort.head_room", "lounge")}
    assert all(c.margin == pytest.approx(-5.0) for c in low)


@pytest.mark.parametrize("name", ["strap_2", "front_left_post", "ledger_dowel_1", "leg_far_lower_desk_foot"])
def test_a_part_with_no_contact_floats(judged: Judge, mechanism: Mechanism, name: str) -> None:
    found = fails(judged(without(mechanism, lambda c: name in (c.a, c.b))))
    floating = {c.parts[0] for c in found if c.id == "fit.support"}
    assert name in floating
    # what it alone held may float with it; nothing but this part is too near what it touches undeclared
    assert ids(found) <= {"fit.support", "fit.clearance"}
    assert all(name in c.parts for c in found if c.id == "fit.clearance")


def test_a_part_lifted_off_its_support_is_found_though_declared(judged: Judge, mechanism: Mechanism) -> None:
    found = fails(judged(moved(mechanism, "strap_1", lambda pose: pose.moved(dy=2.0))))
    assert ids(found) == {"fit.contact", "fit.support"}
    assert {c.parts[0] for c in found} == {"strap_1"}
    assert {c.mode for c in found} == set(mechanism.modes)


def test_what_rests_on_a_lifted_part_floats_too(judged: Judge, mechanism: Mechanism) -> None:
    lift = ("mattress_rear", "mattress_end")
    faulty = moved(mechanism, "mattress_rear", lambda pose: pose.moved(dz=4.0), ["desk/parked"])
    faulty = moved(faulty, "mattress_end", lambda pose: pose.moved(dz=4.0), ["desk/parked"])
    found = fails(judged(faulty))
    assert {c.parts[0] for c in found if c.id == "fit.support"} == set(lift)
    assert {c.parts[0] for c in found if c.id == "fit.contact"} == {"mattress_rear"}


def test_a_rotated_slat_hits_its_neighbours(judged: Judge, mechanism: Mechanism) -> None:
    def askew(pose: Pose) -> Pose:
        return pose @ turn((0.0, 0.0, 1.0), 8.0, (500.0, 35.0, 0.0))

    found = fails(judged(moved(mechanism, "rear_lid_slat_4", askew)))
    assert "fit.interference" in ids(found)
    assert accused(found) == {"rear_lid_slat_4"}
    assert {c.mode for c in found} == set(mechanism.modes)


def test_a_leg_turned_on_its_axis_misses_its_pins(judged: Judge, mechanism: Mechanism) -> None:
    half = 12.5

    def quarter(pose: Pose) -> Pose:
        return pose @ turn((1.0, 0.0, 0.0), 90.0, (0.0, half, half))

    found = fails(judged(moved(mechanism, "leg_far_lower_night", quarter, ["night"])))
    assert accused(found) == {"leg_far_lower_night"}
    assert {p for c in found for p in c.parts} == {"leg_far_lower_night", "leg_far_pin_1", "leg_far_pin_2"}


def test_a_bolt_too_long_reaches_into_the_wall(judged: Judge, mechanism: Mechanism) -> None:
    bolt = mechanism.parts["cleat_bolt_2_high"]
    assert isinstance(bolt, Bought)
    shank, head = bolt.shape.adds
    assert isinstance(shank, Cylinder)
    long = replace(bolt, shape=Shape((replace(shank, height=shank.height + 8.0), head)))
    found = fails(judged(with_design(mechanism, "cleat_bolt_2_high", long)))
    assert ids(found) == {"fit.van"}
    assert accused(found) >= {"cleat_bolt_2_high"}


def test_a_touch_nobody_declared_is_too_near(judged: Judge, mechanism: Mechanism) -> None:
    pair = {"right_rail", "front_right_post"}
    found = fails(judged(without(mechanism, lambda c: {c.a, c.b} == pair)))
    assert ids(found) == {"fit.clearance"}
    assert all(set(c.parts) == pair for c in found)
    assert len(found) == len(mechanism.modes)


def test_foam_pressed_deeper_than_declared(judged: Judge, mechanism: Mechanism) -> None:
    def deeper(contact: Contact) -> Contact:
        leaning = contact.kind is ContactKind.PRESSES and contact.modes == frozenset({"access/front"})
        return replace(contact, depth=0.5) if leaning else contact

    shy = replace(mechanism, contacts=tuple(deeper(c) for c in mechanism.contacts))
    closer = moved(shy, "mattress_front", lambda pose: pose.moved(dx=6.0), ["access/front"])
    found = [c for c in fails(judged(closer)) if "mattress_front" in c.parts]
    assert ids(found) == {"fit.interference"}
    assert {c.mode for c in found} == {"access/front"}
    assert all(c.parts[0].startswith("front_lid") for c in found)


def test_hard_into_foam_without_leave(judged: Judge, mechanism: Mechanism) -> None:
    found = fails(judged(moved(mechanism, "mattress_end", lambda pose: pose.moved(dz=-3.0), ["night"])))
    assert {(c.id, tuple(sorted(c.parts))) for c in found} == {("fit.interference", ("mattress_end", "panel"))}


def test_a_desk_60_lower_presses_the_thigh(demo: Callable[..., Brief], sized: Any) -> None:
    desk = sized.dimensions.heights.desk - 60.0
    found = fails(judged_brief(demo(sitting={"desk_height": desk})))
    body = [c for c in found if c.id == "fit.body"]
    assert body
    assert {c.mode for c in body} <= {"desk", "desk/low"}
    assert all("panel" in c.parts for c in body)
    assert any("thigh" in part for c in body for part in c.parts)
    told = {id for id in ids(found) if not id.startswith("posture.")}
    assert told == {"fit.body", "comfort.desk_height", "comfort.thigh_gap"}


def test_the_body_in_something_that_stays(demo: Callable[..., Brief]) -> None:
    box = {"name": "cabinet", "x": [1900, 2100], "y": [-300, -100], "z": [0, 250]}
    found = fails(judged_brief(demo(van={"fixed": [box]})))
    assert {part for c in found if c.id == "fit.body" for part in c.parts} >= {"cabinet"}
    assert {"fit.body", "comfort.foot_room"} <= ids(found)


def test_an_opening_too_small_names_what_stays_outside(demo: Callable[..., Brief]) -> None:
    hatch = {"name": "hatch", "kind": "rear", "width": 400, "height": 300}
    found = fails(judged_brief(demo(van={"opening": [hatch]})))
    assert {(c.id, c.parts) for c in found} == {("fit.opening", ("panel",))}


GROUND = {"surface": "right", "x": [0, 2600], "z": [250, 1000], "load": 600}


@pytest.mark.parametrize(
    ("van", "verdict", "parts", "says"),
    [
        ({"fixing": None}, Verdict.CAUTION, {"night_cleat", "upright_1", "upright_2", "upright_3"}, "does not say"),
        ({"fixing": [{**GROUND, "z": [250, 500]}]}, Verdict.FAIL, {"upright_1", "upright_2", "upright_3"}, "past"),
        ({"fixing": [{**GROUND, "x": [1700, 2600]}]}, Verdict.FAIL, {"night_cleat", "upright_1"}, "past"),
        (
            {"no_drill": [{"surface": "right", "x": [1600, 2000], "z": [380, 420], "reason": "curtain airbag"}]},
            Verdict.FAIL,
            {"night_cleat"},
            "nothing may be drilled: curtain airbag",
        ),
        ({"no_drill": [{"surface": "left", "x": [0, 2600], "z": [0, 1000]}]}, Verdict.PASS, None, "holds"),
    ],
    ids=["unknown", "too low", "too short", "airbag", "other wall"],
)
def test_what_it_is_screwed_to(
    demo: Callable[..., Brief], van: Mapping[str, Any], verdict: Verdict, parts: set[str] | None, says: str
) -> None:
    checks = [c for c in judged_brief(demo(van=van)).checks if c.id == "fit.fixing_ground"]
    assert len(checks) == 4
    told = [c for c in checks if c.verdict is verdict]
    assert parts is None or {p for c in told for p in c.parts} == parts
    assert all(says in c.says for c in told)
    assert told


def test_more_than_the_payload_left(demo: Callable[..., Brief]) -> None:
    (found,) = fails(judged_brief(demo(van={"payload": 40})))
    assert (found.id, found.max, found.unit) == ("ride.payload", 40.0, "kg")
    assert found.value is not None
    assert found.value > 40.0


def test_no_fault_hides_another(judged: Judge, mechanism: Mechanism) -> None:
    slat = bar(mechanism, "front_lid_slat_2")
    faulty = with_design(mechanism, "front_lid_slat_2", replace(slat, length=slat.length + 3.0))
    faulty = moved(faulty, "night_cleat", lambda pose: pose.moved(dz=-2.0))
    found = fails(judged(faulty))
    assert ids(found) == {"fit.clearance", "fit.contact"}


def test_a_part_wholly_inside_another_is_found(judged: Judge, mechanism: Mechanism) -> None:
    """No surfaces meet, so a test of surfaces alone would miss it."""
    ball = Bought(
        name="knot",
        material="steel",
        stock="s",
        density=1.0,
        designation="d",
        mass=0.1,
        shape=Shape((Box((0.0, 0.0, 0.0), (8.0, 8.0, 8.0)),)),
        envelope_volume=512.0,
    )
    inside = Pose((700.0, mechanism.modes["night"].placements["right_rail"].pose.translation[1] + 10.0, 380.0))
    modes = {
        id: replace(mode, placements=frozen_map({**mode.placements, "knot": Placement("knot", VAN, inside)}))
        for id, mode in mechanism.modes.items()
    }
    held = Contact(kind=ContactKind.SCREWED, a="knot", b="right_rail")
    faulty = replace(
        mechanism,
        parts=frozen_map({**mechanism.parts, "knot": ball}),
        modes=frozen_map(modes),
        contacts=(*mechanism.contacts, held),
    )
    found = fails(judged(faulty))
    assert {(c.id, frozenset(c.parts)) for c in found} == {("fit.interference", frozenset({"knot", "right_rail"}))}
