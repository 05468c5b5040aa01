from __future__ import annotations

from typing import Any

import pytest

from parametric.core.pose import Pose
from parametric.mechanism.model import VAN

PERSONS = {"seated", "kneeling", "standing", "outside"}


def test_they_name_modes_parts_and_joints_that_exist(built: Any) -> None:
    mechanism = built.mechanism
    joints = {j.name for j in mechanism.joints}
    for change in mechanism.change_overs:
        assert {change.start, change.end} <= set(mechanism.modes)
        assert change.moves
        for move in change.moves:
            assert set(move.parts) <= set(mechanism.parts)
            assert move.joint is None or move.joint in joints
            assert move.person in PERSONS
            assert move.hands in (1, 2)
            assert move.says.endswith(".")


def test_bed_and_desk_turn_into_each_other(built: Any) -> None:
    pairs = {(c.start, c.end) for c in built.mechanism.change_overs}
    assert {("night", "desk"), ("desk", "night"), ("night", "lounge"), ("lounge", "night")} <= pairs
    reached = {"night"}
    while more := {end for start, end in pairs if start in reached} - reached:
        reached |= more
    assert reached >= set(built.mechanism.modes) - {"desk/low", "desk/high"}


def carriers(built: Any, part: str, mode: str) -> set[str]:
    """A part and all it rides on."""
    out = set()
    while part != VAN:
        out.add(part)
        part = built.mechanism.modes[mode].placements[part].on
    return out


def apart(a: Pose, b: Pose) -> float:
    """How far two placements differ."""
    return max(abs(p - q) for p, q in zip((*a.translation, *a.rotation), (*b.translation, *b.rotation), strict=True))


def test_every_part_that_ends_elsewhere_is_moved_by_some_step(built: Any) -> None:
    for change in built.mechanism.change_overs:
        before, after = built.assembly.poses[change.start], built.assembly.poses[change.end]
        told = {part for move in change.moves for part in move.parts}
        forgotten = [
            part
            for part in built.mechanism.parts
            if apart(before[part], after[part]) > 1e-6
            and not told & (carriers(built, part, change.start) | carriers(built, part, change.end))
        ]
        assert forgotten == [], (change.start, change.end)


@pytest.mark.parametrize(
    ("start", "end"), [("desk", "desk/parked"), ("lounge", "access/front"), ("night", "access/rear")]
)
def test_a_guided_move_ends_where_its_joint_leads(built: Any, start: str, end: str) -> None:
    (change,) = (c for c in built.mechanism.change_overs if (c.start, c.end) == (start, end))
    guided = [m for m in change.moves if m.joint is not None]
    assert len(guided) == 1
    (joint,) = (j for j in built.mechanism.joints if j.name == guided[0].joint)
    before, after = built.assembly.poses[start], built.assembly.poses[end]
    assert apart(joint.pose(joint.high) @ before[joint.moving], after[joint.moving]) < 1e-6
    for part in guided[0].parts:
        assert apart(joint.pose(joint.high) @ before[part], after[part]) < 1e-6


def test_spare_stages_are_put_away_where_each_height_has_its_own(exchange: Any, telescopic: Any) -> None:
    def steps(built: Any, start: str, end: str) -> str:
        (change,) = (c for c in built.mechanism.change_overs if (c.start, c.end) == (start, end))
        return " ".join(m.says for m in change.moves)

    assert "night stages" in steps(exchange, "night", "desk")
    assert "desk stages" in steps(exchange, "desk", "night")
    assert "stages" not in steps(telescopic, "night", "desk")
