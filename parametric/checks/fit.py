"""Does everything fit: parts against parts, van and bodies, touches that were declared, nothing floating."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from parametric.checks.scene import Scene
from parametric.core import sources
from parametric.core.check import Check, Verdict, variant_of
from parametric.core.pose import Pose, Vec3
from parametric.mechanism.model import VAN, Contact, ContactKind, Use
from parametric.meshes.collide import free_after, gap, hits, near_pairs
from parametric.meshes.piece import Placed

TOUCH: Final = 0.3  # a declared contact may gape by this much
APART: Final = 0.3  # parts that never move past each other keep at least this
_UNSEEN = (ContactKind.STRAPPED, ContactKind.PRESSES)  # webbing is not shown; pressing is judged by depth
_BOTH_WAYS = (ContactKind.SCREWED, ContactKind.HINGED, ContactKind.LATCHED, ContactKind.PINNED, ContactKind.SLIDES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two things near each other and what was found between them."""

    a: str
    b: str
    found: float
    at: Vec3


def fit_checks(scenes: Sequence[Scene], moving_clearance: float) -> list[Check]:
    """Judge every mode.

    Args:
        scenes: All modes; which parts move past each other is told from their placements.
        moving_clearance: Least gap between parts that move against each other, mm.
    """
    moving = _moving(scenes)
    out: list[Check] = []
    for scene in scenes:
        out += _interference(scene)
        out += _clearance(scene, moving, moving_clearance)
        touching = _touching(scene)
        out += _contact(scene, touching)
        out += _support(scene, touching)
        out += _surroundings(scene)
        if scene.bodies:
            out += _bodies(scene)
    return out


def _interference(scene: Scene) -> list[Check]:
    rigid = [n for n in scene.parts if n not in scene.soft]
    pairs, count = _near(scene.parts, rigid, rigid)
    hit = [
        Pair(a=a, b=b, found=o.volume, at=o.at)
        for a, b in pairs
        if (o := hits(scene.parts[a], scene.parts[b])) is not None
    ]
    hit += _soft_hits(scene)
    return _report(
        scene,
        "fit.interference",
        hit,
        "mm3",
        lambda p: f"{p.a} and {p.b} share {p.found:.0f} mm3",
        f"{count} near pairs of parts, none in another",
        high=1.0,
    )


def _soft_hits(scene: Scene) -> Iterator[Pair]:
    """Hard parts deeper in foam than was declared."""
    allowed = {_key(c.a, c.b): c for c in scene.contacts if c.kind is ContactKind.PRESSES}
    rigid = [n for n in scene.parts if n not in scene.soft]
    pairs, _ = _near(scene.parts, rigid, sorted(scene.soft))
    for a, b in pairs:
        o = hits(scene.parts[a], scene.parts[b])
        if o is None:
            continue
        contact = allowed.get(_key(a, b))
        if contact is None or o.thickness > contact.depth:
            yield Pair(a=a, b=b, found=o.volume, at=o.at)


def _clearance(scene: Scene, moving: frozenset[tuple[str, str]], clearance: float) -> list[Check]:
    declared = {_key(c.a, c.b) for c in scene.contacts}
    rigid = [n for n in scene.parts if n not in scene.soft]
    pairs, count = _near(scene.parts, rigid, rigid)
    close = []
    for a, b in pairs:
        if _key(a, b) in declared:
            continue
        least = clearance if _key(a, b) in moving else APART
        found = gap(scene.parts[a], scene.parts[b], least)
        if found < least - 1e-6 and hits(scene.parts[a], scene.parts[b]) is None:
            close.append(Pair(a=a, b=b, found=found, at=_between(scene.parts[a], scene.parts[b])))
    return _report(
        scene,
        "fit.clearance",
        close,
        "mm",
        lambda p: f"{p.a} and {p.b} are {p.found:.1f} apart and may not touch",
        f"{count} near pairs of parts keep their clearance",
        low=clearance,
    )


def _touching(scene: Scene) -> dict[Contact, float]:
    """Gap of every declared contact that can be seen, mm, up to 5."""
    out = {}
    for contact in scene.contacts:
        if contact.kind in _UNSEEN:
            continue
        a = scene.parts[contact.a]
        holders = scene.van.values() if contact.b == VAN else (scene.parts[contact.b],)
        out[contact] = min(gap(a, b, 5.0) for b in holders)
    return out


def _contact(scene: Scene, touching: Mapping[Contact, float]) -> list[Check]:
    open_ = [
        Pair(a=c.a, b=c.b, found=found, at=scene.parts[c.a].pose.translation)
        for c, found in touching.items()
        if found > TOUCH + c.gap
    ]
    return _report(
        scene,
        "fit.contact",
        open_,
        "mm",
        lambda p: f"{p.a} should touch {p.b} and is {p.found:.1f} away" + (" or more" if p.found >= 5.0 else ""),
        f"{len(touching)} declared contacts touch",
        high=TOUCH,
    )


def _support(scene: Scene, touching: Mapping[Contact, float]) -> list[Check]:
    """Walk the contacts from the van; what is not reached floats."""
    holds: dict[str, list[str]] = {}
    for c in scene.contacts:
        if c.kind is ContactKind.PRESSES or touching.get(c, 0.0) > TOUCH + c.gap:
            continue
        holds.setdefault(c.b, []).append(c.a)
        if c.kind in _BOTH_WAYS and c.b != VAN:
            holds.setdefault(c.a, []).append(c.b)
    reached, todo = {VAN}, [VAN]
    while todo:
        for part in holds.get(todo.pop(), ()):
            if part not in reached:
                reached.add(part)
                todo.append(part)
    floating = [
        Pair(a=name, b=VAN, found=0.0, at=placed.pose.translation)
        for name, placed in scene.parts.items()
        if name not in reached
    ]
    return _report(
        scene,
        "fit.support",
        floating,
        None,
        lambda p: f"{p.a} is held by nothing that reaches the van",
        f"all {len(scene.parts)} parts are held",
        source=sources.SUPPORT,
    )


