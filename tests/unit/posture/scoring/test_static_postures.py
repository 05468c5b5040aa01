from __future__ import annotations

import math

import numpy as np
import pytest

from parametric.posture.scoring.static_postures import Part, Zone, hold, hold_lumbar, limits

OK, LIMITED, NO = Zone.ACCEPTABLE, Zone.LIMITED, Zone.NOT_RECOMMENDED
INF = math.inf


@pytest.mark.parametrize(
    ("part", "angle", "zone", "minutes"),
    [
        ("trunk", -0.1, NO, 0),
        ("trunk", 0, OK, INF),
        ("trunk", 20, OK, INF),
        ("trunk", 20.01, LIMITED, 4),
        ("trunk", 40, LIMITED, 2.5),
        ("trunk", 60, LIMITED, 1),
        ("trunk", 60.1, NO, 0),
        ("head", -0.1, NO, 0),
        ("head", 25, OK, INF),
        ("head", 25.01, LIMITED, 8),
        ("head", 55, LIMITED, 4.5),
        ("head", 85, LIMITED, 1),
        ("head", 85.1, NO, 0),
        ("neck", -0.1, NO, 0),
        ("neck", 0, OK, INF),
        ("neck", 25, OK, INF),
        ("neck", 25.1, NO, 0),
        ("upper_arm", 20, OK, INF),
        ("upper_arm", 20.01, LIMITED, 3),
        ("upper_arm", 40, LIMITED, 2),
        ("upper_arm", 60, LIMITED, 1),
        ("upper_arm", 60.1, NO, 0),
        ("knee", 89.9, NO, 0),
        ("knee", 90, OK, INF),
        ("knee", 135, OK, INF),
        ("knee", 135.1, NO, 0),
        ("trunk", math.nan, NO, 0),
    ],
)
def test_unsupported(part: Part, angle: float, zone: Zone, minutes: float) -> None:
    found = hold(part, angle)
    assert found.zone == zone
    assert found.minutes == pytest.approx(minutes, abs=2e-3)


@pytest.mark.parametrize(
    ("part", "angle", "zone"),
    [
        ("trunk", -30, OK),
        ("trunk", 60, OK),
        ("trunk", 60.1, NO),
        ("head", -30, OK),
        ("head", 40, LIMITED),
        ("upper_arm", 60, OK),
        ("upper_arm", 60.1, NO),
        ("neck", -1, NO),
        ("knee", 80, NO),
    ],
)
def test_supported(part: Part, angle: float, zone: Zone) -> None:
    assert hold(part, angle, supported=True).zone == zone


def test_rounded_back() -> None:
    assert hold_lumbar(True).zone == NO
    assert hold_lumbar(True).minutes == 0.0
    assert hold_lumbar(False).zone == OK
    assert np.asarray(hold_lumbar(np.array([True, False])).minutes).tolist() == [0.0, INF]


@pytest.mark.parametrize("part", ["trunk", "head", "upper_arm"])
def test_leaning_further_is_never_held_longer(part: Part) -> None:
    found = hold(part, np.linspace(0.0, 100.0, 1001))
    assert np.all(np.asarray(found.minutes)[1:] <= np.asarray(found.minutes)[:-1])
    assert np.all(np.diff(np.asarray(found.zone)) >= 0)


def test_arrays_are_judged_as_each_of_their_numbers() -> None:
    angles, rests = np.linspace(-20.0, 100.0, 121), np.arange(121) % 2 == 0
    together = hold("trunk", angles, supported=rests)
    alone = [hold("trunk", float(a), supported=bool(r)) for a, r in zip(angles, rests, strict=True)]
    assert np.asarray(together.zone).tolist() == [one.zone for one in alone]
    assert np.asarray(together.minutes).tolist() == [one.minutes for one in alone]


def test_every_limit_says_that_it_is_from_memory() -> None:
    assert len(limits()) == 5
    assert all("from memory" in row.source for row in limits().values())
