"""STL files of the demos, read by trimesh."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
import trimesh

if TYPE_CHECKING:
    from tests.integration.conftest import Build, Judged

SAME_VOLUME = 1e-3
SAME_PLACE = 0.05


def _load(path: Path, *, join: bool = True) -> trimesh.Trimesh:
    """The triangles of a file; those that share an edge joined by it, if wanted."""
    mesh = trimesh.load(path, force="mesh", process=join)
    assert isinstance(mesh, trimesh.Trimesh)
    return mesh


def test_every_part_is_watertight_and_right_side_out_with_its_volume(any_built: Build) -> None:
    lines = any_built.design["parts"]
    files = sorted(p.name for p in (any_built.folder / "stl" / "parts").iterdir())
    assert files == sorted(any_built.part(line, "stl").name for line in lines)
    for line in lines:
        mesh = _load(any_built.part(line, "stl"))
        assert mesh.is_watertight, line["name"]
        assert mesh.is_winding_consistent, line["name"]
        assert mesh.body_count == 1, line["name"]
        assert mesh.volume == pytest.approx(line["volume"], rel=SAME_VOLUME), line["name"]
        if line["size"]:
            assert mesh.extents == pytest.approx(np.asarray(line["size"]), abs=SAME_PLACE), line["name"]


def test_a_mode_is_the_sum_of_its_parts(any_built: Build) -> None:
    parts = [(_load(any_built.part(line, "stl")), line["quantity"]) for line in any_built.design["parts"]]
    facets = sum(len(mesh.faces) * quantity for mesh, quantity in parts)
    volume = sum(mesh.volume * quantity for mesh, quantity in parts)
    assert any_built.modes
    for mode in any_built.modes:
        whole = _load(any_built.mode(mode, "stl"), join=False)
        assert len(whole.faces) == facets, mode
        assert whole.volume == pytest.approx(volume, rel=1e-4), mode
        assert whole.volume == pytest.approx(
            sum(line["volume"] * line["quantity"] for line in any_built.design["parts"]), rel=SAME_VOLUME
        )


def test_a_mode_fills_the_room_its_parts_fill(any_built: Build, judged: Judged) -> None:
    for scene in judged(any_built.brief).scenes:
        boxes = np.stack([placed.box for placed in scene.parts.values()])
        room = np.stack([boxes[:, 0].min(axis=0), boxes[:, 1].max(axis=0)])
        assert _load(any_built.mode(scene.mode.id, "stl"), join=False).bounds == pytest.approx(room, abs=SAME_PLACE)
