"""STL files read back by trimesh."""

from __future__ import annotations

from pathlib import Path

import pytest
import trimesh

from parametric.assembly.placed import Assembly
from parametric.exports.stl import write_mode, write_part
from parametric.meshes.mesh import bounds, solid


@pytest.mark.parametrize("name", ["rail", "panel", "leg", "strap", "mattress"])
def test_part_is_watertight_with_its_volume_and_bounds(assembly: Assembly, name: str, tmp_path: Path) -> None:
    path, item = tmp_path / "part.stl", assembly.items[name]
    write_part(item, path, "demo")
    read = trimesh.load_mesh(path)
    assert read.is_watertight
    assert read.is_winding_consistent
    # single precision: 7 digits of up to 700 mm
    assert read.volume == pytest.approx(item.design.volume, rel=1e-5)
    low, high = bounds(solid(item.design.shape))
    assert read.bounds.ravel() == pytest.approx((*low, *high), abs=1e-4)


@pytest.mark.parametrize("mode", ["night", "desk/low"])
def test_mode_is_the_sum_of_its_parts(assembly: Assembly, mode: str, tmp_path: Path) -> None:
    write_mode(assembly, mode, tmp_path / "mode.stl", "demo")
    whole = trimesh.load_mesh(tmp_path / "mode.stl")
    facets, volume = 0, 0.0
    for item in assembly.items.values():
        write_part(item, tmp_path / "part.stl", "demo")
        part = trimesh.load_mesh(tmp_path / "part.stl")
        facets += len(part.faces) * len(item.instances)
        volume += part.volume * len(item.instances)
    assert len(whole.faces) == facets
    assert whole.volume == pytest.approx(volume, rel=1e-5)


def test_normals_point_out_as_the_corners_do(assembly: Assembly, tmp_path: Path) -> None:
    write_part(assembly.items["panel"], tmp_path / "part.stl", "demo")
    read = trimesh.load_mesh(tmp_path / "part.stl", process=False)
    said = read.face_normals
    assert (said * trimesh.Trimesh(read.vertices, read.faces, process=False).face_normals).sum(axis=1).min() > 0.99


def test_header_cannot_pass_for_the_text_form(assembly: Assembly, tmp_path: Path) -> None:
    write_part(assembly.items["mattress"], tmp_path / "part.stl", "solid é" * 30)
    data = (tmp_path / "part.stl").read_bytes()
    assert data.startswith(b"STL mm solid ?")
    assert len(data) == 84 + 50 * 12
