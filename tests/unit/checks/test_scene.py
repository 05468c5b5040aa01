from __future__ import annotations

from parametric.checks.scene import pieces_of, scene
from parametric.core.shape import Shape as Recipe
from parametric.core.shape import Sphere
from parametric.mechanism.part import is_soft
from parametric.pipeline.check import Checked


def test_a_scene_holds_all_parts_where_they_are(sound: Checked) -> None:
    for each in sound.scenes:
        poses = sound.assembly.poses[each.mode.id]
        assert {n: p.pose for n, p in each.parts.items()} == dict(poses)


def test_one_mesh_a_design(sound: Checked) -> None:
    pieces = pieces_of(sound.assembly)
    assert set(pieces) == set(sound.assembly.items)
    night = sound.scenes[0]
    assert night.parts["rear_lid_slat_3"].piece is night.parts["rear_lid_slat_4"].piece


def test_soft_parts_and_foam(sound: Checked) -> None:
    parts = sound.assembly.mechanism.parts
    for each in sound.scenes:
        assert each.soft == {n for n, d in parts.items() if is_soft(d)}
        assert set(each.foam) == {"mattress_rear", "mattress_front", "mattress_end"}


def test_only_contacts_of_the_mode(sound: Checked) -> None:
    by_id = {s.mode.id: s for s in sound.scenes}
    assert any({c.a, c.b} == {"panel", "ledger"} for c in by_id["night"].contacts)
    assert not any({c.a, c.b} == {"panel", "ledger"} for c in by_id["desk"].contacts)


def test_the_van_stands_as_the_mode_says(sound: Checked) -> None:
    by_id = {s.mode.id: s for s in sound.scenes}
    assert "raised roof" in by_id["desk"].van
    assert "raised roof" not in by_id["night"].van


def test_people_are_as_given(sound: Checked) -> None:
    mode = sound.assembly.mechanism.modes["drive"]
    ball = Recipe((Sphere(50.0, (1000.0, 0.0, 900.0)),))
    made = scene(sound.assembly, pieces_of(sound.assembly), sound.sized.brief.van, mode, {"head": ball})
    assert set(made.bodies) == {"head"}
    assert set(sound.scenes[0].bodies)
