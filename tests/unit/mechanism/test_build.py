from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import pytest

from parametric.brief.model import Brief
from parametric.catalogue.screws import screw
from parametric.core.pose import Vec3
from parametric.mechanism.build import build
from parametric.mechanism.extent import extent
from parametric.mechanism.model import VAN, Contact, ContactKind
from parametric.mechanism.part import Bar, Board, Hole, Tube
from parametric.meshes.mesh import solid
from parametric.pipeline.size import size

FACE_TO_FACE = (ContactKind.RESTS, ContactKind.SCREWED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drilled:
    """A hole where it is in the van at night."""

    part: str
    hole: Hole
    at: Vec3
    into: Vec3

    @property
    def end(self) -> Vec3:
        """Where the drill stops."""
        x, y, z = (a + d * self.hole.depth for a, d in zip(self.at, self.into, strict=True))
        return x, y, z


def drilled(built: Any) -> Iterator[Drilled]:
    """Every hole of the furniture."""
    for name, design in built.mechanism.parts.items():
        if isinstance(design, Bar | Board | Tube):
            pose = built.assembly.poses["night"][name]
            for hole in design.holes:
                yield Drilled(part=name, hole=hole, at=pose.point(hole.at), into=pose.direction(hole.into))


def screwed(built: Any) -> set[frozenset[str]]:
    """Pairs that are screwed together."""
    return {frozenset((c.a, c.b)) for c in built.mechanism.contacts if c.kind is ContactKind.SCREWED}


def test_every_mode_places_every_part_and_nothing_else(built: Any) -> None:
    parts = set(built.mechanism.parts)
    for mode in built.mechanism.modes.values():
        assert set(mode.placements) == parts
        assert all(p.part == name for name, p in mode.placements.items())
        assert {p.on for p in mode.placements.values()} <= parts | {VAN}


def test_contacts_and_joints_name_parts_and_modes_that_exist(built: Any) -> None:
    parts, modes = set(built.mechanism.parts), set(built.mechanism.modes)
    for contact in built.mechanism.contacts:
        assert contact.a in parts
        assert contact.b in parts | {VAN}
        assert contact.a != contact.b
        assert contact.modes is None or (contact.modes and contact.modes <= modes)
    for joint in built.mechanism.joints:
        assert {joint.moving, joint.base} <= parts
        assert joint.low < joint.high
        assert math.hypot(*joint.axis) == 1.0


def test_the_furniture_can_be_made_twice_the_same(built: Any) -> None:
    assert build(built.brief, size(built.brief).dimensions) == built.mechanism


def box(built: Any, name: str, mode: str) -> tuple[Vec3, Vec3]:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


def found_in(built: Any, contact: Contact) -> str:
    """A mode in which a contact holds: the one its patch was taken in."""
    modes: list[str] = [mode for mode in built.mechanism.modes if contact.holds_in(mode)]
    return modes[0]


def test_normals_are_unit_axes_that_point_from_the_holder_to_the_held(built: Any) -> None:
    for contact in built.mechanism.contacts:
        assert math.hypot(*contact.normal) == pytest.approx(1.0), (contact.a, contact.b)
        if contact.b == VAN or contact.kind is ContactKind.PRESSES:
            continue
        mode = found_in(built, contact)
        a, b = box(built, contact.a, mode), box(built, contact.b, mode)
        normal = built.assembly.poses[mode][contact.b].direction(contact.normal)
        apart = sum(n * (a[0][i] + a[1][i] - b[0][i] - b[1][i]) for i, n in enumerate(normal))
        assert apart >= -1e-6, (contact.a, contact.b)


def test_faces_that_rest_or_are_screwed_lie_on_each_other(built: Any) -> None:
    """Pins, plugs and inserts lie inside the other part; all the others meet face to face on a patch."""
    seen = 0
    for contact in built.mechanism.contacts:
        if contact.kind not in FACE_TO_FACE or contact.b == VAN:
            continue
        mode = found_in(built, contact)
        a, b = box(built, contact.a, mode), box(built, contact.b, mode)
        if all(a[0][i] < b[1][i] - 1e-6 and b[0][i] < a[1][i] - 1e-6 for i in range(3)):
            continue
        if contact.gap > 0.0 and min(contact.patch) == 0.0:
            continue  # the stowed panel's edge beside a slat, which is let come near and carries nothing
        seen += 1
        pose = built.assembly.poses[mode][contact.b]
        normal, where = pose.direction(contact.normal), pose.point(contact.at)
        axis = max(range(3), key=lambda i: abs(normal[i]))
        gap = a[0][axis] - b[1][axis] if normal[axis] > 0.0 else b[0][axis] - a[1][axis]
        label = f"{contact.a} on {contact.b}"
        assert -1e-6 <= gap <= contact.gap + 1e-6, label
        assert min(contact.patch) > 0.0, label
        for i in range(3):
            assert max(a[0][i], b[0][i]) - gap - 1e-6 <= where[i] <= min(a[1][i], b[1][i]) + gap + 1e-6, label
    assert seen > 100


def test_what_is_screwed_to_the_van_lies_on_its_wall(built: Any) -> None:
    walls = [c for c in built.mechanism.contacts if c.b == VAN and c.kind is ContactKind.SCREWED]
    assert {c.a.rstrip("_0123456789") for c in walls} == {"night_cleat", "upright"}
    for contact in walls:
        assert contact.normal == (0.0, 1.0, 0.0)
        lo, _ = box(built, contact.a, "desk")
        wall = built.dims.widths.wall_night if contact.a == "night_cleat" else built.dims.widths.wall_desk
        assert lo[1] == pytest.approx(wall)
        assert contact.at[1] == lo[1]


def test_screw_holes_line_up_with_their_pilots(built: Any) -> None:
    holes = list(drilled(built))
    pairs = screwed(built)
    pilots = [h for h in holes if h.hole.purpose.startswith("pilot for") and "3.5x16" not in h.hole.purpose]
    assert len(pilots) > 100
    for pilot in pilots:
        spec = pilot.hole.purpose.removeprefix("pilot for ")
        mates = [
            h
            for h in holes
            if h.hole.purpose == f"screw {spec}"
            and math.dist(h.end, pilot.at) < 1e-5
            and math.dist(h.into, pilot.into) < 1e-9
            and frozenset((h.part, pilot.part)) in pairs
        ]
        assert len(mates) == 1, pilot
        mate = mates[0].hole
        assert mate.through
        assert mate.depth + pilot.hole.depth == pytest.approx(screw(spec).length)
        assert mate.diameter >= screw(spec).pilot
        assert pilot.hole.depth >= 10.0


def test_every_screw_finds_a_pilot_or_the_van(built: Any) -> None:
    holes = list(drilled(built))
    to_van = {c.a for c in built.mechanism.contacts if c.b == VAN and c.kind is ContactKind.SCREWED}
    for hole in holes:
        if hole.hole.purpose.startswith("screw ") and hole.part not in to_van:
            spec = hole.hole.purpose.removeprefix("screw ")
            mates = [h for h in holes if h.hole.purpose == f"pilot for {spec}" and math.dist(h.at, hole.end) < 1e-5]
            assert len(mates) == 1, hole


def test_as_many_screws_as_their_contacts_say(built: Any) -> None:
    wood = ("4 x 40", "4 x 45", "5 x 60", "5 x 70", "6 x 80")
    declared = sum(
        f.count for c in built.mechanism.contacts for f in c.fasteners if any(w in f.designation for w in wood)
    )
    assert declared == sum(h.hole.purpose.startswith("screw ") for h in drilled(built))


def test_blind_holes_stay_in_their_part(built: Any) -> None:
    for hole in drilled(built):
        if hole.hole.through:
            continue
        lo, hi = extent(built.mechanism.parts[hole.part])
        end = [a + d * hole.hole.depth for a, d in zip(hole.hole.at, hole.hole.into, strict=True)]
        spare = min(min(e - a, b - e) for a, b, e in zip(lo, hi, end, strict=True))
        assert spare >= 3.0, (hole.part, hole.hole)


def test_holes_keep_off_edges_and_faces(built: Any) -> None:
    """A hole starts in a face; across its axis it stays inside the part with some wood to spare."""
    for hole in drilled(built):
        lo, hi = extent(built.mechanism.parts[hole.part])
        across = [i for i in range(3) if abs(hole.hole.into[i]) < 0.5]
        r = max(hole.hole.diameter, hole.hole.head) / 2.0
        spare = min(min(hole.hole.at[i] - lo[i], hi[i] - hole.hole.at[i]) - r for i in across)
        assert spare >= 1.0, (hole.part, hole.hole)


def test_no_two_holes_of_a_part_run_into_each_other(built: Any) -> None:
    seen: dict[str, list[Drilled]] = {}
    for hole in drilled(built):
        for other in seen.setdefault(hole.part, []):
            if hole.hole.purpose == other.hole.purpose == "pin":
                continue  # lip and floor of the groove are bored in one go
            apart = between(hole, other) - (hole.hole.diameter + other.hole.diameter) / 2.0
            assert apart >= 1.0, (hole.part, hole.hole, other.hole)
        seen[hole.part].append(hole)


def between(a: Drilled, b: Drilled) -> float:
    """Least distance of two drilled axes, both parallel to an axis of the van: exact by boxes of no thickness."""
    gaps = []
    for i in range(3):
        a0, a1 = sorted((a.at[i], a.end[i]))
        b0, b1 = sorted((b.at[i], b.end[i]))
        gaps.append(max(0.0, a0 - b1, b0 - a1))
    return math.hypot(*gaps)


def test_volumes_are_those_of_the_meshes(built: Any) -> None:
    for item in built.assembly.items.values():
        measured = float(solid(item.design.shape).volume())
        # chords of circles: small parts that are all circle differ most
        assert measured == pytest.approx(item.design.volume, rel=5e-3), item.design.name


def test_designs_of_one_name_are_one_design(built: Any) -> None:
    seen: dict[str, object] = {}
    for design in built.mechanism.parts.values():
        assert seen.setdefault(design.name, design) == design


@pytest.mark.parametrize("width", [600, 900, 1100])
@pytest.mark.parametrize("stature", [1500, 1800, 2100])
def test_it_builds_for_narrow_and_wide_short_and_tall(worked: Callable[..., Brief], width: int, stature: int) -> None:
    brief = worked(
        van={"length_day": 3600, "ceiling": 1880},
        bed={"width": width},
        sleeper={"stature": stature, "mass": None, "measured": None},
    )
    mechanism = build(brief, size(brief).dimensions)
    assert len(mechanism.parts) > 80
