from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest

from parametric.core.pose import Vec3
from parametric.mechanism.extent import Extent, extent
from parametric.mechanism.lids import MOST_GAP, OPEN, lids_of, slat_places
from parametric.mechanism.model import JointKind
from parametric.mechanism.platform import frame_of
from parametric.sizing.kinds.panel import KNUCKLE

OPENS = {"rear_lid": "access/rear", "front_lid": "access/front"}


def box(built: Any, name: str, mode: str = "night") -> Extent:
    """Box round a part in a mode."""
    return extent(built.mechanism.parts[name], built.assembly.poses[mode][name])


def parts_of(built: Any, lid: str, what: str) -> list[str]:
    """Names of the slats, battens or hinges of a lid."""
    return [n for n in built.mechanism.parts if n.startswith(f"{lid}_{what}")]


@pytest.mark.parametrize(
    ("length", "count", "gap"),
    [
        (70.0 * 3 + 45.0 * 2, 3, 45.0),  # just fits
        (70.0 * 3 + 45.0 * 2 + 1.0, 4, (301.0 - 280.0) / 3.0),
        (800.0, 8, 240.0 / 7.0),
        (150.0, 2, 10.0),
    ],
)
def test_slats_share_the_lid_evenly(length: float, count: int, gap: float) -> None:
    places = slat_places(100.0, 100.0 + length, 70.0)
    assert len(places) == count
    assert places[0] == 100.0
    assert places[-1] + 70.0 == pytest.approx(100.0 + length)
    assert [b - a - 70.0 for a, b in pairwise(places)] == pytest.approx([gap] * (count - 1))


@pytest.mark.parametrize("length", range(200, 1200, 37))
@pytest.mark.parametrize("width", [70.0, 95.0])
def test_gaps_stay_under_45_with_no_slat_to_spare(length: int, width: float) -> None:
    places = slat_places(0.0, float(length), width)
    gap = places[1] - places[0] - width
    assert gap <= MOST_GAP + 1e-9
    if len(places) > 2:
        fewer = len(places) - 1
        assert (length - fewer * width) / (fewer - 1) > MOST_GAP


def test_lids_end_three_short_of_their_bearers(exchange: Any) -> None:
    faces = frame_of(exchange.dims)
    rear, front = lids_of(faces)
    assert (rear.start, rear.end) == (faces.rear_bay[0] + 3.0, faces.rear_bay[1] - 3.0)
    assert (front.start, front.end) == (faces.front_bay[0] + 3.0, faces.front_bay[1] - 3.0)
    # the pin stands over the middle of the joint
    assert rear.axis == faces.rear_bay[1] - 1.5
    assert front.axis == faces.front_bay[0] + 1.5


def test_slats_run_across_on_three_battens(built: Any) -> None:
    for lid in OPENS:
        battens = parts_of(built, lid, "batten")
        assert len(battens) == 3
        middles = sorted((box(built, b)[0][1] + box(built, b)[1][1]) / 2.0 for b in battens)
        assert max(b - a for a, b in pairwise(middles)) <= 575.0
        for slat in parts_of(built, lid, "slat"):
            lo, hi = box(built, slat)
            assert hi[1] - lo[1] > hi[0] - lo[0]
            assert lo[1] < middles[0]
            assert hi[1] > middles[2]
            assert all(box(built, b)[1][2] == pytest.approx(lo[2]) for b in battens)


def test_lids_ride_on_their_strips_when_shut(built: Any) -> None:
    for lid, opens in OPENS.items():
        for batten in parts_of(built, lid, "batten"):
            holders = {c.b: c for c in built.mechanism.contacts if c.a == batten and c.b.endswith("strip")}
            assert len(holders) == 2
            for contact in holders.values():
                assert contact.modes == set(built.mechanism.modes) - {opens}
                assert contact.patch[0] * contact.patch[1] > 300.0


@pytest.mark.parametrize("lid", sorted(OPENS))
def test_an_open_lid_stands_at_100_degrees(built: Any, lid: str) -> None:
    name = f"{lid}_slat_1"
    shut, opened = (built.assembly.poses[mode][name] for mode in ("night", OPENS[lid]))
    up = (0.0, 0.0, 1.0)
    cosine = sum(a * b for a, b in zip(shut.direction(up), opened.direction(up), strict=True))
    assert math.degrees(math.acos(cosine)) == pytest.approx(OPEN)
    assert box(built, name, OPENS[lid])[0][2] > built.dims.heights.platform - 40.0
    assert box(built, name, "drive") == box(built, name)


@pytest.mark.parametrize("lid", sorted(OPENS))
def test_the_hinge_is_three_over_the_slats_beside_the_middle_bearer(built: Any, lid: str) -> None:
    (joint,) = (j for j in built.mechanism.joints if j.name == f"{lid}_swing")
    assert joint.kind is JointKind.SWING
    assert joint.origin[2] == built.dims.heights.platform + KNUCKLE
    lo, hi = box(built, "middle_bearer")
    assert min(abs(joint.origin[0] - lo[0]), abs(joint.origin[0] - hi[0])) == 1.5
    assert joint.high == OPEN
    root = joint.moving
    swung = joint.pose(OPEN) @ built.assembly.poses["night"][root]
    assert swung.matrix == pytest.approx(built.assembly.poses[OPENS[lid]][root].matrix, abs=2e-6)


@pytest.mark.parametrize("lid", sorted(OPENS))
def test_a_lid_turns_up_and_away_from_the_bearer_it_rests_on(built: Any, lid: str) -> None:
    (joint,) = (j for j in built.mechanism.joints if j.name == f"{lid}_swing")
    tip = max(parts_of(built, lid, "slat"), key=lambda n: abs(box(built, n)[0][0] - joint.origin[0]))
    assert box(built, tip, OPENS[lid])[0][2] > built.dims.heights.platform + 200.0


def corners(extent: Extent) -> list[Vec3]:
    """Corners of a box."""
    (x0, y0, z0), (x1, y1, z1) = extent
    return [(x, y, z) for x in (x0, x1) for y in (y0, y1) for z in (z0, z1)]


@pytest.mark.parametrize("lid", sorted(OPENS))
def test_batten_and_slat_corners_swing_past_the_end_bearer(built: Any, lid: str) -> None:
    """A corner may swing no farther out than the bearer's face while it is lower than the bearer's top."""
    (joint,) = (j for j in built.mechanism.joints if j.name == f"{lid}_swing")
    bearer = box(built, "rear_bearer" if lid == "rear_lid" else "front_bearer")
    face = bearer[1][0] if lid == "rear_lid" else bearer[0][0]
    reach = abs(face - joint.origin[0])
    for name in (*parts_of(built, lid, "slat"), *parts_of(built, lid, "batten")):
        for x, _, z in corners(box(built, name)):
            arm, drop = abs(x - joint.origin[0]), joint.origin[2] - z
            # level with the pin it is farthest out: that is 3 over the slats, where no bearer is
            level = joint.origin[2] - built.dims.heights.platform
            farthest = math.sqrt(max(arm**2 + drop**2 - level**2, 0.0)) if drop > level else arm
            assert farthest < reach, name


def test_leaves_lie_on_wood_and_are_screwed_to_it(built: Any) -> None:
    for lid in OPENS:
        hinges = parts_of(built, lid, "hinge")
        assert len(hinges) == 6
        for name in hinges:
            assert box(built, name)[0][2] == pytest.approx(built.dims.heights.platform)
