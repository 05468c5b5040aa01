from __future__ import annotations

import dataclasses

import pytest

from parametric.body import Links, Sex, estimate


@pytest.mark.parametrize("sex", ["male", "female", "unspecified"])
@pytest.mark.parametrize("stature", [1500.0, 1750.0, 1960.0, 2100.0])
def test_links_add_up_to_the_body(sex: Sex, stature: float) -> None:
    body = estimate(sex=sex, stature=stature)
    links = Links.of(body)
    mean = body.mean
    assert links.ankle_height + links.shank + links.thigh + links.trunk == pytest.approx(mean["shoulder_height"])
    assert links.hip_from_back + links.thigh + links.knee_cap == pytest.approx(mean["buttock_knee_length"])
    assert links.ankle_height + links.shank + links.knee_cap == pytest.approx(mean["knee_height"])
    assert links.hip_above_seat + links.trunk + links.shoulder_to_vertex == pytest.approx(mean["sitting_height"])
    assert links.hip_above_seat + links.trunk + links.shoulder_to_eye == pytest.approx(mean["eye_height_sitting"])
    assert links.forearm + links.hand == pytest.approx(mean["elbow_fingertip_length"])
    assert min(dataclasses.astuple(links)) > 0


@pytest.mark.parametrize(
    ("sex", "stature"),
    [("male", 1500), ("male", 1750), ("male", 2100), ("female", 1450), ("female", 1650), ("female", 1900)],
)
def test_independent_measurements_close_the_seated_figure(sex: Sex, stature: float) -> None:
    """Chains over different landmarks meet: the thigh lies level on the seat, the elbow where it was measured.

    Tolerance 25 mm: landmarks sit up to about 15 mm beside the joints, and sitting shortens the trunk a little.
    """
    body = estimate(sex=sex, stature=stature)
    links = Links.of(body)
    knee_above_seat = links.ankle_height + links.shank - body.mean["popliteal_height"]
    elbow_above_seat = links.hip_above_seat + links.trunk - links.upper_arm
    assert knee_above_seat == pytest.approx(links.hip_above_seat, abs=25)
    assert elbow_above_seat == pytest.approx(body.mean["elbow_height_sitting"], abs=25)
