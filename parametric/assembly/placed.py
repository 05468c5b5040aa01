"""The mechanism with every part placed in the van frame, numbered and weighed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.core.pose import Pose
from parametric.mechanism.model import VAN, Mechanism, Placement, frozen_map
from parametric.mechanism.part import PartDesign, mass


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One line of the parts list.

    Attributes:
        number: Part number, the same in every output.
        design: What it is.
        instances: Names of the pieces, in order of assembly.
        mass: kg of one piece.
    """

    number: str
    design: PartDesign
    instances: tuple[str, ...]
    mass: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """Parts placed.

    Attributes:
        mechanism: What was placed.
        poses: Placement of every part in the van frame, by mode and part name.
        items: Parts list, by design name, in order of assembly.
    """

    mechanism: Mechanism
    poses: Mapping[str, Mapping[str, Pose]]
    items: Mapping[str, Item]

    @property
    def mass(self) -> float:
        """Mass of everything, kg."""
        return sum(i.mass * len(i.instances) for i in self.items.values())


def assemble(mechanism: Mechanism) -> Assembly:
    """Place, number and weigh every part.

    Raises:
        ValueError: Placements go round in a circle or name a part that does not exist.
    """
    poses = {name: frozen_map(world_poses(mode.placements)) for name, mode in mechanism.modes.items()}
    return Assembly(mechanism=mechanism, poses=frozen_map(poses), items=frozen_map(_items(mechanism)))


def world_poses(placements: Mapping[str, Placement]) -> dict[str, Pose]:
    """Placement of every part in the van frame, by part name.

    Raises:
        ValueError: Placements go round in a circle or name a part that does not exist.
    """
    done: dict[str, Pose] = {}

    def solve(part: str, waiting: tuple[str, ...]) -> Pose:
        if part in done:
            return done[part]
        if part in waiting or part not in placements:
            raise ValueError(f"{' on '.join((*waiting, part))}: not placed on the van in the end")
        here = placements[part]
        done[part] = here.pose if here.on == VAN else solve(here.on, (*waiting, part)) @ here.pose
        return done[part]

    return {part: solve(part, ()) for part in placements}


def _items(mechanism: Mechanism) -> dict[str, Item]:
    groups: dict[str, list[str]] = {}
    designs: dict[str, PartDesign] = {}
    for name, design in mechanism.parts.items():
        if designs.setdefault(design.name, design) != design:
            raise ValueError(f"{name}: two different designs are called {design.name}")
        groups.setdefault(design.name, []).append(name)
    return {
        key: Item(number=f"{101 + i}", design=designs[key], instances=tuple(names), mass=mass(designs[key]))
        for i, (key, names) in enumerate(groups.items())
    }
