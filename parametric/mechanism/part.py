"""Part designs as data: what is made or bought, before anything is placed.

Frames: a `Board` lies in its xy plane with its thickness up +z from 0; a `Bar` and a `Tube` run along +x from 0
with section width along y and height along z from 0. All lengths mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from parametric.core.pose import Pose, Vec3, frame
from parametric.core.shape import ArcTo, Box, Cylinder, Outline, Primitive, Prism, Shape, rounded

_PAST = 1.0  # how far a cut reaches past the face it opens, so that no face is shared with the material


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """A drilled hole.

    Attributes:
        at: Centre of its mouth.
        into: Unit direction into the material.
        diameter: Drill diameter.
        depth: Depth; a through hole gives the full thickness it passes.
        through: Comes out on the other side.
        head: Diameter of a 90 degree countersink at the mouth; 0 for none.
        purpose: What goes in, in the trade's words.
    """

    at: Vec3
    into: Vec3
    diameter: float
    depth: float
    through: bool = False
    head: float = 0.0
    purpose: str = ""

    def cuts(self) -> tuple[Primitive, ...]:
        """What the drill and the countersink take away."""
        pose = _along(self.at, self.into)
        back = Pose(pose.point((0.0, 0.0, -_PAST)), pose.rotation)
        length = self.depth + _PAST * (2.0 if self.through else 1.0)
        bore = Cylinder(self.diameter / 2.0, length, back)
        if self.head <= 0.0:
            return (bore,)
        r, sink = self.head / 2.0, self.sink
        return bore, Cylinder(r + _PAST, sink + _PAST, back, self.diameter / 2.0)

    @property
    def sink(self) -> float:
        """Depth of the countersink."""
        return max(0.0, (self.head - self.diameter) / 2.0)

    @property
    def volume(self) -> float:
        """Material taken away where the hole runs in solid material, mm3."""
        r, big, sink = self.diameter / 2.0, self.head / 2.0, self.sink
        cone = math.pi * sink * (big * big + big * r + r * r) / 3.0
        return math.pi * r * r * (self.depth - sink) + cone


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A box-shaped recess, groove or rebate.

    Attributes:
        lo: Lower corner of the material taken away, within the part.
        hi: Upper corner.
        open_to: Faces it opens, as signed axes such as ``("-z",)``.
        purpose: What it is for.
    """

    lo: Vec3
    hi: Vec3
    open_to: tuple[str, ...]
    purpose: str = ""

    def cut(self) -> Box:
        """The box taken away, reaching past each face it opens."""
        lo, hi = list(self.lo), list(self.hi)
        for face in self.open_to:
            axis = "xyz".index(face[1])
            if face[0] == "-":
                lo[axis] -= _PAST
            else:
                hi[axis] += _PAST
        return Box((lo[0], lo[1], lo[2]), (hi[0], hi[1], hi[2]))

    @property
    def volume(self) -> float:
        """Material taken away, mm3."""
        return math.prod(h - low for low, h in zip(self.lo, self.hi, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Design:
    """What every part has, however it is made.

    Attributes:
        name: Name of the design, shared by its instances.
        material: Key of the material.
        stock: What it is cut from or bought as.
        density: kg/m3.
    """

    name: str
    material: str
    stock: str
    density: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Board(Design):
    """A flat part cut from sheet.

    Attributes:
        outline: Closed path in the xy plane.
        thickness: Measured or mean thickness.
        grain: Direction of the face grain, ``"x"`` or ``"y"``.
        cutouts: Closed paths cut right through.
        holes: Drilled holes.
        pockets: Recesses.
    """

    outline: Outline
    thickness: float
    grain: str = "x"
    cutouts: tuple[Outline, ...] = ()
    holes: tuple[Hole, ...] = ()
    pockets: tuple[Pocket, ...] = ()

    @property
    def shape(self) -> Shape:
        """Recipe of the finished part."""
        through = tuple(Prism(o, self.thickness + 2.0 * _PAST, Pose((0.0, 0.0, -_PAST))) for o in self.cutouts)
        return Shape((Prism(self.outline, self.thickness),), through + _cuts(self.holes, self.pockets))

    @property
    def volume(self) -> float:
        """Exact volume, mm3; pockets and holes must not overlap each other."""
        flat = area(self.outline) - sum(area(o) for o in self.cutouts)
        return flat * self.thickness - _removed(self.holes, self.pockets)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar(Design):
    """A length of timber of constant section.

    Attributes:
        length: Along x.
        width: Section along y.
        height: Section along z.
        radii: Radius of the long edges at (y, z) = (0, 0), (width, 0), (width, height), (0, height).
        holes: Drilled holes.
        pockets: Grooves, rebates and notches.
    """

    length: float
    width: float
    height: float
    radii: tuple[float, float, float, float] = (0.0, 0.0, 0.0, 0.0)
    holes: tuple[Hole, ...] = ()
    pockets: tuple[Pocket, ...] = ()

    @property
    def _section(self) -> Outline:
        w, h = self.width, self.height
        return rounded(((0.0, 0.0), (w, 0.0), (w, h), (0.0, h)), self.radii)

    @property
    def shape(self) -> Shape:
        """Recipe of the finished part."""
        blank: Primitive
        if any(self.radii):
            pose = frame((0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
            blank = Prism(self._section, self.length, pose)
        else:
            blank = Box((0.0, 0.0, 0.0), (self.length, self.width, self.height))
        return Shape((blank,), _cuts(self.holes, self.pockets))

    @property
    def volume(self) -> float:
        """Exact volume, mm3; pockets and holes must not overlap each other."""
        return area(self._section) * self.length - _removed(self.holes, self.pockets)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tube(Design):
    """A length of square or rectangular tube, square inside.

    Attributes:
        length: Along x.
        width: Outside, along y.
        height: Outside, along z.
        wall: Wall thickness.
        holes: Holes that pass both walls.
    """

    length: float
    width: float
    height: float
    wall: float
    holes: tuple[Hole, ...] = ()

    @property
    def shape(self) -> Shape:
        """Recipe of the finished part."""
        w = self.wall
        bore = Box((-_PAST, w, w), (self.length + _PAST, self.width - w, self.height - w))
        outside = Box((0.0, 0.0, 0.0), (self.length, self.width, self.height))
        return Shape((outside,), (bore, *_cuts(self.holes, ())))

    @property
    def volume(self) -> float:
        """Exact volume, mm3."""
        w = self.wall
        section = self.width * self.height - (self.width - 2.0 * w) * (self.height - 2.0 * w)
        drilled = sum(math.pi / 4.0 * h.diameter**2 * 2.0 * w for h in self.holes)
        return section * self.length - drilled


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought(Design):
    """A part that is bought ready made, shown by its envelope.

    Attributes:
        designation: What to ask for in the shop; generic or by standard.
        mass: kg; 0 takes the envelope's volume times the density.
        shape: Envelope.
        envelope_volume: Volume of the envelope, mm3.
        flexible: Bends to fit (a strap), so it is judged as a soft part.
    """

    designation: str
    mass: float
    shape: Shape
    envelope_volume: float
    flexible: bool = False

    @property
    def volume(self) -> float:
        """Volume of the envelope, mm3."""
        return self.envelope_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class Soft(Design):
    """Foam: judged by how deep others press into it.

    Attributes:
        length: Along x.
        width: Along y.
        thickness: Along z.
        sink_seated: How far a seated person sinks in.
        sink_lying: How far a lying person sinks in.
    """

    length: float
    width: float
    thickness: float
    sink_seated: float
    sink_lying: float

    @property
    def shape(self) -> Shape:
        """Recipe of the piece, unloaded."""
        return Shape((Box((0.0, 0.0, 0.0), (self.length, self.width, self.thickness)),))

    @property
    def volume(self) -> float:
        """Unloaded volume, mm3."""
        return self.length * self.width * self.thickness


PartDesign = Board | Bar | Tube | Bought | Soft


def is_soft(design: PartDesign) -> bool:
    """Whether a part gives way and is therefore judged by depth, not by common volume."""
    return isinstance(design, Soft) or (isinstance(design, Bought) and design.flexible)


def mass(design: PartDesign) -> float:
    """Mass of one piece, kg."""
    if isinstance(design, Bought) and design.mass > 0.0:
        return design.mass
    return design.volume * design.density * 1e-9


def area(outline: Outline) -> float:
    """Area inside a closed path, mm2: exact for lines and circular arcs."""
    total, p = 0.0, outline.start
    for edge in outline.edges:
        q = edge.end
        total += (p[0] * q[1] - q[0] * p[1]) / 2.0
        if isinstance(edge, ArcTo):
            total += _segment(p, edge.through, q)
        p = q
    return total


def _segment(p: tuple[float, float], m: tuple[float, float], q: tuple[float, float]) -> float:
    """Signed area between an arc and its chord."""
    chord = math.dist(p, q)
    turn = (m[0] - p[0]) * (q[1] - p[1]) - (m[1] - p[1]) * (q[0] - p[0])
    a, b = math.dist(p, m), math.dist(m, q)
    radius = a * b * chord / (2.0 * abs(turn)) if turn else math.inf
    if math.isinf(radius):
        return 0.0
    # the angle at `through` tells a long way round from a short one
    inscribed = math.acos(max(-1.0, min(1.0, (a * a + b * b - chord * chord) / (2.0 * a * b))))
    sweep = 2.0 * (math.pi - inscribed)
    size = radius * radius * (sweep - math.sin(sweep)) / 2.0
    return size if turn > 0.0 else -size


def _along(origin: Vec3, axis: Vec3) -> Pose:
    """A frame at `origin` whose z runs along `axis`, a signed unit axis or any unit vector."""
    x, y, z = axis
    side = (1.0, 0.0, 0.0) if abs(x) < 0.9 else (0.0, 1.0, 0.0)
    dot = side[0] * x + side[1] * y + side[2] * z
    u = (side[0] - dot * x, side[1] - dot * y, side[2] - dot * z)
    n = math.sqrt(sum(c * c for c in u))
    ux, uy, uz = u[0] / n, u[1] / n, u[2] / n
    v = (y * uz - z * uy, z * ux - x * uz, x * uy - y * ux)
    return frame(origin, (ux, uy, uz), v)


def _cuts(holes: tuple[Hole, ...], pockets: tuple[Pocket, ...]) -> tuple[Primitive, ...]:
    out: list[Primitive] = [p.cut() for p in pockets]
    for hole in holes:
        out.extend(hole.cuts())
    return tuple(out)


def _removed(holes: tuple[Hole, ...], pockets: tuple[Pocket, ...]) -> float:
    return sum(h.volume for h in holes) + sum(p.volume for p in pockets)
