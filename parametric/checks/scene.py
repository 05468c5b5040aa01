"""One mode as placed meshes: parts, van, things that stay, and the people in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.assembly.placed import Assembly
from parametric.assembly.surroundings import shell, things_that_stay
from parametric.brief.van import Van
from parametric.core.pose import Pose
from parametric.core.shape import Shape
from parametric.mechanism.model import Contact, Mode
from parametric.mechanism.part import Soft, is_soft
from parametric.meshes.piece import Piece, Placed, piece, place


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """Everything that is somewhere in a mode.

    Attributes:
        mode: Which mode.
        parts: Placed parts by name.
        soft: Names of the parts that give way.
        foam: Mattress pieces by name.
        van: Shell of the van by surface, and the things that stay by name.
        bodies: Segments of the people by name.
        pressed: How much deeper than their weight alone the thighs press into foam, on a seat too high, mm.
        contacts: Declared touches that hold in this mode.
    """

    mode: Mode
    parts: Mapping[str, Placed]
    soft: frozenset[str]
    foam: Mapping[str, Soft]
    van: Mapping[str, Placed]
    bodies: Mapping[str, Placed]
    contacts: tuple[Contact, ...]
    pressed: float = 0.0


def pieces_of(assembly: Assembly) -> Mapping[str, Piece]:
    """The mesh of every design, by design name; made once for all modes."""
    return {key: piece(item.design.shape) for key, item in assembly.items.items()}


def scene(
    assembly: Assembly,
    pieces: Mapping[str, Piece],
    van: Van,
    mode: Mode,
    bodies: Mapping[str, Shape],
    pressed: float = 0.0,
) -> Scene:
    """Place the meshes of a mode.

    Args:
        assembly: The placed mechanism.
        pieces: Meshes by design name.
        van: The vehicle.
        mode: The mode to show.
        bodies: Body segments in the van frame, by name.
        pressed: How much deeper than by their weight the thighs press into foam, mm.
    """
    mechanism, poses = assembly.mechanism, assembly.poses[mode.id]
    here = Pose()
    return Scene(
        mode=mode,
        parts={name: place(pieces[design.name], poses[name]) for name, design in mechanism.parts.items()},
        soft=frozenset(name for name, design in mechanism.parts.items() if is_soft(design)),
        foam={name: design for name, design in mechanism.parts.items() if isinstance(design, Soft)},
        van={name: place(piece(s), here) for name, s in {**shell(van, mode.van), **things_that_stay(van)}.items()},
        bodies={name: place(piece(s), here) for name, s in bodies.items()},
        pressed=pressed,
        contacts=tuple(c for c in mechanism.contacts if c.holds_in(mode.id)),
    )
