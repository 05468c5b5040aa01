"""The fixed frame: side rails, end and middle bearers flush with the slats, posts in their corners, strips."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from parametric.brief.interior import fixed_things, narrowest
from parametric.brief.van import Fixed, Van
from parametric.catalogue.screws import wall_screw
from parametric.core.errors import RefusedError
from parametric.core.pose import Vec3
from parametric.mechanism.draft import Draft, Y, Z, bar, laid
from parametric.mechanism.materials import Materials
from parametric.mechanism.model import VAN, ContactKind, Release
from parametric.sizing.dimensions import Dimensions
from parametric.sizing.kinds.panel import REAR_GAP
from parametric.sizing.room import blocked

POST_DOWN: Final = 25.0  # post top under the slat top: clear of the slats' overhang
HANG: Final = 240.0  # length of a wall cleat that stands in for a post
STEP: Final = 5.0
FARTHEST: Final = 150.0  # how far a post may move along the rail to find free floor
PLAY: Final = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Faces of the fixed frame that other parts refer to, mm, van frame.

    Attributes:
        top: Slat top.
        bottom: Underside of rails and bearers.
        right: Inner face of the right rail.
        left: Inner face of the left rail.
        rear_bay: Clear x range between rear bearer and middle bearer.
        front_bay: Clear x range between middle bearer and front bearer.
        seat_of_batten: Top of the strips.
    """

    top: float
    bottom: float
    right: float
    left: float
    rear_bay: tuple[float, float]
    front_bay: tuple[float, float]
    seat_of_batten: float

    @property
    def inside(self) -> float:
        """Clear width between the rails."""
        return self.left - self.right


def frame_of(dims: Dimensions) -> Frame:
    """The faces of the frame from the dimensions."""
    s, lengths, widths, top = dims.sections, dims.lengths, dims.widths, dims.heights.platform
    half = s.bearer[0] / 2.0
    return Frame(
        top=top,
        bottom=top - s.rail[1],
        right=widths.right + s.rail[0],
        left=widths.left - s.rail[0],
        rear_bay=(lengths.rear + s.bearer[0], lengths.middle - half),
        front_bay=(lengths.middle + half, lengths.front - s.bearer[0]),
        seat_of_batten=top - s.slat[1] - s.batten[1],
    )


def build(draft: Draft, dims: Dimensions, stuff: Materials, van: Van) -> Frame:
    """Add rails, bearers, posts and strips.

    Raises:
        RefusedError: A post finds no free floor within 150 mm.
    """
    frame = frame_of(dims)
    _rails(draft, dims, stuff, frame)
    _bearers(draft, dims, stuff, frame)
    _posts(draft, dims, stuff, frame, van)
    _strips(draft, dims, stuff, frame)
    return frame


def _rails(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame) -> None:
    for side, y in (("right", dims.widths.right), ("left", frame.left)):
        design = bar(f"{side}_rail", dims.lengths.platform, dims.sections.rail, stuff.timber, stuff.timber_density)
        draft.add(f"{side}_rail", design, laid(design, (dims.lengths.rear, y, frame.bottom)))


def _bearers(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame) -> None:
    section = dims.sections.bearer
    places = {
        "rear": dims.lengths.rear,
        "middle": dims.lengths.middle - section[0] / 2.0,
        "front": dims.lengths.front - section[0],
    }
    for name, x in places.items():
        design = bar(f"{name}_bearer", frame.inside, section, stuff.timber, stuff.timber_density)
        pose = laid(design, (x, frame.right, frame.top - section[1]), Y, (-1.0, 0.0, 0.0))
        bearer = draft.add(f"{name}_bearer", design, pose)
        for side in ("right", "left"):
            draft.touch(ContactKind.RESTS, bearer, f"{side}_rail", resists=frozenset({"-n"}))


def _posts(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame, van: Van) -> None:
    size = dims.sections.post[0]
    spots = {
        "rear": (frame.rear_bay[0], "rear_bearer", -1.0),
        "middle": (frame.rear_bay[1] - size, "middle_bearer", 1.0),
        "front": (frame.front_bay[1] - size, "front_bearer", 1.0),
    }
    for name, (x, bearer, towards) in spots.items():
        for side, y in (("right", frame.right), ("left", frame.left - size)):
            _post(draft, dims, stuff, frame, van, f"{name}_{side}", x, y, bearer, towards, f"{side}_rail")


def _post(
    draft: Draft,
    dims: Dimensions,
    stuff: Materials,
    frame: Frame,
    van: Van,
    name: str,
    x: float,
    y: float,
    bearer: str,
    towards: float,
    rail: str,
) -> None:
    """One post in the corner of rail and bearer; where the floor is taken it moves along the rail."""
    size, top = dims.sections.post[0], frame.top - POST_DOWN
    x_range, y_range = (x, x + size), (y, y + size)
    shift = _free_shift(fixed_things(van), x_range, y_range, top, -towards)
    corner = f"{name}_post"
    if shift != 0.0:
        corner = f"{name}_corner_block"
        block = bar("corner_block", top - frame.bottom, dims.sections.post, stuff.timber, stuff.timber_density)
        draft.add(corner, block, laid(block, (x, y, frame.bottom), Z, (0.0, -towards, 0.0)))
        _to_rail(draft, dims, frame, rail, corner, x + size / 2.0)
    if shift is None:
        _hang(draft, dims, stuff, frame, van, name, (rail, bearer, corner), x + size / 2.0)
    else:
        post = f"{name}_post"
        design = bar("post", top, dims.sections.post, stuff.timber, stuff.timber_density)
        draft.add(post, design, laid(design, (x + shift, y, 0.0), Z, (0.0, -towards, 0.0)))
        draft.touch(ContactKind.RESTS, post, VAN, normal=Z)
        _to_rail(draft, dims, frame, rail, post, x + shift + size / 2.0)
    _to_bearer(draft, dims, frame, bearer, corner, x + (size if towards > 0 else 0.0), y + size / 2.0, towards)


