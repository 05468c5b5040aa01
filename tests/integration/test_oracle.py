"""The CAD kernel as the judge of the quick collision verdicts, and of the volumes said of every part.

An overlap is what the kernel's boolean leaves of two solids: more than 1 mm3, and more than 0.1 mm thick in the mean.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import cadquery as cq
import numpy as np
import pytest
from numpy.typing import NDArray
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib
from OCP.gp import gp_Vec

from parametric.core.pose import Pose
from parametric.mechanism.model import Mechanism, Placement, frozen_map
from parametric.mechanism.part import Bar
from parametric.meshes.collide import LEAST_THICKNESS, LEAST_VOLUME, hits, near_pairs
from parametric.meshes.mesh import solid as mesh
from parametric.meshes.piece import Placed, place
from parametric.pipeline.check import Checked, judge
from parametric.solids.solid import location, solid

if TYPE_CHECKING:
    from tests.integration.conftest import Build, Judged, Reader

DEMOS = sorted((Path(__file__).parents[2] / "configs").glob("*.toml"))
OTHERS = [path for path in DEMOS if path.stem != "compact_van"]
NEAR = 5.0
PUSH = 2.0
SAME_VOLUME = 1e-3


@dataclass(frozen=True)
class Solid:
    """One rigid part for the kernel."""

    design: str
    shape: cq.Shape
    place: cq.Location


@dataclass(frozen=True)
class Common:
    """What the kernel says two solids have in common: mm3 and mean thickness in mm."""

    volume: float
    thickness: float

    @property
    def overlap(self) -> bool:
        """Whether that counts as an overlap."""
        return self.volume > LEAST_VOLUME and self.thickness > LEAST_THICKNESS


class Oracle:
    """Booleans of the kernel; pairs that stay as they are through several modes are worked out once."""

    def __init__(self) -> None:
        self._known: dict[tuple[object, ...], Common] = {}

    def common(self, a: Solid, b: Solid) -> Common:
        """What two solids have in common."""
        apart = _snapped(a.place.inverse * b.place)
        shift, angles = apart.toTuple()
        # angles near 180 degrees jump in sign: such a pair is then just worked out twice
        key = (a.design, b.design, *shift, *(round(angle, 6) for angle in angles))
        if key not in self._known:
            self._known[key] = _common(a.shape, b.shape.moved(apart))
        return self._known[key]


def _snapped(place: cq.Location) -> cq.Location:
    """The place on a raster of a nanometre.

    Two faces nearer to each other than the kernel's 1e-7 mm are one to it, and further apart they are two; just about
    there its booleans go astray.
    """
    moved = place.wrapped.Transformation()
    moved.SetTranslationPart(gp_Vec(*(round(c, 6) for c in place.toTuple()[0])))
    return cq.Location(moved)


def _common(a: cq.Shape, b: cq.Shape) -> Common:
    """What the kernel's boolean leaves, where it agrees with what the other takes away from the smaller one."""
    shared = a.intersect(b)
    volume = shared.Volume()
    if _room(a, b) > 1.0:
        small, large = sorted((a, b), key=lambda shape: shape.Volume())
        assert small.Volume() - small.cut(large).Volume() == pytest.approx(volume, abs=0.1), "the kernel is at a loss"
    return Common(volume=volume, thickness=2.0 * volume / shared.Area() if volume > 0.0 else 0.0)


def _room(a: cq.Shape, b: cq.Shape) -> float:
    """Volume that the boxes of two solids share, mm3; no more can be common to them."""
    one, other = _box(a), _box(b)
    return float(np.prod(np.clip(np.minimum(one[1], other[1]) - np.maximum(one[0], other[0]), 0.0, None)))


def _near(solids: Mapping[str, Solid]) -> Iterator[tuple[str, str]]:
    names = list(solids)
    boxes = [_box(s.shape.moved(s.place)) for s in solids.values()]
    return ((names[i], names[j]) for i, j in near_pairs(boxes, NEAR))


def _box(shape: cq.Shape) -> NDArray[np.float64]:
    """The kernel's quick box: never smaller than the solid, a hair larger where it is round."""
    box = Bnd_Box()
    BRepBndLib.Add_s(shape.wrapped, box, False)
    return np.reshape(box.Get(), (2, 3))


def _rigid(checked: Checked, mode: str) -> dict[str, Placed]:
    scene = next(s for s in checked.scenes if s.mode.id == mode)
    return {name: placed for name, placed in scene.parts.items() if name not in scene.soft}


def _solid(design: str, placed: Placed) -> Solid:
    return Solid(design=design, shape=solid(placed.piece.shape), place=location(placed.pose))


def _solids(checked: Checked, mode: str) -> dict[str, Solid]:
    parts = checked.assembly.mechanism.parts
    return {name: _solid(parts[name].name, placed) for name, placed in _rigid(checked, mode).items()}


def _read(build: Build, reader: Reader, mode: str) -> dict[str, Solid]:
    """Rigid parts as they are in the file."""
    parts = build.parts
    return {
        name: Solid(design=parts[name]["name"], shape=one.solid, place=one.place)
        for name, one in reader(build, mode).items()
        if parts[name]["kind"] != "soft"
    }


@pytest.fixture(scope="module")
def oracle() -> Oracle:
    """Booleans of the parts of the demo."""
    return Oracle()


