"""Quick verdicts on near pairs of parts against booleans of the CAD kernel: same answers, and how much sooner."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

import cadquery as cq
import numpy as np

from parametric.brief.loader import load
from parametric.core.pose import Pose
from parametric.meshes import collide
from parametric.meshes.piece import Placed, place
from parametric.pipeline.check import check
from parametric.solids.solid import location, solid

PUSH = 3.0
LEAST_VOLUME = 1.0
Row = tuple[str, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two parts near each other, ready for both ways of asking."""

    names: tuple[str, str]
    meshes: tuple[Placed, Placed]
    solids: tuple[cq.Shape, cq.Shape]


def compare(brief: Path, mode: str, rounds: int) -> list[Row]:
    """Judge all near pairs of rigid parts of a mode both ways, as they stand and pushed into each other.

    Args:
        brief: A brief whose design is checked first.
        mode: Its mode.
        rounds: How often the quick way is timed; the slow way runs once.
    """
    parts = _rigid(brief, mode)
    names = list(parts)
    near = collide.near_pairs([parts[name].box for name in names])
    still = [_pair((names[i], parts[names[i]]), (names[j], parts[names[j]])) for i, j in near]
    pushed = [_pair((p.names[0], p.meshes[0]), (p.names[1], _pushed(*p.meshes))) for p in still]
    return [
        *_rows(f"near pairs of {mode}", still, rounds, "at least 50"),
        *_rows(f"the same pushed {PUSH:g} mm", pushed, rounds, ""),
    ]


def _rigid(brief: Path, mode: str) -> dict[str, Placed]:
    scene = next(s for s in check(load(brief)).scenes if s.mode.id == mode)
    return {name: placed for name, placed in scene.parts.items() if name not in scene.soft}


def _pair(a: tuple[str, Placed], b: tuple[str, Placed]) -> Pair:
    return Pair(names=(a[0], b[0]), meshes=(a[1], b[1]), solids=(_solid(a[1]), _solid(b[1])))


def _solid(placed: Placed) -> cq.Shape:
    return solid(placed.piece.shape).moved(location(placed.pose))


def _pushed(a: Placed, b: Placed) -> Placed:
    """The second part moved towards the first along the axis on which their boxes overlap least."""
    overlap = np.minimum(a.box[1], b.box[1]) - np.maximum(a.box[0], b.box[0])
    axis = int(np.argmin(overlap))
    shift = np.zeros(3)
    shift[axis] = PUSH if a.box[:, axis].sum() >= b.box[:, axis].sum() else -PUSH
    x, y, z = shift.tolist()
    return place(b.piece, Pose((x, y, z)) @ b.pose)


def _rows(title: str, pairs: list[Pair], rounds: int, aim: str) -> list[Row]:
    def quick() -> list[bool]:
        collide._hit.cache_clear()
        return [collide.hits(*pair.meshes) is not None for pair in pairs]

    def slow() -> list[bool]:
        return [pair.solids[0].intersect(pair.solids[1]).Volume() > LEAST_VOLUME for pair in pairs]

    quick()  # makes the drilled meshes, as the solids are made by now
    quick_times, quick_answers = zip(*(_timed(quick) for _ in range(rounds)), strict=True)
    slow_time, slow_answers = _timed(slow)
    other = [
        " and ".join(pair.names) for pair, a, b in zip(pairs, quick_answers[0], slow_answers, strict=True) if a != b
    ]
    return [
        (f"{title}: {len(pairs)}, overlapping {sum(slow_answers)}", _same(other), "same verdicts"),
        ("    OCCT booleans / FCL", f"{slow_time / median(quick_times):.0f}", aim),
    ]


def _same(other: list[str]) -> str:
    return f"{len(other)} differ: {'; '.join(other[:5])}" if other else "same"


def _timed(work: Callable[[], list[bool]]) -> tuple[float, list[bool]]:
    start = time.perf_counter()
    answers = work()
    return time.perf_counter() - start, answers
