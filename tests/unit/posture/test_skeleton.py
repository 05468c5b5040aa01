from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from parametric.body import Body, Links, estimate
from parametric.posture.flesh import Flesh
from parametric.posture.skeleton import Skeleton


def test_legs_are_the_body_s_links(body: Body) -> None:
    skeleton, links = Skeleton.of(body), Links.of(body)
    for name in ("foot", "ankle_height", "shank", "thigh", "knee_cap", "hip_from_back", "upper_arm"):
        assert getattr(skeleton, name) == pytest.approx(getattr(links, name)), name
    assert skeleton.heel_to_ankle == pytest.approx(Flesh.of(body).heel_to_ankle)
    assert skeleton.forearm == pytest.approx(Flesh.of(body).forearm)


def test_heights_over_the_seat_are_the_measured_ones(body: Body) -> None:
    skeleton, mean = Skeleton.of(body), body.mean
    shoulder = skeleton.hip_above_seat + skeleton.trunk
    assert shoulder - skeleton.upper_arm == pytest.approx(mean["elbow_height_sitting"])
    assert shoulder + skeleton.eye_up == pytest.approx(mean["eye_height_sitting"])
    assert shoulder + skeleton.vertex_up == pytest.approx(mean["sitting_height"])
    knee = skeleton.ankle_height + skeleton.shank
    assert knee - skeleton.hip_above_seat == pytest.approx(mean["popliteal_height"])
    assert skeleton.hip_from_back + skeleton.thigh - skeleton.knee_hollow == pytest.approx(
        mean["buttock_popliteal_length"]
    )


def test_hip_and_shoulder_agree_with_independent_landmarks(body: Body) -> None:
    """Standing landmark heights place them within 35 mm; the skeleton uses sitting ones."""
    skeleton, links = Skeleton.of(body), Links.of(body)
    assert skeleton.hip_above_seat == pytest.approx(links.hip_above_seat, abs=35)
    assert skeleton.trunk == pytest.approx(links.trunk, abs=35)


def test_many_bodies_at_once_are_each_themselves() -> None:
    bodies = [estimate(sex="male", stature=h) for h in (1600.0, 1980.0)]
    many = Skeleton.from_dimensions({name: np.array([b.mean[name] for b in bodies]) for name in bodies[0].mean})
    for k, body in enumerate(bodies):
        one = Skeleton.of(body)
        for field in dataclasses.fields(Skeleton):
            assert np.asarray(getattr(many, field.name))[k] == pytest.approx(getattr(one, field.name)), field.name


def test_contradictory_measurements_leave_no_limb_inside_out() -> None:
    body = estimate(sex="female", stature=1700.0)
    mad = {**body.mean, "knee_height": 400.0, "trochanterion_height": 300.0, "sitting_height": 300.0}
    assert min(dataclasses.astuple(Skeleton.from_dimensions(mad))) > 0.0
