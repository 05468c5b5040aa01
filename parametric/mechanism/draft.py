"""A mechanism in the making: parts are put in place, joined and bored in the van frame, then frozen.

Holes are given where two parts meet, so that mating holes line up by construction. Pieces that end up
alike share one design; pieces of one name that differ get a letter.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from parametric.catalogue.screws import Screw, screw
from parametric.core.errors import RefusedError
from parametric.core.pose import Pose, Vec3, frame
from parametric.mechanism.extent import extent, meeting
from parametric.mechanism.model import (
    VAN,
    ChangeOver,
    Contact,
    ContactKind,
    Fastener,
    Joint,
    Mechanism,
    Mode,
    Placement,
    Release,
    Use,
    VanState,
    frozen_map,
)
from parametric.mechanism.part import Bar, Board, Bought, Hole, PartDesign, Pocket, Soft

LEAST_WOOD = 1.0  # left round a hole and under its end, mm
SLIP = 1e-6
_HOLDS = {
    ContactKind.RESTS: frozenset({"-n"}),
    ContactKind.SCREWED: frozenset({"+n", "-n", "u", "v", "m"}),
    ContactKind.HINGED: frozenset({"+n", "-n", "u", "v"}),
    ContactKind.SLIDES: frozenset({"+n", "-n", "v"}),
    ContactKind.LATCHED: frozenset({"+n", "-n", "u", "v"}),
    ContactKind.PINNED: frozenset({"u", "v"}),
    ContactKind.STRAPPED: frozenset({"+n", "u", "v"}),
    ContactKind.PRESSES: frozenset({"-n"}),
}
X: Vec3 = (1.0, 0.0, 0.0)
Y: Vec3 = (0.0, 1.0, 0.0)
Z: Vec3 = (0.0, 0.0, 1.0)


def laid(design: PartDesign, lo: Vec3, x_to: Vec3 = X, y_to: Vec3 = Y) -> Pose:
    """The placement that turns a part's x and y to two van directions and puts its lower corner at `lo`."""
    turned = frame((0.0, 0.0, 0.0), x_to, y_to)
    corner, _ = extent(design, turned)
    return turned.moved(lo[0] - corner[0], lo[1] - corner[1], lo[2] - corner[2])


@dataclass(frozen=True, slots=True, kw_only=True)
class ModeSpec:
    """A mode before its parts are placed."""

    id: str
    van: VanState
    use: Use
    settings: dict[str, float] = field(default_factory=dict)