def _hang(
    draft: Draft,
    dims: Dimensions,
    stuff: Materials,
    frame: Frame,
    van: Van,
    name: str,
    held: tuple[str, str, str],
    x: float,
) -> None:
    """Where no post finds floor the wall-side rail rests on a short cleat on the wall.

    Raises:
        RefusedError: The rail is not by a wall, or what stands there takes the cleat's place too.
    """
    w, h = dims.sections.strip[0] + dims.sections.rail[0], dims.sections.strip[1]
    lo = max(REAR_GAP, x - HANG / 2.0)
    hi = lo + HANG
    z = (frame.bottom - h, frame.bottom)
    wall = narrowest(van, "right", lo, hi, *z)
    reach = dims.widths.right + dims.sections.rail[0] - wall
    where = f"post {name}: no free floor within {FARTHEST:.0f} of x {x:.0f}"
    advice = "shorten the platform or move what stands there"
    if held[0] != "right_rail":
        raise RefusedError(f"{where} and no wall to hang the rail on; {advice}")
    taken = blocked(fixed_things(van), (lo, hi), (wall, wall + reach), z)
    if taken is not None:
        raise RefusedError(f"{where} and no room for a wall cleat over {taken}; {advice}")
    design = bar("rail_cleat", HANG, (max(reach, w / 2.0), h), stuff.timber, stuff.timber_density)
    cleat = draft.add(f"{name}_rail_cleat", design, laid(design, (lo, wall, z[0])))
    heads = [(lo + HANG * k, wall + design.width, z[0] + h / 2.0) for k in (0.2, 0.5, 0.8)]
    joined = draft.screw(wall_screw(design.width), cleat, VAN, heads, (0.0, -1.0, 0.0))
    draft.touch(ContactKind.SCREWED, cleat, VAN, normal=(0.0, 1.0, 0.0), fasteners=(joined,), release=Release.TOOL)
    for part in held:
        draft.touch(ContactKind.RESTS, part, cleat)


def _to_rail(draft: Draft, dims: Dimensions, frame: Frame, rail: str, post: str, x: float) -> None:
    right = rail == "right_rail"
    face = frame.right - dims.sections.rail[0] if right else frame.left + dims.sections.rail[0]
    into: Vec3 = (0.0, 1.0, 0.0) if right else (0.0, -1.0, 0.0)
    heads = [(x, face, frame.bottom + 15.0), (x, face, frame.bottom + 45.0)]
    joined = draft.screw("5x60", rail, post, heads, into)
    draft.touch(ContactKind.SCREWED, rail, post, fasteners=(joined,))


def _to_bearer(
    draft: Draft, dims: Dimensions, frame: Frame, bearer: str, post: str, x: float, y: float, towards: float
) -> None:
    face = x + towards * dims.sections.bearer[0]
    low = frame.top - dims.sections.bearer[1]
    heads = [(face, y, low + 30.0), (face, y, low + 58.0)]
    joined = draft.screw("6x80", bearer, post, heads, (-towards, 0.0, 0.0))
    draft.touch(ContactKind.SCREWED, bearer, post, fasteners=(joined,))


def _free_shift(
    fixed: tuple[Fixed, ...], x: tuple[float, float], y: tuple[float, float], top: float, direction: float
) -> float | None:
    """The least move along the rail that finds free floor: none, or clear of the block left in the corner."""
    clear = x[1] - x[0] + PLAY
    for k in range(int(FARTHEST / STEP) + 1):
        d = direction * k * STEP
        if (k == 0 or abs(d) >= clear) and blocked(fixed, (x[0] + d, x[1] + d), y, (0.0, top)) is None:
            return d
    return None


def _strips(draft: Draft, dims: Dimensions, stuff: Materials, frame: Frame) -> None:
    """Strips under the batten ends, screwed to the bearers between the posts."""
    s = dims.sections
    length = frame.inside - 2.0 * (s.post[0] + PLAY)
    design = bar("strip", length, s.strip, stuff.timber, stuff.timber_density)
    y, z, w = frame.right + s.post[0] + PLAY, frame.seat_of_batten - s.strip[1], s.strip[0]
    places = {
        "rear": (frame.rear_bay[0], "rear_bearer", -1.0),
        "middle_rear": (frame.rear_bay[1] - w, "middle_bearer", 1.0),
        "middle_front": (frame.front_bay[0], "middle_bearer", -1.0),
        "front": (frame.front_bay[1] - w, "front_bearer", 1.0),
    }
    for name, (x, bearer, towards) in places.items():
        strip = draft.add(f"{name}_strip", design, laid(design, (x, y, z), (0.0, -towards, 0.0), (towards, 0.0, 0.0)))
        face = x if towards > 0 else x + w
        along = [y + length * k for k in (0.06, 0.28, 0.5, 0.72, 0.94)]
        # the two middle strips are screwed from opposite sides: half a step apart, or the screws would meet
        shift = 20.0 if name == "middle_front" else 0.0
        heads = [(face, v + shift, z + s.strip[1] / 2.0) for v in along]
        joined = draft.screw("4x45", strip, bearer, heads, (towards, 0.0, 0.0))
        draft.touch(ContactKind.SCREWED, strip, bearer, fasteners=(joined,))