def test_no_two_rigid_parts_share_space_in_any_file_of_the_demo(built: Build, judged: Judged, read: Reader) -> None:
    oracle = Oracle()
    for mode in built.modes:
        _assert_apart(oracle, _read(built, read, mode), _rigid(judged(built.brief), mode), mode)


@pytest.mark.parametrize("brief", OTHERS, ids=lambda path: path.stem)
def test_no_two_rigid_parts_share_space_in_the_other_demos(judged: Judged, brief: Path) -> None:
    oracle, checked = Oracle(), judged(brief)
    for mode in checked.assembly.mechanism.modes:
        _assert_apart(oracle, _solids(checked, mode), _rigid(checked, mode), mode)


def _assert_apart(oracle: Oracle, solids: Mapping[str, Solid], placed: Mapping[str, Placed], mode: str) -> None:
    """Neither the kernel nor the quick verdict finds an overlap."""
    assert set(solids) == set(placed)
    pairs = list(_near(solids))
    assert len(pairs) > 200
    for a, b in pairs:
        shared = oracle.common(solids[a], solids[b]).volume
        assert shared < 1.0, f"{mode}: {a} and {b} share {shared:.1f} mm3"
        assert hits(placed[a], placed[b]) is None, f"{mode}: {a} and {b}"


def test_no_near_pair_is_overlooked(built: Build, judged: Judged, read: Reader) -> None:
    for mode in built.modes:
        placed = _rigid(judged(built.brief), mode)
        names = list(placed)
        near = {frozenset((names[i], names[j])) for i, j in near_pairs([p.box for p in placed.values()])}
        # boxes of the kernel are a hair larger, so it may list a few more
        assert near <= {frozenset(pair) for pair in _near(_read(built, read, mode))}


@pytest.mark.parametrize("mode", ["desk", "night", "access/front"])
def test_verdicts_agree_on_parts_pushed_into_each_other(
    built: Build, judged: Judged, oracle: Oracle, mode: str
) -> None:
    checked = judged(built.brief)
    parts, placed = checked.assembly.mechanism.parts, _rigid(checked, mode)
    hit = 0
    for a, b in _near(_solids(checked, mode)):
        moved = _pushed(placed[a], placed[b])
        said = hits(placed[a], moved)
        true = oracle.common(_solid(parts[a].name, placed[a]), _solid(parts[b].name, moved))
        assert (said is not None) == true.overlap, f"{a} and {b}: {said} against {true}"
        if said is not None:
            hit += 1
            assert said.volume == pytest.approx(true.volume, rel=0.02, abs=1.0), f"{a} and {b}"
    assert hit > 100


def _pushed(a: Placed, b: Placed) -> Placed:
    """The second part moved towards the first along the axis on which their boxes overlap least."""
    overlap = np.minimum(a.box[1], b.box[1]) - np.maximum(a.box[0], b.box[0])
    axis = int(np.argmin(overlap))
    shift = np.zeros(3)
    shift[axis] = PUSH if a.box[:, axis].sum() >= b.box[:, axis].sum() else -PUSH
    x, y, z = shift.tolist()
    return place(b.piece, b.pose.moved(x, y, z))


def _faulted(mechanism: Mechanism) -> Mechanism:
    """Rear slats 60 mm too long, and the desk cleat 2 mm low on its uprights."""
    parts = dict(mechanism.parts)
    for name, design in parts.items():
        if design.name == "slat":
            assert isinstance(design, Bar)
            parts[name] = replace(design, length=design.length + 60.0)
    modes = {
        id: replace(mode, placements=frozen_map({n: _sunk(p) for n, p in mode.placements.items()}))
        for id, mode in mechanism.modes.items()
    }
    return replace(mechanism, parts=frozen_map(parts), modes=frozen_map(modes))


def _sunk(placement: Placement) -> Placement:
    if placement.part != "desk_cleat":
        return placement
    return replace(placement, pose=Pose((0.0, 0.0, -2.0)) @ placement.pose)


def test_a_faulted_design_is_convicted_of_the_same_pairs(built: Build, judged: Judged) -> None:
    good = judged(built.brief)
    faulted = judge(good.sized, _faulted(good.assembly.mechanism))
    oracle = Oracle()
    said = {
        (c.mode, *sorted(c.parts)): c.value
        for c in faulted.checks
        if c.id == "fit.interference" and c.parts and not _soft(faulted, c.parts)
    }
    true = {}
    for mode in built.modes:
        solids = _solids(faulted, mode)
        for a, b in _near(solids):
            found = oracle.common(solids[a], solids[b])
            if found.overlap:
                true[(mode, *sorted((a, b)))] = found.volume
    assert set(said) == set(true)
    assert {mode for mode, *_ in true} == set(built.modes)
    for pair, volume in true.items():
        assert said[pair] == pytest.approx(volume, rel=0.02, abs=1.0), pair


def _soft(checked: Checked, names: tuple[str, ...]) -> bool:
    return bool(checked.scenes[0].soft.intersection(names))


@pytest.mark.parametrize("brief", DEMOS, ids=lambda path: path.stem)
def test_mesh_and_solid_and_the_sum_done_by_hand_are_one_volume(judged: Judged, brief: Path) -> None:
    items = judged(brief).assembly.items
    assert len(items) > 30
    for item in items.values():
        design = item.design
        assert solid(design.shape).Volume() == pytest.approx(design.volume, rel=SAME_VOLUME), design.name
        assert mesh(design.shape).volume() == pytest.approx(design.volume, rel=SAME_VOLUME), design.name
