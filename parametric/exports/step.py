"""STEP files (ISO 10303-214, mm): one product for each design, one named instance for each part, colours and layers.

The CAD kernel writes the boundaries only. Its own assembly writer orders styles by memory address, so two runs differ;
the product structure is therefore written here, in the order of the parts list.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from parametric.assembly.placed import Assembly, Item
from parametric.checks.scene import Scene
from parametric.core.pose import Pose
from parametric.core.shape import Shape
from parametric.exports.brep import shell
from parametric.exports.folder import write
from parametric.exports.palette import Colour, colour
from parametric.exports.part21 import Entities, listed, real, reals, text
from parametric.mechanism.part import is_soft

NO_STAMP = "1970-01-01T00:00:00"
LAYERS = ("parts", "soft", "van", "body")


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """What the header of a STEP file says.

    Attributes:
        name: Name of the whole design.
        author: Who made it.
        stamp: Date and time as ISO 8601; the default stands for none, so that equal designs give equal files.
    """

    name: str
    author: str = ""
    stamp: str = NO_STAMP


def write_mode(assembly: Assembly, mode: str, path: Path, heading: Heading) -> None:
    """Write every made and bought part where it is in a mode; foam and straps are on the layer ``soft``.

    Raises:
        OutputError: The file cannot be written.
        KeyError: There is no such mode.
    """
    poses = assembly.poses[mode]
    file = _File()
    top = file.product("0", f"{heading.name} {mode}")
    parts = [(file.part(item), item) for item in assembly.items.values()]
    placed = [(name, part, poses[name]) for part, item in parts for name in item.instances]
    file.assemble(top, placed)
    write(path, file.text(heading, f"{heading.name} {mode}"))


def write_part(item: Item, path: Path, heading: Heading) -> None:
    """Write one design in its own frame.

    Raises:
        OutputError: The file cannot be written.
    """
    file = _File()
    file.part(item)
    write(path, file.text(heading, f"{heading.name} {_title(item)}"))


def write_context(scene: Scene, path: Path, heading: Heading) -> None:
    """Write the van and the people of a mode, each surface and limb solid by solid, on the layers ``van`` and ``body``.

    Raises:
        OutputError: The file cannot be written.
    """
    file, title = _File(), f"{heading.name} {scene.mode.id} context"
    top = file.product("0", title)
    placed = []
    for layer, things in (("van", scene.van), ("body", scene.bodies)):
        for name, thing in things.items():
            for k, primitive in enumerate(thing.piece.shape.adds, start=1):
                label = name if len(thing.piece.shape.adds) == 1 else f"{name} {k}"
                placed.append((label, file.solid("", label, Shape((primitive,)), layer, layer), thing.pose))
    file.assemble(top, placed)
    write(path, file.text(heading, title))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Product:
    """References of one product: its definition, and its representation once it has one."""

    definition: str
    shape: str
    representation: str = ""


class _File:
    """One STEP file in the making."""

    def __init__(self) -> None:
        e = self._entities = Entities()
        self._application = e.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')")
        e.add(f"APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,{self._application})")
        self._frame = e.add(f"PRODUCT_DEFINITION_CONTEXT('part definition',{self._application},'design')")
        self._discipline = e.add(f"PRODUCT_CONTEXT('',{self._application},'mechanical')")
        self._space = _space(e)
        self._origin = self._axes(Pose())
        self._styles: dict[Colour, str] = {}
        self._styled: list[str] = []
        self._layers: dict[str, list[str]] = {layer: [] for layer in LAYERS}

    def product(self, number: str, name: str) -> _Product:
        """Add a product without a shape."""
        e = self._entities
        product = e.add(f"PRODUCT({text(number)},{text(name)},'',({self._discipline}))")
        e.add(f"PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,({product}))")
        formation = e.add(f"PRODUCT_DEFINITION_FORMATION('','',{product})")
        definition = e.add(f"PRODUCT_DEFINITION('design','',{formation},{self._frame})")
        return _Product(definition=definition, shape=e.add(f"PRODUCT_DEFINITION_SHAPE('','',{definition})"))

    def part(self, item: Item) -> _Product:
        """Add the product of one design with its solid, colour and layer."""
        layer = "soft" if is_soft(item.design) else "parts"
        return self.solid(item.number, _title(item), item.design.shape, item.design.material, layer)

    def solid(self, number: str, name: str, shape: Shape, material: str, layer: str) -> _Product:
        """Add a product of one solid."""
        e = self._entities
        product = self.product(number, name)
        solid = e.add(f"MANIFOLD_SOLID_BREP({text(name)},{e.add_block(shell(shape))})")
        body = e.add(f"ADVANCED_BREP_SHAPE_REPRESENTATION('',{listed((self._origin, solid))},{self._space})")
        e.add(f"SHAPE_DEFINITION_REPRESENTATION({product.shape},{body})")
        self._styled.append(e.add(f"STYLED_ITEM('color',({self._style(colour(material))}),{solid})"))
        self._layers[layer].append(solid)
        return _Product(definition=product.definition, shape=product.shape, representation=body)

    def assemble(self, top: _Product, placed: Iterable[tuple[str, _Product, Pose]]) -> None:
        """Make a product the assembly of named, placed parts."""
        e = self._entities
        rows = [(name, part, self._axes(pose)) for name, part, pose in placed]
        items = listed((self._origin, *(axes for _, _, axes in rows)))
        whole = e.add(f"SHAPE_REPRESENTATION('',{items},{self._space})")
        e.add(f"SHAPE_DEFINITION_REPRESENTATION({top.shape},{whole})")
        for k, (name, part, axes) in enumerate(rows, 1):
            move = e.add(f"ITEM_DEFINED_TRANSFORMATION('','',{self._origin},{axes})")
            relation = e.add(
                f"(REPRESENTATION_RELATIONSHIP('','',{part.representation},{whole})"
                f"REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION({move})SHAPE_REPRESENTATION_RELATIONSHIP())"
            )
            use = e.add(f"NEXT_ASSEMBLY_USAGE_OCCURRENCE('{k}',{text(name)},'',{top.definition},{part.definition},$)")
            shape = e.add(f"PRODUCT_DEFINITION_SHAPE('Placement','Placement of an item',{use})")
            e.add(f"CONTEXT_DEPENDENT_SHAPE_REPRESENTATION({relation},{shape})")

    def text(self, heading: Heading, title: str) -> bytes:
        """Close the file: styles, layers and header."""
        e = self._entities
        e.add(f"MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',{listed(self._styled)},{self._space})")
        for layer, solids in self._layers.items():
            if solids:
                e.add(f"PRESENTATION_LAYER_ASSIGNMENT({text(layer)},'',{listed(solids)})")
        header = (
            f"FILE_DESCRIPTION(({text(heading.name)}),'2;1')",
            f"FILE_NAME({text(title)},{text(heading.stamp)},({text(heading.author)}),(''),'parametric','parametric','')",
            "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'))",
        )
        return e.text(header).encode("ascii")

    def _axes(self, pose: Pose) -> str:
        e, r = self._entities, pose.rotation
        point = e.add(f"CARTESIAN_POINT('',{reals(pose.translation)})")
        z = e.add(f"DIRECTION('',{reals((r[2], r[5], r[8]))})")
        x = e.add(f"DIRECTION('',{reals((r[0], r[3], r[6]))})")
        return e.add(f"AXIS2_PLACEMENT_3D('',{point},{z},{x})")

    def _style(self, rgb: Colour) -> str:
        if rgb not in self._styles:
            e = self._entities
            tone = e.add(f"COLOUR_RGB('',{','.join(real(c) for c in rgb)})")
            fill = e.add(f"FILL_AREA_STYLE_COLOUR('',{tone})")
            area = e.add(f"FILL_AREA_STYLE('',({fill}))")
            surface = e.add(f"SURFACE_STYLE_FILL_AREA({area})")
            side = e.add(f"SURFACE_SIDE_STYLE('',({surface}))")
            usage = e.add(f"SURFACE_STYLE_USAGE(.BOTH.,{side})")
            self._styles[rgb] = e.add(f"PRESENTATION_STYLE_ASSIGNMENT(({usage}))")
        return self._styles[rgb]


def _space(e: Entities) -> str:
    """Millimetres, radians, and the distance below which points are one."""
    length = e.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))")
    angle = e.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))")
    round_angle = e.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())")
    same = e.add(f"UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-07),{length},'distance_accuracy_value','')")
    return e.add(
        f"(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT(({same}))"
        f"GLOBAL_UNIT_ASSIGNED_CONTEXT({listed((length, angle, round_angle))})REPRESENTATION_CONTEXT('','3D'))"
    )


def _title(item: Item) -> str:
    return f"{item.number} {item.design.name}"