class Draft:
    """Collects parts, placements, touches and holes; `freeze` makes the mechanism."""

    def __init__(self, modes: Sequence[ModeSpec]) -> None:
        self._modes = {m.id: m for m in modes}
        self._parts: dict[str, PartDesign] = {}
        self._base: dict[str, Pose] = {}
        self._moved: dict[str, dict[str, Pose]] = {m: {} for m in self._modes}
        self._root: dict[str, str] = {}
        self._holes: dict[str, list[Hole]] = {}
        self._contacts: list[Contact] = []
        self._joints: list[Joint] = []
        self._change_overs: list[ChangeOver] = []

    @property
    def modes(self) -> tuple[str, ...]:
        """Ids of all modes."""
        return tuple(self._modes)

    @property
    def parts(self) -> tuple[str, ...]:
        """Names of the pieces so far, in order."""
        return tuple(self._parts)

    def design(self, name: str) -> PartDesign:
        """Design of a piece as it stands."""
        return self._parts[name]

    def add(self, name: str, design: PartDesign, pose: Pose, rides_on: str | None = None) -> str:
        """Put a piece in its usual place (van frame); `rides_on` makes it follow another piece."""
        self._parts[name] = design
        self._base[name] = pose
        if rides_on is not None:
            self._root[name] = rides_on
        return name

    def move(self, name: str, modes: Iterable[str], pose: Pose) -> None:
        """Put a piece elsewhere (van frame) in some modes."""
        for mode in modes:
            self._moved[mode][name] = pose

    def usual(self, name: str) -> Pose:
        """Usual place of a piece, van frame."""
        return self._base[name]

    def world(self, name: str, mode: str) -> Pose:
        """Place of a piece in a mode, van frame."""
        if name in self._moved[mode]:
            return self._moved[mode][name]
        if name in self._root:
            root = self._root[name]
            return self.world(root, mode) @ self._base[root].inverse() @ self._base[name]
        return self._base[name]

    def bore(self, name: str, hole: Hole) -> None:
        """Drill a hole given in the van frame with the piece in its usual place."""
        _in_wood(name, self._parts[name], self._base[name], hole)
        back = self._base[name].inverse()
        local = replace(hole, at=_round(back.point(hole.at)), into=_round(back.direction(hole.into)))
        self._holes.setdefault(name, []).append(local)

    def screw(self, spec: str, held: str, holder: str, heads: Iterable[Vec3], into: Vec3) -> Fastener:
        """Screw a piece to another: clearance hole and countersink in the one, pilot hole in the other.

        Args:
            spec: Screw by catalogue name.
            held: Piece under the heads.
            holder: Piece the threads bite into; ``"van"`` gets no hole.
            heads: Centres of the heads on the face of `held`, van frame.
            into: Direction the screws are driven.
        """
        kind, count = screw(spec), 0
        for head in heads:
            self._drill(kind, held, holder, head, into)
            count += 1
        return Fastener(designation=kind.designation, count=count)

    def _drill(self, kind: Screw, held: str, holder: str, head: Vec3, into: Vec3) -> None:
        axis = max(range(3), key=lambda i: abs(into[i]))
        lo, hi = extent(self._parts[held], self._base[held])
        thick = hi[axis] - head[axis] if into[axis] > 0 else head[axis] - lo[axis]
        clear = Hole(
            at=head,
            into=into,
            diameter=kind.clearance,
            depth=thick,
            through=True,
            head=kind.head if thick > kind.head else 0.0,
            purpose=f"screw {kind.name}",
        )
        self.bore(held, clear)
        if holder == VAN:
            return
        mouth = (head[0] + into[0] * thick, head[1] + into[1] * thick, head[2] + into[2] * thick)
        pilot = Hole(
            at=mouth, into=into, diameter=kind.pilot, depth=kind.length - thick, purpose=f"pilot for {kind.name}"
        )
        self.bore(holder, pilot)

    def touch(
        self,
        kind: ContactKind,
        a: str,
        b: str,
        modes: Iterable[str] | None = None,
        *,
        normal: Vec3 | None = None,
        fasteners: tuple[Fastener, ...] = (),
        release: Release = Release.NONE,
        resists: frozenset[str] | None = None,
        depth: float = 0.0,
        gap: float = 0.0,
        travel: float = 0.0,
    ) -> None:
        """Declare that `a` touches and is held by `b`; the patch follows from where they are.

        Args:
            kind: How they touch.
            a: The piece held.
            b: The piece that holds, or ``"van"``.
            modes: Modes it holds in; None for all.
            normal: Direction from the van to `a`; needed with the van only.
            fasteners: What joins them.
            release: What parts them.
            resists: Senses held, where not those of the kind.
            depth: How deep a hard part may press into a soft one.
            gap: Running clearance of the fit.
            travel: Way it can slide.
        """
        held_in = None if modes is None else frozenset(modes)
        mode = self.modes[0] if held_in is None else next(m for m in self.modes if m in held_in)
        box = extent(self._parts[a], self.world(a, mode))
        if b == VAN:
            n = normal or Z
            at, patch = _foot(box, n)
        else:
            pose = self.world(b, mode)
            at, n, patch = meeting(box, extent(self._parts[b], pose))
            back = pose.inverse()
            at, n = _round(back.point(at)), _round(back.direction(n))
        self._contacts.append(
            Contact(
                kind=kind,
                a=a,
                b=b,
                modes=held_in,
                at=at,
                normal=n,
                patch=patch,
                resists=_HOLDS[kind] if resists is None else resists,
                travel=travel,
                fasteners=fasteners,
                release=release,
                depth=depth,
                gap=gap,
            )
        )

    def joint(self, joint: Joint) -> Joint:
        """Add a guided movement."""
        self._joints.append(joint)
        return joint

    def change_over(self, change_over: ChangeOver) -> None:
        """Add what is done between two modes."""
        self._change_overs.append(change_over)

    def freeze(self) -> Mechanism:
        """The finished, immutable mechanism."""
        bored = {name: self._bored(name) for name in self._parts}
        modes = {
            id: Mode(
                id=id,
                van=spec.van,
                use=spec.use,
                placements=frozen_map({name: self._placement(name, id) for name in self._parts}),
                settings=frozen_map(spec.settings),
            )
            for id, spec in self._modes.items()
        }
        return Mechanism(
            parts=frozen_map(_lettered(bored)),
            contacts=tuple(self._contacts),
            joints=tuple(self._joints),
            modes=frozen_map(modes),
            change_overs=tuple(self._change_overs),
        )

    def _placement(self, name: str, mode: str) -> Placement:
        root = self._root.get(name)
        if root is None or name in self._moved[mode]:
            return Placement(name, VAN, self.world(name, mode))
        return Placement(name, root, self._base[root].inverse() @ self._base[name])

    def _bored(self, name: str) -> PartDesign:
        design, extra = self._parts[name], self._holes.get(name, [])
        if not extra:
            return design
        if isinstance(design, Bought | Soft):
            raise ValueError(f"{name}: a bought or soft part is not drilled")
        holes = tuple(sorted((*design.holes, *extra), key=lambda h: (h.into, h.at, h.diameter)))
        _apart(name, holes)
        return replace(design, holes=holes)


