"""STEP files of the demo, read by gmsh with its own build of the CAD kernel, and by the kernel's own reader."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import cadquery as cq
import gmsh
import numpy as np
import pytest
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepCheck import BRepCheck_Analyzer

from parametric.meshes.mesh import centroid, solid

if TYPE_CHECKING:
    from tests.integration.conftest import Build, Judged, Reader

SAME_VOLUME = 1e-3
SAME_PLACE = 0.05
MODES = ["night", "lounge", "desk", "desk/low", "desk/high", "desk/parked", "drive", "access/front", "access/rear"]


@dataclass(frozen=True)
class Seen:
    """What gmsh says of one solid; lengths in the unit asked for."""

    volume: float
    box: NDArray[np.float64]
    centre: NDArray[np.float64]
    closed: bool


Gmsh = Callable[..., dict[str, Seen]]


@pytest.fixture(scope="module")
def by_gmsh() -> Iterator[Gmsh]:
    """Reads a file with gmsh: solids by label."""
    gmsh.initialize(interruptible=False)
    gmsh.option.setNumber("General.Terminal", 0)
    gmsh.option.setNumber("Geometry.OCCImportLabels", 1)
    gmsh.option.setNumber("Geometry.OCCBoundsUseStl", 0)

    def read(path: Path, unit: str = "MM") -> dict[str, Seen]:
        gmsh.clear()
        gmsh.option.setString("Geometry.OCCTargetUnit", unit)
        gmsh.model.occ.importShapes(str(path), highestDimOnly=True)
        gmsh.model.occ.synchronize()
        solids = gmsh.model.getEntities(3)
        # a file of one part without an assembly gets its layer added to its name
        found = {gmsh.model.getEntityName(*one).split(" & ")[0]: _seen(one) for one in solids}
        assert len(found) == len(solids)
        return found

    yield read
    gmsh.finalize()


def _seen(one: tuple[int, int]) -> Seen:
    faces = gmsh.model.getBoundary([one], oriented=False)
    return Seen(
        volume=gmsh.model.occ.getMass(*one),
        box=np.reshape(gmsh.model.occ.getBoundingBox(*one), (2, 3)),
        centre=np.asarray(gmsh.model.occ.getCenterOfMass(*one)),
        closed=bool(faces) and gmsh.model.getBoundary(faces, combined=True, oriented=False) == [],
    )


def test_the_modes_are_all_there(built: Build) -> None:
    assert built.modes == MODES
    files = sorted(p.name for p in (built.folder / "step").glob("*.step"))
    assert files == sorted(built.mode(mode, "step").name for mode in MODES)


@pytest.mark.parametrize("mode", MODES)
def test_gmsh_finds_every_part_closed_with_its_volume_in_its_place(
    built: Build, judged: Judged, by_gmsh: Gmsh, mode: str
) -> None:
    seen = by_gmsh(built.mode(mode, "step"))
    name, parts = built.design["name"], built.parts
    labels = {piece: f"Shapes/{name} {mode}/{piece}/{line['number']} {line['name']}" for piece, line in parts.items()}
    assert set(seen) == set(labels.values())
    scene = next(s for s in judged(built.brief).scenes if s.mode.id == mode)
    for piece, label in labels.items():
        found, meant = seen[label], scene.parts[piece]
        assert found.closed, piece
        assert found.volume == pytest.approx(parts[piece]["volume"], rel=SAME_VOLUME), piece
        assert found.box == pytest.approx(meant.box, abs=SAME_PLACE), piece
        # the box of a part turned end for end is the same; the middle of its volume is not, if it is drilled
        middle = meant.pose.point(centroid(solid(meant.piece.shape)))
        assert found.centre == pytest.approx(np.asarray(middle), abs=SAME_PLACE), piece


@pytest.mark.parametrize("mode", MODES)
def test_the_cad_kernel_finds_every_part_valid_with_its_volume_in_its_place(
    built: Build, judged: Judged, read: Reader, mode: str
) -> None:
    found = read(built, mode)
    assert list(found) == list(built.parts)
    scene = next(s for s in judged(built.brief).scenes if s.mode.id == mode)
    for piece, line in built.parts.items():
        assert_one_closed_solid(found[piece].solid)
        assert found[piece].solid.Volume() == pytest.approx(line["volume"], rel=SAME_VOLUME), piece
        box = found[piece].placed.BoundingBox()
        corners = [[box.xmin, box.ymin, box.zmin], [box.xmax, box.ymax, box.zmax]]
        assert np.asarray(corners) == pytest.approx(scene.parts[piece].box, abs=SAME_PLACE), piece


def test_every_part_file_holds_one_valid_closed_solid(any_built: Build, by_gmsh: Gmsh) -> None:
    lines = any_built.design["parts"]
    files = sorted(p.name for p in (any_built.folder / "step" / "parts").iterdir())
    assert files == sorted(any_built.part(line, "step").name for line in lines)
    for line in lines:
        path = any_built.part(line, "step")
        title = f"{line['number']} {line['name']}"
        seen = by_gmsh(path)
        assert list(seen) == [f"Shapes/{title}"]
        assert seen[f"Shapes/{title}"].closed, title
        assert seen[f"Shapes/{title}"].volume == pytest.approx(line["volume"], rel=SAME_VOLUME), title
        read = cq.importers.importStep(str(path)).vals()
        assert len(read) == 1
        assert isinstance(read[0], cq.Shape)
        assert_one_closed_solid(read[0])
        assert read[0].Volume() == pytest.approx(line["volume"], rel=SAME_VOLUME), title


def test_what_is_cut_has_the_size_in_the_parts_list(any_built: Build, by_gmsh: Gmsh) -> None:
    sized = [line for line in any_built.design["parts"] if line["size"]]
    assert {line["kind"] for line in sized} == {"bar", "board", "soft", "tube"}
    for line in sized:
        (seen,) = by_gmsh(any_built.part(line, "step")).values()
        assert np.ptp(seen.box, axis=0) == pytest.approx(np.asarray(line["size"]), abs=SAME_PLACE), line["name"]


def test_the_unit_is_the_millimetre(built: Build, by_gmsh: Gmsh) -> None:
    path = built.part(built.parts["panel"], "step")
    assert "SI_UNIT(.MILLI.,.METRE.)" in path.read_text(encoding="ascii")
    in_mm, in_m = by_gmsh(path), by_gmsh(path, "M")
    for label, seen in in_mm.items():
        assert in_m[label].box * 1000.0 == pytest.approx(seen.box, abs=1e-3)


def assert_one_closed_solid(shape: cq.Shape) -> None:
    """A single solid with a single closed skin, right side out, that the kernel finds no fault with."""
    assert shape.ShapeType() == "Solid"
    (shell,) = shape.Shells()
    assert BRep_Tool.IsClosed_s(shell.wrapped)
    assert BRepCheck_Analyzer(shape.wrapped, True).IsValid()
    assert shape.Volume() > 0.0
