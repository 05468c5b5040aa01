"""CAD solids from the same recipes as the check meshes."""

from __future__ import annotations

from functools import lru_cache

from parametric.core.pose import Pose
from parametric.core.shape import ArcTo, Box, Cylinder, Hull, LineTo, Outline, Point2, Primitive, Prism, Shape, Sphere
from parametric.meshes.mesh import arrays
from parametric.meshes.mesh import solid as mesh
from parametric.solids.kernel import OCP, cq

_Z = cq.Vector(0.0, 0.0, 1.0)
_ORIGIN = cq.Vector(0.0, 0.0, 0.0)


@lru_cache(maxsize=1024)
def solid(shape: Shape) -> cq.Solid:
    """The single valid closed solid of a recipe, in the frame of the part, mm.

    Raises:
        ValueError: The recipe falls apart, or nothing of it is left.
    """
    first, *more = (_primitive(p) for p in shape.adds)
    body = first.fuse(*more).clean() if more else first
    if shape.cuts:
        body = body.cut(*(_primitive(p) for p in shape.cuts))
    pieces = body.Solids()
    if len(pieces) != 1 or not pieces[0].isValid():
        raise ValueError(f"a recipe gives {len(pieces)} pieces where one valid solid is wanted: {shape}")
    return pieces[0]


def location(pose: Pose) -> cq.Location:
    """A placement as the CAD kernel wants it."""
    return cq.Location(_transform(pose))


def _primitive(primitive: Primitive) -> cq.Solid:
    match primitive:
        case Box(lo, hi):
            x, y, z = (b - a for a, b in zip(lo, hi, strict=True))
            return cq.Solid.makeBox(x, y, z, cq.Vector(*lo))
        case Prism(outline, height, pose):
            return _moved(cq.Solid.extrudeLinear(_wire(outline), [], _Z * height), pose)
        case Cylinder(radius, height, pose, top):
            return _moved(_round(radius, height, radius if top is None else top), pose)
        case Sphere(radius, centre):
            return cq.Solid(cq.Solid.makeSphere(radius, cq.Vector(*centre), _Z, -90.0, 90.0, 360.0).wrapped)
        case Hull():
            return _polyhedron(primitive)


def _round(radius: float, height: float, top: float) -> cq.Solid:
    if radius == top:
        return cq.Solid.makeCylinder(radius, height, _ORIGIN, _Z)
    return cq.Solid.makeCone(radius, top, height, _ORIGIN, _Z)


def _polyhedron(hull: Hull) -> cq.Solid:
    """The solid inside the convex mesh, its coplanar triangles joined to faces."""
    vertices, triangles = arrays(mesh(Shape((hull,))))
    corners = [cq.Vector(*v) for v in vertices.tolist()]
    faces = [cq.Face.makeFromWires(cq.Wire.makePolygon([corners[k] for k in t], close=True)) for t in triangles]
    return cq.Solid(cq.Solid.makeSolid(cq.Shell.makeShell(faces)).clean().wrapped)


def _wire(outline: Outline) -> cq.Wire:
    edges, point = [], outline.start
    for edge in outline.edges:
        edges.append(_edge(point, edge))
        point = edge.end
    return cq.Wire.assembleEdges(edges)


def _edge(start: Point2, edge: LineTo | ArcTo) -> cq.Edge:
    if isinstance(edge, ArcTo):
        return cq.Edge.makeThreePointArc(_flat(start), _flat(edge.through), _flat(edge.end))
    return cq.Edge.makeLine(_flat(start), _flat(edge.end))


def _flat(point: Point2) -> cq.Vector:
    return cq.Vector(point[0], point[1], 0.0)


def _moved(solid: cq.Solid, pose: Pose) -> cq.Solid:
    """The solid with its very geometry moved: a solid with a location of its own loses its name in STEP files."""
    return cq.Solid(OCP.BRepBuilderAPI.BRepBuilderAPI_Transform(solid.wrapped, _transform(pose), True).Shape())


def _transform(pose: Pose) -> OCP.gp.gp_Trsf:
    r, t = pose.rotation, pose.translation
    out = OCP.gp.gp_Trsf()
    out.SetValues(*r[0:3], t[0], *r[3:6], t[1], *r[6:9], t[2])
    return out
