"""Binary STL: triangles of the check meshes, mm."""

from __future__ import annotations

import struct
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from parametric.assembly.placed import Assembly, Item
from parametric.checks.scene import Scene
from parametric.core.shape import Shape
from parametric.exports.folder import write
from parametric.meshes.mesh import arrays, solid

_FACET = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])

Corners = NDArray[np.float64]


def write_mode(assembly: Assembly, mode: str, path: Path, name: str) -> None:
    """Write the parts of a mode, each where it is; a collection for viewing, whose touching parts share no edges.

    Raises:
        OutputError: The file cannot be written.
        KeyError: There is no such mode.
    """
    poses = assembly.poses[mode]
    facets = {key: _corners(item) for key, item in assembly.items.items()}
    placed = [
        facets[key] @ poses[instance].matrix[:3, :3].T + poses[instance].translation
        for key, item in assembly.items.items()
        for instance in item.instances
    ]
    write(path, _binary(np.concatenate(placed), f"{name} {mode}"))


def write_part(item: Item, path: Path, name: str) -> None:
    """Write one design, watertight, in its own frame.

    Raises:
        OutputError: The file cannot be written.
    """
    write(path, _binary(_corners(item), f"{name} {item.number} {item.design.name}"))


def write_context(scene: Scene, path: Path, name: str) -> None:
    """Write the people of a mode, limb by limb; the van is left out, it would hide them.

    Raises:
        OutputError: The file cannot be written.
    """
    limbs = [_facets(body.piece.shape) for body in scene.bodies.values()]
    corners = np.concatenate(limbs) if limbs else np.zeros((0, 3, 3))
    write(path, _binary(corners, f"{name} {scene.mode.id} people"))


def _corners(item: Item) -> Corners:
    return _facets(item.design.shape)


def _facets(shape: Shape) -> Corners:
    """Corners of the triangles of a shape, shape (m, 3, 3); none has two corners that are one in single precision."""
    vertices, triangles = arrays(solid(shape))
    corners = vertices[triangles]
    coarse = corners.astype(np.float32)
    flat = (coarse == np.roll(coarse, 1, axis=1)).all(axis=2).any(axis=1)
    kept: Corners = corners[~flat]
    return kept


def _binary(corners: Corners, title: str) -> bytes:
    facets = np.zeros(len(corners), _FACET)
    facets["corners"] = corners + 0.0
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    lengths = np.linalg.norm(normals, axis=1, keepdims=True)
    facets["normal"] = np.divide(normals, lengths, out=np.zeros_like(normals), where=lengths > 0.0)
    # a header that starts with "solid" would pass for the text form
    head = f"STL mm {title}".encode("ascii", "replace")[:80].ljust(80)
    return head + struct.pack("<I", len(corners)) + facets.tobytes()
