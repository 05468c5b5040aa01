from __future__ import annotations

from dataclasses import replace

import pytest

from parametric.assembly.placed import Assembly, assemble, world_poses
from parametric.core.pose import at, turn
from parametric.mechanism.model import VAN, Placement, frozen_map
from parametric.mechanism.part import PartDesign, mass


def placements(**on: str) -> dict[str, Placement]:
    """Parts, each 100 further along x than what it stands on."""
    return {part: Placement(part, base, at(100.0, 0.0, 0.0)) for part, base in on.items()}


def test_a_part_is_placed_through_all_it_stands_on() -> None:
    poses = world_poses(placements(rail=VAN, lid="rail", slat="lid"))
    assert [p.translation[0] for p in poses.values()] == [100.0, 200.0, 300.0]


def test_the_order_of_placements_is_no_matter() -> None:
    poses = world_poses(placements(slat="lid", lid="rail", rail=VAN))
    assert poses["slat"].translation[0] == 300.0


def test_a_turned_base_turns_what_stands_on_it() -> None:
    lid = Placement("lid", VAN, turn((0.0, 0.0, 1.0), 90.0))
    poses = world_poses({"lid": lid, "slat": Placement("slat", "lid", at(10.0, 0.0, 0.0))})
    assert poses["slat"].translation == (0.0, 10.0, 0.0)


def test_a_circle_is_told_with_its_parts() -> None:
    with pytest.raises(ValueError, match="lid on slat on lid: not placed on the van in the end"):
        world_poses(placements(lid="slat", slat="lid"))


def test_a_part_on_nothing_is_told() -> None:
    with pytest.raises(ValueError, match="slat on lid: not placed"):
        world_poses(placements(slat="lid"))


def test_equal_parts_share_a_number_in_order_of_assembly(assembly: Assembly) -> None:
    items = assembly.items
    assert [i.number for i in items.values()] == [f"{101 + k}" for k in range(len(items))]
    assert items["rail"].instances == ("rail left", "rail right")
    assert {name for i in items.values() for name in i.instances} == set(assembly.mechanism.parts)


def test_mass_counts_every_piece(assembly: Assembly, designs: dict[str, PartDesign]) -> None:
    pieces = [mass(d) for d in assembly.mechanism.parts.values()]
    assert assembly.mass == pytest.approx(sum(pieces))
    assert assembly.items["rail"].mass == mass(designs["rail"])


def test_a_part_may_lie_elsewhere_in_each_mode(assembly: Assembly) -> None:
    assert assembly.poses["night"]["panel"].translation == (0.0, 0.0, 370.0)
    assert assembly.poses["desk/low"]["panel"].translation == (0.0, 0.0, 700.0)
    assert assembly.poses["desk/low"]["mattress é"] == assembly.poses["desk/low"]["panel"] @ at(0.0, 0.0, 17.6)


def test_one_name_for_two_designs_is_refused(assembly: Assembly) -> None:
    parts = dict(assembly.mechanism.parts)
    parts["rail right"] = replace(parts["rail right"], stock="45 x 95")
    with pytest.raises(ValueError, match="rail right: two different designs are called rail"):
        assemble(replace(assembly.mechanism, parts=frozen_map(parts)))


def test_poses_are_read_only(assembly: Assembly) -> None:
    with pytest.raises(TypeError, match="does not support item assignment"):
        assembly.poses["night"]["panel"] = at(0.0, 0.0, 0.0)  # type: ignore[index]
