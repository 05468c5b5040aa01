"""What a convertible piece of furniture is: parts, how they touch, where they are in each mode, what is moved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import TypeVar

from parametric.core.pose import Pose, Vec3, turn
from parametric.mechanism.part import PartDesign

VAN = "van"

K = TypeVar("K")
V = TypeVar("V")


class ContactKind(StrEnum):
    """How two parts touch."""

    RESTS = "rests"
    SCREWED = "screwed"
    HINGED = "hinged"
    SLIDES = "slides"
    LATCHED = "latched"
    PINNED = "pinned"
    STRAPPED = "strapped"
    PRESSES = "presses"


class Release(StrEnum):
    """What it takes to part a contact."""

    HAND = "hand"
    TOOL = "tool"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastener:
    """Screws, bolts or pins of one kind in one contact."""

    designation: str
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """A declared touch: `a` is held by `b`.

    Attributes:
        kind: How they touch.
        a: The part that is held.
        b: The part that holds, or ``"van"``.
        modes: Modes it holds in; None for all.
        at: Centre of the patch in the frame of `b`, mm.
        normal: Unit normal from `b` towards `a`, in the frame of `b`.
        patch: Length and width of the patch, mm.
        resists: Senses held, of ``+n`` (away from `b`), ``-n``, ``u``, ``v``, ``m`` (moments).
        travel: Way it can slide, mm.
        fasteners: What joins them.
        release: What parts them.
        depth: How deep a hard part may press into a soft one, mm.
        gap: Running clearance of a sliding or pinned fit, mm; 0 for a face on a face.
    """

    kind: ContactKind
    a: str
    b: str
    modes: frozenset[str] | None = None
    at: Vec3 = (0.0, 0.0, 0.0)
    normal: Vec3 = (0.0, 0.0, 1.0)
    patch: tuple[float, float] = (0.0, 0.0)
    resists: frozenset[str] = frozenset()
    travel: float = 0.0
    fasteners: tuple[Fastener, ...] = ()
    release: Release = Release.NONE
    depth: float = 0.0
    gap: float = 0.0

    def holds_in(self, mode: str) -> bool:
        """Whether the touch exists in a mode."""
        return self.modes is None or mode in self.modes


class JointKind(StrEnum):
    """How a joint lets its part move."""

    SLIDE = "slide"
    SWING = "swing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A guided movement of one part against another.

    Attributes:
        name: Its name.
        kind: Slide or swing.
        moving: The part that moves, with everything placed on it.
        base: The part it moves against, or ``"van"``.
        origin: A point of the axis, van frame, mm.
        axis: Unit direction, van frame.
        low: Least value, mm or degrees.
        high: Greatest value, mm or degrees.
    """

    name: str
    kind: JointKind
    moving: str
    base: str
    origin: Vec3
    axis: Vec3
    low: float
    high: float

    def pose(self, value: float) -> Pose:
        """The displacement, in the van frame, at a joint value (mm or degrees)."""
        if self.kind is JointKind.SWING:
            return turn(self.axis, value, self.origin)
        x, y, z = (c * value for c in self.axis)
        return Pose((x, y, z))


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a part is: on another part, or on the van.

    Attributes:
        part: The part placed.
        on: The part whose frame `pose` is given in, or ``"van"``.
        pose: Where.
    """

    part: str
    on: str
    pose: Pose


@dataclass(frozen=True, slots=True, kw_only=True)
class VanState:
    """How the vehicle stands in a mode.

    Attributes:
        roof_up: The raised roof, if there is one, is up.
        length: Clear floor length, mm (front seats in their place for this mode).
        driving: The vehicle may be moving.
    """

    roof_up: bool
    length: float
    driving: bool = False


class Use(StrEnum):
    """What a person does in a mode."""

    NOBODY = "nobody"
    SITTING = "sitting"
    LYING = "lying"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mode:
    """One use of the furniture.

    Attributes:
        id: ``desk``, or with a variant ``desk/low``.
        van: State of the vehicle.
        use: What the people do.
        placements: Placement of every part, by part name.
        settings: Adjustments, for example the step of the desk.
    """

    id: str
    van: VanState
    use: Use
    placements: Mapping[str, Placement]
    settings: Mapping[str, float]

    @property
    def file_name(self) -> str:
        """The id as part of a file name."""
        return self.id.replace("/", "-")


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A wish: carry, slide or swing parts from where they are in one mode to where they are in another.

    Attributes:
        parts: What is moved together.
        says: The step in plain words.
        joint: The joint that guides it; None for a carry in the hand.
        hands: Hands it takes.
        person: Where the person is meanwhile: ``seated``, ``kneeling``, ``standing`` or ``outside``.
    """

    parts: tuple[str, ...]
    says: str
    joint: str | None = None
    hands: int = 2
    person: str = "standing"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOver:
    """The ordered moves that turn one mode into another."""

    start: str
    end: str
    moves: tuple[Move, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mechanism:
    """The whole piece of furniture.

    Attributes:
        parts: Design of every instance, by instance name, in order of assembly.
        contacts: Declared touches.
        joints: Guided movements.
        modes: Uses, by id.
        change_overs: What is done between modes.
    """

    parts: Mapping[str, PartDesign]
    contacts: tuple[Contact, ...]
    joints: tuple[Joint, ...]
    modes: Mapping[str, Mode]
    change_overs: tuple[ChangeOver, ...]


def frozen_map(items: Mapping[K, V]) -> Mapping[K, V]:
    """A read-only copy of a mapping."""
    return MappingProxyType(dict(items))