def _surroundings(scene: Scene) -> list[Check]:
    hit = [
        Pair(a=a, b=b, found=o.volume, at=o.at)
        for a, b in _across(scene.parts, scene.van)
        if (o := hits(scene.parts[a], scene.van[b])) is not None
    ]
    return _report(
        scene,
        "fit.van",
        hit,
        "mm3",
        lambda p: f"{p.a} reaches {p.found:.0f} mm3 into {p.b}",
        f"{len(scene.parts)} parts clear of the van and of what stays in it",
        high=1.0,
    )


def _bodies(scene: Scene) -> list[Check]:
    """People against parts and van; into foam only as deep as they sink."""
    depth = _sinks(scene)
    hit = []
    for a, b in _across(scene.bodies, {**scene.parts, **scene.van}):
        body, other = scene.bodies[a], scene.parts.get(b) or scene.van[b]
        o = hits(body, other)
        if o is None or (b in depth and free_after(body, other, (0.0, 0.0, 1.0), depth[b] + scene.pressed + TOUCH)):
            continue
        hit.append(Pair(a=a, b=b, found=o.volume, at=o.at))
    return _report(
        scene,
        "fit.body",
        hit,
        "mm3",
        lambda p: f"the body's {p.a} is {p.found:.0f} mm3 inside {p.b}",
        "the body is clear of parts and van",
        high=1.0,
    )


def _sinks(scene: Scene) -> dict[str, float]:
    lying = scene.mode.use is Use.LYING
    return {name: foam.sink_lying if lying else foam.sink_seated for name, foam in scene.foam.items()}


def _moving(scenes: Sequence[Scene]) -> frozenset[tuple[str, str]]:
    """Pairs of parts whose places against each other change between modes."""
    moving: set[tuple[str, str]] = set()
    groups = _rigid_groups(scenes)
    for scene in scenes:
        pairs, _ = _near(scene.parts, list(scene.parts), list(scene.parts))
        moving.update(_key(a, b) for a, b in pairs if groups[a] != groups[b])
    return frozenset(moving)


def _rigid_groups(scenes: Sequence[Scene]) -> dict[str, int]:
    """Number the groups of parts that stay together through all modes."""
    numbers: dict[tuple[Pose, ...], int] = {}
    out = {}
    first = scenes[0]
    for name, placed in first.parts.items():
        home = placed.pose.inverse()
        track = tuple(_rounded(s.parts[name].pose @ home) for s in scenes)
        out[name] = numbers.setdefault(track, len(numbers))
    return out


def _rounded(pose: Pose) -> Pose:
    x, y, z = (round(v, 6) + 0.0 for v in pose.translation)
    return Pose((x, y, z), tuple(round(v, 9) + 0.0 for v in pose.rotation))


def _near(parts: Mapping[str, Placed], a: Sequence[str], b: Sequence[str]) -> tuple[list[tuple[str, str]], int]:
    """Pairs of names, one of each list, whose boxes come within 5 mm; and how many."""
    names = list(dict.fromkeys((*a, *b)))
    first, second = set(a), set(b)
    pairs = [
        (names[i], names[j]) if names[i] in first else (names[j], names[i])
        for i, j in near_pairs([parts[n].box for n in names])
        if (names[i] in first and names[j] in second) or (names[j] in first and names[i] in second)
    ]
    return pairs, len(pairs)


def _across(a: Mapping[str, Placed], b: Mapping[str, Placed]) -> Iterator[tuple[str, str]]:
    """Pairs of one of each mapping whose boxes come near."""
    names = [*a, *b]
    boxes = [p.box for p in (*a.values(), *b.values())]
    n = len(a)
    for i, j in near_pairs(boxes):
        if i < n <= j:
            yield names[i], names[j]


def _between(a: Placed, b: Placed) -> Vec3:
    lo, hi = a.box, b.box
    x, y, z = ((max(lo[0][i], hi[0][i]) + min(lo[1][i], hi[1][i])) / 2.0 for i in range(3))
    return float(x), float(y), float(z)


def _key(a: str, b: str) -> tuple[str, str]:
    return (a, b) if a <= b else (b, a)


def _report(
    scene: Scene,
    id: str,
    pairs: Iterable[Pair],
    unit: str | None,
    says: Callable[[Pair], str],
    fine: str,
    *,
    low: float | None = None,
    high: float | None = None,
    source: str = sources.FIT,
) -> list[Check]:
    """A fail for every pair found, or one pass for the mode."""
    mode = scene.mode.id
    fine_one = Check(
        id=id,
        says=fine,
        verdict=Verdict.PASS,
        source=source,
        mode=mode,
        variant=variant_of(mode),
        unit=unit,
        min=low,
        max=high,
    )
    fails = [
        replace(
            fine_one,
            says=says(p),
            verdict=Verdict.FAIL,
            parts=(p.a,) if p.b == VAN else (p.a, p.b),
            at=p.at,
            value=p.found,
        )
        for p in pairs
    ]
    return fails or [fine_one]
