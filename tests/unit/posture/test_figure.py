"""Extents of the mannequins against the body's own dimensions.

Tolerance 0.5 mm: a ball of the check mesh has the volume of the true one, so its corners stand out by up to 0.35 mm.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from parametric.body import Body, estimate
from parametric.catalogue.dimensions import dimensions
from parametric.catalogue.survey import allowed_range
from parametric.core.shape import Cylinder, Prism, Shape, Sphere
from parametric.meshes.mesh import bounds, solid
from parametric.posture import HeadEnd, Workplace, lie, lying_figure, seated_figure, solve
from parametric.posture.workplace import Number

Fitting = Callable[..., Workplace]
BOTH = ("left", "right")
NAMES = {"head", "trunk", "pelvis"} | {
    f"{n}_{s}" for n in ("thigh", "shank", "foot", "upper_arm", "forearm") for s in BOTH
}
JOINTS = [("head", "trunk"), ("trunk", "pelvis")] + [
    (a.format(s), b.format(s))
    for s in BOTH
    for a, b in (
        ("trunk", "upper_arm_{}"),
        ("upper_arm_{}", "forearm_{}"),
        ("pelvis", "thigh_{}"),
        ("thigh_{}", "shank_{}"),
        ("shank_{}", "foot_{}"),
    )
]
ENDS: tuple[HeadEnd, ...] = ("rear", "front")


def extent(figure: Mapping[str, Shape], *names: str) -> NDArray[np.float64]:
    """Least and greatest corner of some segments (all if none is named), shape (2, 3), mm."""
    boxes = np.array([bounds(solid(figure[name])) for name in names or figure])
    return np.stack([boxes[:, 0].min(axis=0), boxes[:, 1].max(axis=0)])


def near(value: Number | None) -> object:
    return pytest.approx(value, abs=0.5)


def seated(body: Body, place: Workplace) -> dict[str, Shape]:
    return seated_figure(body, solve(body, place), place)


def lying(body: Body, head: HeadEnd) -> dict[str, Shape]:
    return lying_figure(body, lie(body, head=head, bed=(30.0, 2300.0), y=-200.0, z=470.0))


def test_seated_extents_are_the_body_s_own(body: Body, fitting: Fitting) -> None:
    place, mean = fitting(body), body.mean
    figure, posture = seated(body, place), solve(body, place)
    seat, back, middle = place.seat, place.back, place.place
    whole, trunk, pelvis, head = (
        extent(figure),
        extent(figure, "trunk"),
        extent(figure, "pelvis"),
        extent(figure, "head"),
    )
    thighs = extent(figure, "thigh_left", "thigh_right")
    assert whole[0, 0] == near(back)
    assert (trunk[0, 0], pelvis[0, 0]) == (near(back), near(back))
    assert trunk[1, 0] - back == near(max(mean["abdominal_depth_sitting"], mean["chest_depth"]))
    assert whole[1, 2] - seat == near(mean["sitting_height"])
    assert head[:, 0] == near(posture.vertex[0] + np.array([-0.5, 0.5]) * mean["head_length"])
    assert head[:, 1] == near(middle + np.array([-0.5, 0.5]) * mean["head_breadth"])
    assert thighs[1, 0] - back == near(mean["buttock_knee_length"])
    assert thighs[1, 2] - seat == near(mean["thigh_clearance"])
    hips = np.array([-0.5, 0.5]) * mean["hip_breadth_sitting"] + middle
    assert pelvis[:, 1] == near(hips)
    assert thighs[:, 1] == near(hips)
    for segment in (whole, trunk, pelvis, head, thighs):
        assert segment[:, 1].mean() == near(middle)


def test_seated_figure_rests_on_seat_floor_and_desk_and_on_nothing_else(body: Body, fitting: Fitting) -> None:
    place, mean = fitting(body), body.mean
    figure = seated(body, place)
    for side in BOTH:
        assert extent(figure, f"thigh_{side}")[0, 2] == near(place.seat)
        assert extent(figure, f"foot_{side}")[0, 2] == near(place.floor)
        assert extent(figure, f"forearm_{side}")[0, 2] == near(place.desk)
        assert extent(figure, f"upper_arm_{side}")[0, 2] == near(place.desk)
        shank = extent(figure, f"shank_{side}")
        assert shank[0, 0] - place.back == near(mean["buttock_popliteal_length"])
        assert shank[1, 2] - place.floor - place.shoes == near(mean["knee_height"])
        assert shank[0, 2] > place.floor + place.shoes
    assert extent(figure, "pelvis")[0, 2] == near(place.seat)


def test_shod_foot_and_arms_have_their_own_size(body: Body, fitting: Fitting) -> None:
    figure, mean = seated(body, fitting(body)), body.mean
    foot, forearm = extent(figure, "foot_left"), extent(figure, "forearm_left")
    assert (foot[1] - foot[0])[:2] == near(np.array([mean["foot_length"], mean["foot_breadth"]]))
    assert np.ptp(forearm[:, 0]) == near(mean["elbow_fingertip_length"])
    assert forearm[1, 1] + 120.0 == near(mean["elbow_to_elbow_breadth"] / 2.0)
    upper = solid(figure["upper_arm_left"]) + solid(figure["upper_arm_right"])
    shoulders = upper.trim_by_plane((0.0, 0.0, 1.0), extent(figure, "upper_arm_left")[1, 2] - 60.0)
    y0, y1 = shoulders.bounding_box()[1], shoulders.bounding_box()[4]
    assert y1 - y0 == pytest.approx(mean["bideltoid_breadth"], abs=15.0)  # the arm leans outwards from there


@pytest.mark.parametrize(("desk", "under"), [(40.0, 40.0), (0.0, 0.0), (-40.0, -40.0)])
def test_forearms_lie_on_the_desk_at_every_step(body: Body, fitting: Fitting, desk: float, under: float) -> None:
    place = fitting(body, desk=desk)
    lowest = extent(seated(body, place), "forearm_left", "forearm_right")[0, 2]
    assert lowest == near(place.seat + body.mean["elbow_height_sitting"] + under)


@pytest.mark.parametrize("shift", [-82.0, -10.0, 0.0])
def test_thighs_never_dip_into_a_seat_of_popliteal_height_or_less(body: Body, fitting: Fitting, shift: float) -> None:
    place = fitting(body, seat=shift)
    assert extent(seated(body, place), "thigh_left", "thigh_right")[0, 2] == near(place.seat)


@pytest.mark.parametrize("shift", [-82.0, 0.0, 15.0])
def test_seated_segments_join(body: Body, fitting: Fitting, shift: float) -> None:
    figure = seated(body, fitting(body, seat=shift, desk=20.0))
    assert set(figure) == NAMES
    _assert_joined(figure)


@pytest.mark.parametrize("head", ENDS)
def test_lying_extents_are_the_body_s_own(body: Body, head: HeadEnd) -> None:
    mean, place = body.mean, lie(body, head=head, bed=(30.0, 2300.0), y=-200.0, z=470.0)
    figure = lying_figure(body, place)
    whole = extent(figure)
    assert whole[:, 0] == near(np.array([place.start, place.end]))
    assert np.ptp(whole[:, 0]) == near(mean["stature"] + 15.0)
    widest = max(mean[k] for k in ("bideltoid_breadth", "elbow_to_elbow_breadth", "hip_breadth_sitting"))
    assert whole[:, 1] == near(np.array([-200.0 - widest / 2.0, -200.0 + widest / 2.0]))
    for name in figure:
        assert extent(figure, name)[0, 2] == near(place.z)
    assert whole[1, 2] - place.z == near(
        max(mean[k] for k in ("foot_length", "chest_depth", "abdominal_depth_sitting", "buttock_depth"))
    )


def test_the_head_points_where_it_should_and_left_is_left(tall: Body) -> None:
    """On the back with the head to the rear the left hand is on the vehicle's left; turned round, on its right."""
    for head, sign in zip(ENDS, (1.0, -1.0), strict=True):
        figure = lying(tall, head)
        middle = {name: extent(figure, name).mean(axis=0) for name in figure}
        assert sign * (middle["foot_left"][0] - middle["head"][0]) > 1500.0
        assert sign * (middle["forearm_left"][1] + 200.0) > 100.0
        assert sign * (middle["forearm_right"][1] + 200.0) < -100.0