def _in_wood(name: str, design: PartDesign, pose: Pose, hole: Hole) -> None:
    """Refuse a hole that breaks out of its part: through an edge, or a blind one through the far side."""
    lo, hi = extent(design, pose)
    axis = max(range(3), key=lambda i: abs(hole.into[i]))
    around = max(hole.diameter / 2.0 + LEAST_WOOD, hole.head / 2.0)
    beside = min(min(hole.at[i] - lo[i], hi[i] - hole.at[i]) for i in range(3) if i != axis) - around
    tip = hole.at[axis] + hole.into[axis] * hole.depth
    beyond = LEAST_WOOD if hole.through else min(tip - lo[axis], hi[axis] - tip)
    if beside < -SLIP or beyond < LEAST_WOOD - SLIP:
        raise RefusedError(
            f"{name}, {design.stock}: the hole for {hole.purpose or 'a bolt'} has no wood round it; "
            "give [stock.sections] a bigger section for it, or leave that out"
        )


def _apart(name: str, holes: tuple[Hole, ...]) -> None:
    """Refuse two holes that run into each other."""
    for i, a in enumerate(holes):
        for b in holes[:i]:
            if _between(a, b) < (a.diameter + b.diameter) / 2.0:
                raise RefusedError(
                    f"{name}: the holes for {a.purpose} and {b.purpose} run into each other at this size; "
                    "make the bed wider or change the sections"
                )


def _between(a: Hole, b: Hole) -> float:
    """Shortest distance between the axes of two holes, which run along the part's axes, mm."""
    gaps = []
    for i in range(3):
        a0, a1 = sorted((a.at[i], a.at[i] + a.into[i] * a.depth))
        b0, b1 = sorted((b.at[i], b.at[i] + b.into[i] * b.depth))
        gaps.append(max(0.0, a0 - b1, b0 - a1))
    return math.hypot(*gaps)


def _lettered(parts: dict[str, PartDesign]) -> dict[str, PartDesign]:
    seen: dict[str, list[PartDesign]] = {}
    out = {}
    for name, design in parts.items():
        kinds = seen.setdefault(design.name, [])
        if design not in kinds:
            kinds.append(design)
        index = kinds.index(design)
        out[name] = design if index == 0 else replace(design, name=f"{design.name}_{chr(ord('a') + index)}")
    return out


def _foot(box: tuple[Vec3, Vec3], n: Vec3) -> tuple[Vec3, tuple[float, float]]:
    axis = max(range(3), key=lambda i: abs(n[i]))
    lo, hi = box
    at = [(lo[i] + hi[i]) / 2.0 for i in range(3)]
    at[axis] = lo[axis] if n[axis] > 0 else hi[axis]
    u, v = (i for i in range(3) if i != axis)
    return (at[0], at[1], at[2]), (hi[u] - lo[u], hi[v] - lo[v])


def _round(p: Vec3) -> Vec3:
    # the way back through a placement leaves 1e-13 noise that would make like parts differ
    x, y, z = (round(c, 6) + 0.0 for c in p)
    return (x, y, z)


def bar(name: str, length: float, section: tuple[float, float], material: str, density: float, **more: object) -> Bar:
    """A length of timber of a section (width, height), named by its size."""
    width, height = section
    stock = f"{width:g} x {height:g}"
    return Bar(
        name=name,
        material=material,
        stock=stock,
        density=density,
        length=length,
        width=width,
        height=height,
        **more,  # type: ignore[arg-type]
    )


__all__ = ["Board", "Draft", "ModeSpec", "Pocket", "X", "Y", "Z", "bar", "laid"]
