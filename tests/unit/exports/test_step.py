"""STEP files read back by two programs we did not write: gmsh and the CAD kernel's own reader."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import gmsh
import pytest

from parametric.assembly.placed import Assembly
from parametric.core.errors import OutputError
from parametric.core.shape import Box, Shape
from parametric.exports.brep import shell
from parametric.exports.palette import colour
from parametric.exports.step import Heading, write_mode, write_part
from parametric.solids.kernel import OCP, cq

HEADING = Heading(name="demo", author="A. N. O'Ther")


@pytest.fixture(scope="module")
def night(assembly: Assembly, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("step") / "night.step"
    write_mode(assembly, "night", path, HEADING)
    return path


@pytest.fixture
def model(night: Path) -> Iterator[list[tuple[str, float, tuple[int, ...], tuple[float, ...]]]]:
    """Name, volume, colour and bounds of every solid, by gmsh."""
    gmsh.initialize(interruptible=False)
    gmsh.option.setNumber("General.Terminal", 0)
    gmsh.option.setNumber("Geometry.OCCImportLabels", 1)
    gmsh.option.setNumber("Geometry.OCCBoundsUseStl", 0)
    gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
    gmsh.model.occ.importShapes(str(night), highestDimOnly=True)
    gmsh.model.occ.synchronize()
    yield [
        (
            gmsh.model.getEntityName(3, tag),
            gmsh.model.occ.getMass(3, tag),
            gmsh.model.getColor(3, tag),
            gmsh.model.occ.getBoundingBox(3, tag),
        )
        for _, tag in gmsh.model.getEntities(3)
    ]
    gmsh.finalize()


def test_gmsh_reads_names_volumes_and_colours(
    model: list[tuple[str, float, tuple[int, ...], tuple[float, ...]]], assembly: Assembly
) -> None:
    expected = [
        (f"Shapes/demo night/{name}/{item.number} {item.design.name}", item.design)
        for item in assembly.items.values()
        for name in item.instances
    ]
    assert [name for name, *_ in model] == [name for name, _ in expected]
    for (_, volume, seen, _), (_, design) in zip(model, expected, strict=True):
        assert volume == pytest.approx(design.volume, rel=1e-6)
        # 8-bit channels
        assert [c / 255.0 for c in seen[:3]] == pytest.approx(colour(design.material), abs=0.005)


def test_gmsh_finds_parts_where_they_were_placed(
    model: list[tuple[str, float, tuple[int, ...], tuple[float, ...]]],
) -> None:
    boxes = {name.split("/")[2]: box for name, _, _, box in model}
    assert boxes["rail right"] == pytest.approx((0.0, 355.0, 300.0, 700.0, 400.0, 370.0), abs=1e-5)
    assert boxes["mattress é"] == pytest.approx((0.0, 0.0, 387.6, 600.0, 400.0, 487.6), abs=1e-5)
    assert boxes["leg"] == pytest.approx((620.0, 100.0, 0.0, 650.0, 130.0, 400.0), abs=1e-5)


def test_cad_kernel_reads_valid_solids_instances_and_colours(night: Path, assembly: Assembly) -> None:
    read = cq.Assembly.importStep(str(night))
    assert [child.name for child in read.children] == list(assembly.mechanism.parts)
    for child in read.children:
        design = assembly.mechanism.parts[child.name]
        assert child.color is not None
        assert child.color.toTuple()[:3] == pytest.approx(colour(design.material), abs=1e-6)
    solids = _solids(night)
    assert len(solids) == 6
    assert all(s.isValid() for s in solids)


def test_turned_part_keeps_its_place(assembly: Assembly, tmp_path: Path) -> None:
    path = tmp_path / "desk.step"
    write_mode(assembly, "desk/low", path, HEADING)
    centre = next(s for s in _solids(path) if abs(s.Volume() - 4135652.8) < 1.0).Center()
    own = _solids(_part(assembly, "panel", tmp_path))[0].Center().toTuple()
    assert centre.toTuple() == pytest.approx(assembly.poses["desk/low"]["panel"].point(own), abs=1e-6)


def test_layers_part_soft_from_hard(night: Path) -> None:
    document = OCP.TDocStd.TDocStd_Document(OCP.TCollection.TCollection_ExtendedString("x"))
    reader = OCP.STEPCAFControl.STEPCAFControl_Reader()
    reader.SetLayerMode(True)
    reader.SetNameMode(True)
    reader.ReadFile(str(night))
    assert reader.Transfer(document)
    tool = OCP.XCAFDoc.XCAFDoc_DocumentTool.LayerTool_s(document.Main())
    found = {}
    for layer in ("parts", "soft"):
        label = tool.FindLayer(OCP.TCollection.TCollection_ExtendedString(layer))
        members = OCP.TDF.TDF_LabelSequence()
        tool.GetShapesOfLayer_s(label, members)
        found[layer] = members.Length()
    assert found == {"parts": 3, "soft": 2}


def test_each_design_is_written_once_however_often_it_is_used(night: Path) -> None:
    text = night.read_text()
    assert text.count("MANIFOLD_SOLID_BREP(") == 5
    assert text.count("NEXT_ASSEMBLY_USAGE_OCCURRENCE(") == 6
    assert text.count("PCURVE") == 0


def test_every_reference_is_defined(night: Path) -> None:
    text = night.read_text()
    defined = set(re.findall(r"^#(\d+)=", text, re.MULTILINE))
    assert set(re.findall(r"#(\d+)", text)) == defined


def test_header_has_the_names_given_and_no_time(night: Path) -> None:
    head = night.read_text().split("ENDSEC;")[0]
    assert "FILE_NAME('demo night','1970-01-01T00:00:00',('A. N. O''Ther')" in head
    assert "AUTOMOTIVE_DESIGN" in head


def test_part_file_holds_one_named_part(assembly: Assembly, tmp_path: Path) -> None:
    path = _part(assembly, "rail", tmp_path)
    assert _solids(path)[0].Volume() == pytest.approx(assembly.items["rail"].design.volume)
    assert "PRODUCT('101','101 rail'" in path.read_text()
    assert "NEXT_ASSEMBLY_USAGE" not in path.read_text()


def test_shell_refers_to_itself_only_and_starts_with_the_shell(assembly: Assembly) -> None:
    entities = shell(assembly.items["panel"].design.shape)
    assert entities[0].startswith("CLOSED_SHELL(")
    assert {int(r) for body in entities for r in re.findall(r"#(\d+)", body)} == set(range(2, len(entities) + 1))


def test_a_hollow_solid_is_refused() -> None:
    hollow = Shape((Box((0.0, 0.0, 0.0), (9.0, 9.0, 9.0)),), (Box((3.0, 3.0, 3.0), (6.0, 6.0, 6.0)),))
    with pytest.raises(ValueError, match="hollow inside"):
        shell(hollow)


def test_unknown_mode_is_a_key_error(assembly: Assembly, tmp_path: Path) -> None:
    with pytest.raises(KeyError, match="dusk"):
        write_mode(assembly, "dusk", tmp_path / "x.step", HEADING)


def test_unwritable_place_is_told(assembly: Assembly, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(OutputError, match="cannot be written"):
        write_part(assembly.items["rail"], tmp_path / "file" / "x.step", HEADING)


def _solids(path: Path) -> list[cq.Solid]:
    return [s for s in cq.importers.importStep(str(path)).solids().vals() if isinstance(s, cq.Solid)]


def _part(assembly: Assembly, name: str, folder: Path) -> Path:
    path = folder / f"{name}.step"
    write_part(assembly.items[name], path, HEADING)
    return path
