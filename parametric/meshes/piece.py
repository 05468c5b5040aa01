"""A shape made ready for collision questions once, and where it stands.

Hashing a recipe with many holes takes longer than the question itself: look a `Piece` up once for a design and place
it as often as needed. What only close neighbours need (trees, the drilled mesh) is made when first asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import fcl
import numpy as np
from manifold3d import Manifold
from numpy.typing import NDArray

from parametric.core.pose import Pose
from parametric.core.shape import Cylinder, Primitive, Prism, Shape, rectangle
from parametric.meshes.facets import CHORD
from parametric.meshes.mesh import arrays, eroded, solid

PUFF = 1e-6  # far above rounding noise of poses, far below anything that can be made

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Piece:
    """One shape in its own frame.

    Attributes:
        shape: The recipe.
        filled: The recipe with its drilled holes filled; it meets all that the drilled part meets.
        vertices: Vertices of the filled mesh, shape (n, 3), mm.
    """

    shape: Shape
    filled: Shape
    vertices: Array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Placed:
    """A piece somewhere.

    Attributes:
        piece: What.
        pose: Where, in the van frame.
        box: Least and greatest corner in the van frame, shape (2, 3), mm.
    """

    piece: Piece
    pose: Pose
    box: Array


@lru_cache(maxsize=1024)
def piece(shape: Shape) -> Piece:
    """The recipe made ready."""
    filled = Shape(shape.adds, tuple(c for c in shape.cuts if not isinstance(c, Cylinder)))
    vertices, _ = arrays(solid(filled))
    return Piece(shape=shape, filled=filled, vertices=vertices)


@lru_cache(maxsize=1024)
def bare(piece: Piece) -> Piece:
    """The piece with its drilled holes open in all that quick tests need."""
    return Piece(shape=piece.shape, filled=piece.shape, vertices=arrays(drilled(piece))[0])


@lru_cache(maxsize=1024)
def tree(piece: Piece) -> fcl.BVHModel:
    """FCL tree of the filled piece, in its own frame."""
    return _tree(*arrays(solid(piece.filled)))


@lru_cache(maxsize=1024)
def core(piece: Piece) -> fcl.BVHModel | None:
    """FCL tree of the filled piece shrunk by 0.05 mm; None if it is thinner than that."""
    shrunk = eroded(piece.filled)
    return None if shrunk.is_empty() else _tree(*arrays(shrunk))


@lru_cache(maxsize=1024)
def lumps(piece: Piece) -> tuple[Array, Array]:
    """Of the separate lumps of the shrunk piece: corner boxes, shape (k, 2, 3), and a point each, shape (k, 3), mm."""
    found = eroded(piece.filled).decompose()
    boxes = np.array([m.bounding_box() for m in found]).reshape(-1, 2, 3)
    return boxes, np.array([arrays(m)[0][0] for m in found]).reshape(-1, 3)


def place(piece: Piece, pose: Pose) -> Placed:
    """The piece at a placement."""
    world = piece.vertices @ pose.matrix[:3, :3].T + pose.translation
    return Placed(piece=piece, pose=pose, box=np.stack([world.min(axis=0), world.max(axis=0)]))


@lru_cache(maxsize=1024)
def drilled(piece: Piece) -> Manifold:
    """The exact mesh of a piece, in its own frame."""
    return solid(piece.shape)


@lru_cache(maxsize=1024)
def corners(piece: Piece) -> Array:
    """Corners of the triangles of the exact mesh, shape (3, m, 3), mm."""
    vertices, triangles = arrays(drilled(piece))
    return np.ascontiguousarray(vertices[triangles].transpose(1, 0, 2))


@lru_cache(maxsize=1024)
def skin(piece: Piece) -> fcl.BVHModel | None:
    """FCL tree for proving touch: its round holes are square ones round them, so all of it is material of the part.

    It has a tenth of the triangles, and is puffed up by a millionth of a millimetre so that touching faces surely meet.
    None if the square holes leave nothing.
    """
    vertices, triangles = arrays(solid(Shape(piece.shape.adds, tuple(map(_squared, piece.shape.cuts)))))
    return _tree(vertices + PUFF * _outward(vertices, triangles), triangles) if len(triangles) else None


def _squared(cut: Primitive) -> Primitive:
    if not isinstance(cut, Cylinder):
        return cut
    r = max(cut.radius, cut.top_radius or 0.0) + CHORD
    return Prism(rectangle(-r, -r, r, r), cut.height, cut.pose)


def _tree(vertices: Array, triangles: NDArray[np.int32]) -> fcl.BVHModel:
    tree = fcl.BVHModel()
    tree.beginModel(len(vertices), len(triangles))
    tree.addSubModel(vertices, triangles)
    tree.endModel()
    return tree


def _outward(vertices: Array, triangles: NDArray[np.int32]) -> Array:
    """Sum of the unit normals of the triangles round each vertex, shape (n, 3)."""
    a, b, c = (vertices[triangles[:, k]] for k in range(3))
    normals = np.cross(b - a, c - a)
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-12)
    out = np.zeros_like(vertices)
    for k in range(3):
        np.add.at(out, triangles[:, k], normals)
    return out