@pytest.mark.parametrize("head", ENDS)
def test_lying_segments_join(body: Body, head: HeadEnd) -> None:
    figure = lying(body, head)
    assert set(figure) == NAMES
    _assert_joined(figure)


def test_figures_are_the_same_every_time(tall: Body, fitting: Fitting) -> None:
    assert seated(tall, fitting(tall)) == seated(tall, fitting(tall))
    assert lying(tall, "rear") == lying(tall, "rear")


@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_whatever_a_brief_accepts_can_be_drawn(data: st.DataObject) -> None:
    names = data.draw(st.sets(st.sampled_from([n for n, d in dimensions().items() if d.unit == "mm"]), max_size=12))
    measured = {name: data.draw(st.floats(*allowed_range(name))) for name in sorted(names)}
    body = estimate(sex="male", stature=measured.pop("stature", 1800.0), measured=measured)
    place = Workplace(seat=450.0, back=1000.0, place=0.0, desk=700.0, shoes=10.0)
    for figure in (seated(body, place), lying(body, "front")):
        for shape in figure.values():
            assert all(_sound(primitive) for primitive in shape.adds)


def _assert_joined(figure: Mapping[str, Shape]) -> None:
    assert all(len(solid(shape).decompose()) == 1 for shape in figure.values())
    for a, b in JOINTS:
        assert len((solid(figure[a]) + solid(figure[b])).decompose()) == 1, (a, b)


def _sound(primitive: object) -> bool:
    match primitive:
        case Sphere(radius, centre):
            return radius > 0.0 and bool(np.isfinite(centre).all())
        case Cylinder(radius, height, pose, top):
            return min(radius, height, radius if top is None else top) > 0.0 and bool(np.isfinite(pose.matrix).all())
        case Prism(_, height, pose):
            return height > 0.0 and bool(np.isfinite(pose.matrix).all())
    return False
