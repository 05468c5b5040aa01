from __future__ import annotations

import dataclasses
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from parametric.body import Body
from parametric.posture.chain import Unknown
from parametric.posture.skeleton import Skeleton
from parametric.posture.solved import Reason
from parametric.posture.solver import solve
from parametric.posture.station import NONE, Legs, Station
from tests.random_postures import people, skeletons, stations

SHOES = 10.0
SPREAD = np.array([150.0, 20.0, 30.0, 40.0, 25.0, 30.0, 30.0, 30.0, 20.0, 100.0, 150.0])


def fitting(body: Body, **change: Any) -> Any:
    """Seat at popliteal height, keys at elbow height, screen where the eyes like it, the back 60 behind a knee gap."""
    mean, back = body.mean, 1000.0
    seat, front = mean["popliteal_height"] + SHOES, back + mean["buttock_popliteal_length"] - 60.0
    desk, edge = seat + mean["elbow_height_sitting"] - 20.0, back + mean["abdominal_depth_sitting"] + 40.0
    station = Station(
        seat=seat,
        seat_front=front,
        feet_from=front - 50.0,
        feet_to=front + 700.0,
        desk=desk,
        desk_edge=edge,
        desk_under=desk - 18.0,
        screen_x=(edge + 200.0, edge + 700.0),
        screen_z=seat + mean["eye_height_sitting"] - 180.0,
        shoes=SHOES,
    )
    return replace(station, **change)


def solved(body: Body, **change: Any) -> Any:
    """What the solver makes of it; every number is a float."""
    return solve(Skeleton.of(body), fitting(body, **change))


def test_a_workplace_that_fits_gives_the_standard_posture(body: Body) -> None:
    """Hand-checked: level thigh, upright shank and trunk, hanging arm, level forearm, gaze 15-20 down at 600."""
    found = solved(body)
    angles = found.angles
    assert found.exists
    assert found.settled
    assert angles.trunk == pytest.approx(0.0, abs=2.0)
    assert angles.knee == pytest.approx(92.5, abs=2.5)
    assert angles.hip == pytest.approx(91.0, abs=2.0)
    assert angles.upper_arm == pytest.approx(0.0, abs=10.0)
    assert angles.elbow == pytest.approx(90.0, abs=10.0)
    assert angles.wrist == pytest.approx(0.0, abs=3.0)
    assert 15.0 <= angles.gaze <= 20.0
    assert found.view == pytest.approx(600.0, abs=10.0)
    assert found.objective < 2.0


def test_level_thigh_is_exact_where_the_seat_is_at_popliteal_height(tall: Body) -> None:
    """Shank upright as the feet have no choice: knee and hip at 90."""
    mean = tall.mean
    station = fitting(tall, rest=1000.0, recline=(0.0, 0.0))
    skeleton: Any = Skeleton.of(tall)
    heel = 1000.0 + skeleton.hip_from_back + skeleton.thigh - skeleton.heel_to_ankle
    found: Any = solve(skeleton, replace(station, feet_from=heel, feet_to=heel + mean["foot_length"]))
    assert found.angles.knee == pytest.approx(90.0, abs=0.01)
    assert found.angles.hip == pytest.approx(90.0, abs=0.01)
    assert found.angles.ankle == pytest.approx(0.0, abs=0.01)
    assert found.joints.knee[1] + skeleton.knee_cap == pytest.approx(SHOES + mean["knee_height"], abs=0.1)


def test_angles_belong_to_the_points(tall: Body) -> None:
    found = solved(tall, laptop=True, screen_x=(180.0, 180.0), screen_z=850.0)
    joints, angles = found.joints, found.angles
    assert _inner(joints.hip, joints.knee, joints.ankle) == pytest.approx(angles.knee)
    assert _inner(joints.shoulder, joints.hip, joints.knee) == pytest.approx(angles.hip)
    assert _inner(joints.shoulder, joints.elbow, joints.wrist) == pytest.approx(angles.elbow)
    assert angles.elbow + angles.lower_arm == pytest.approx(180.0)
    run, drop = np.subtract(joints.screen, joints.eye) * (1.0, -1.0)
    assert np.degrees(np.arctan2(drop, run)) == pytest.approx(angles.gaze)
    assert np.hypot(run, drop) == pytest.approx(found.view)
    assert joints.screen[0] - joints.keys[0] == pytest.approx(180.0)
    assert angles.neck == pytest.approx(angles.head - angles.trunk)
    assert angles.eye == pytest.approx(angles.gaze - angles.head)
    assert angles.shoulder == pytest.approx(angles.upper_arm + angles.trunk)


def test_a_laptop_bends_the_neck_more_than_a_raised_screen(body: Body) -> None:
    """Direction of Work 2018, DOI 10.3233/WOR-182796: laptop against desktop, neck flexion +10.9 (7.9 to 14.0)."""
    desk = fitting(body).desk
    alone = solved(body, laptop=True, screen_x=(180.0, 180.0), screen_z=desk + 130.0)
    raised = solved(body)
    assert 5.0 < alone.angles.neck - raised.angles.neck < 20.0
    lifted = solved(body, laptop=True, screen_x=(180.0, 180.0), screen_z=desk + 130.0, riser=150.0)
    assert raised.angles.neck - 1.0 < lifted.angles.neck < alone.angles.neck


def test_knees_at_80_degrees_on_a_seat_82_lower(tall: Body) -> None:
    """Own calculation: a thigh of 430-490 turns by 9.6-11 degrees where the feet keep the shank upright."""
    station = fitting(tall, rest=1000.0, recline=(0.0, 0.0), desk=NONE, screen_z=NONE)
    skeleton: Any = Skeleton.of(tall)
    drop = np.degrees(np.arcsin(82.0 / skeleton.thigh))
    knee = 1000.0 + skeleton.hip_from_back + skeleton.thigh * np.cos(np.radians(drop))
    heel = knee - skeleton.heel_to_ankle
    low = replace(station, seat=station.seat - 82.0, seat_front=station.seat_front - 20.0)
    found: Any = solve(skeleton, replace(low, feet_from=heel, feet_to=heel + skeleton.foot))
    assert found.angles.knee == pytest.approx(80.0, abs=0.5)
    assert found.angles.hip == pytest.approx(found.angles.knee, abs=0.01)


def test_free_feet_go_forward_before_the_knee_closes(tall: Body) -> None:
    low = solved(tall, seat=fitting(tall).seat - 82.0, desk=NONE, screen_z=NONE)
    assert low.angles.knee > 90.0
    assert low.angles.ankle < -8.0
    assert low.angles.hip < 85.0


def test_a_low_roof_makes_the_trunk_lean_and_a_back_rest_lets_it_recline(tall: Body) -> None:
    roof = fitting(tall).seat + tall.mean["sitting_height"] - 40.0
    free = solved(tall, roof=roof)
    held = solved(tall, roof=roof, rest=1000.0)
    assert free.exists
    assert held.exists
    assert held.angles.trunk < -15.0
    assert abs(free.angles.trunk) > 8.0
    assert held.objective < free.objective
    assert free.clearances.crown == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({"desk_under": 600.0}, Reason.THIGHS_HIT_DESK),
        ({"seat_rear": 1600.0}, Reason.SEAT_TOO_SHORT),
        ({"feet": -700.0, "desk": NONE, "screen_z": NONE}, Reason.FEET_DANGLE),
        ({"feet_to": 1480.0, "feet_from": 1250.0}, Reason.TOES_HIT_FRONT),
        ({"rest": 1000.0, "desk_edge": 1150.0}, Reason.BELLY_HITS_DESK),
        ({"roof": 1250.0}, Reason.HEAD_HITS_ROOF),
        ({"rest": 1000.0, "desk_edge": 2000.0, "screen_z": NONE}, Reason.DESK_TOO_FAR),
        ({"rest": 1000.0, "desk": 1150.0}, Reason.FOREARM_HITS_EDGE),
        ({"rest": 1000.0, "desk": 2300.0, "screen_z": NONE}, Reason.DESK_TOO_HIGH),
        (
            {"rest": 1000.0, "desk": 50.0, "desk_under": NONE, "screen_z": NONE, "home_row": (-300.0, 300.0)},
            Reason.DESK_TOO_LOW,
        ),
        ({"screen_x": (3200.0, 3200.0)}, Reason.SCREEN_TOO_FAR),
        (
            {"rest": 1000.0, "recline": (0.0, 0.0), "screen_x": (1600.0, 1600.0), "screen_z": 1900.0},
            Reason.SCREEN_OUT_OF_SIGHT,
        ),
        ({"rest": 900.0, "seat_front": 1600.0}, Reason.CALVES_HIT_SEAT),
    ],
    ids=lambda value: value.name.lower() if isinstance(value, Reason) else "",
)
def test_where_there_is_no_posture_the_reason_is_told(tall: Body, change: dict[str, Any], reason: Reason) -> None:
    found = solved(tall, **change)
    assert not found.exists
    assert Reason(found.reason) is reason
    assert found.shortfall > 0.0
    assert Reason(found.reason).says
    assert solved(tall).reason == Reason.FITS


def test_knees_that_do_not_fit_under_the_desk_are_told(tall: Body) -> None:
    """Feet far below a low seat's reach: knees high, desk low; the thigh still fits."""
    seat = fitting(tall).seat - 150.0
    found = solved(tall, seat=seat, desk_under=seat + tall.mean["thigh_clearance"] + 5.0, desk=NONE, feet_to=1700.0)
    assert Reason(found.reason) is Reason.KNEES_HIT_DESK
    assert Reason(found.reason).unit == "mm"


def test_the_shortfall_is_about_what_is_missing(tall: Body) -> None:
    """A seat that cannot be left and a belly that cannot be pulled in: 30 are missing, and 30 mend it."""
    edge = 1000.0 + tall.mean["abdominal_depth_sitting"]
    short = solved(tall, rest=1000.0, desk_edge=edge - 30.0)
    assert Reason(short.reason) is Reason.BELLY_HITS_DESK
    assert short.shortfall == pytest.approx(30.0, abs=0.1)
    assert solved(tall, rest=1000.0, desk_edge=edge - 30.0 + short.shortfall + 0.1).exists
    assert not solved(tall, rest=1000.0, desk_edge=edge - 1.0).exists


def test_stretched_legs_rest_on_the_heels(tall: Body) -> None:
    found: Any = solve(
        Skeleton.of(tall),
        Station(
            legs=Legs.HEELS, seat=370.0, seat_front=2600.0, feet=370.0, feet_from=900.0, feet_to=2600.0, rest=600.0
        ),
    )
    assert found.exists
    assert found.joints.heel[1] == pytest.approx(370.0)
    assert 160.0 < found.angles.knee <= 180.0
    assert found.angles.hip > 90.0
    assert found.joints.toe[1] > 600.0
    back_to_heel = found.joints.heel[0] - 600.0
    # DIN 33402-2, men: buttock-leg length 1045 at the median stature of 1750 and 1140 at p95, 1855
    assert back_to_heel == pytest.approx(1140.0 / 1855.0 * 1960.0, rel=0.06)


def test_folded_legs_stay_out_of_the_plane(tall: Body) -> None:
    station = Station(legs=Legs.FOLDED, seat=370.0, seat_front=2000.0, seat_rear=600.0, folded_rise=180.0)
    found: Any = solve(Skeleton.of(tall), replace(station, folded_reach=750.0, desk=620.0, desk_edge=900.0))
    assert found.exists
    assert np.isnan([found.angles.knee, found.angles.ankle, *found.joints.ankle, *found.joints.heel]).all()
    skeleton: Any = Skeleton.of(tall)
    assert found.joints.knee[1] + skeleton.knee_cap == pytest.approx(370.0 + 180.0)
    hip_x = found.joints.hip[0]
    assert found.joints.knee[0] + skeleton.knee_cap == pytest.approx(hip_x - skeleton.hip_from_back + 750.0)
    low: Any = solve(skeleton, replace(station, folded_reach=750.0, folded_rise=230.0, desk_under=590.0))
    assert Reason(low.reason) is Reason.KNEES_HIT_DESK
    assert low.shortfall == pytest.approx(10.0, abs=0.1)


def test_a_footwell_that_is_too_short_for_the_foot_has_no_posture(tall: Body) -> None:
    seat = fitting(tall).seat
    well: dict[str, Any] = {
        "feet": -0.0,
        "feet_from": 1450.0,
        "screen_z": NONE,
        "desk": NONE,
        "desk_under": NONE,
        "seat": seat,
    }
    foot = tall.mean["foot_length"]
    assert solved(tall, **well, feet_to=1450.0 + foot + 100.0).exists
    tight = solved(tall, **well, feet_to=1450.0 + foot - 40.0)
    assert not tight.exists
    assert Reason(tight.reason) in {Reason.TOES_HIT_FRONT, Reason.HEELS_HIT_BACK}
    assert tight.shortfall == pytest.approx(20.0, abs=2.0)  # half at each end


def test_nothing_to_do_leaves_every_joint_neutral_but_for_the_seat(tall: Body) -> None:
    found = solved(tall, desk=NONE, screen_z=NONE)
    assert found.angles.neck == pytest.approx(5.0, abs=0.01)
    assert found.angles.elbow == pytest.approx(95.0, abs=0.01)
    assert found.angles.upper_arm == pytest.approx(0.0, abs=0.01)
    assert np.isnan([found.view, found.angles.gaze, found.angles.eye]).all()
    assert found.clearances.belly == np.inf


def test_costs_add_up_to_the_objective(tall: Body) -> None:
    found = solved(tall, desk=fitting(tall).desk + 60.0)
    assert sum(found.costs.values()) == pytest.approx(found.objective)
    assert found.costs["upper_arm"] > 0.05


def test_batch_equals_single() -> None:
    rng = np.random.default_rng(3)
    dims = people(60, rng)
    body, station = skeletons(dims), stations(dims, rng)
    many: Any = solve(body, station)
    for k in range(60):
        one: Any = solve(_row(body, k), _row(station, k))
        for name in ("objective", "shortfall", "view", "reason", "exists"):
            assert _close(getattr(one, name), getattr(many, name)[k]), name
        assert _close(one.state, many.state[:, k])
        for owner in ("angles", "joints", "clearances"):
            for field in dataclasses.fields(getattr(one, owner)):
                found = np.asarray(getattr(getattr(many, owner), field.name))[..., k]
                assert _close(getattr(getattr(one, owner), field.name), found), field.name


def test_any_shape_of_arrays_broadcasts(tall: Body) -> None:
    heights = fitting(tall).seat + np.array([[-40.0], [0.0]])
    grid = solved(tall, seat=heights, desk=fitting(tall).desk + np.array([0.0, 20.0, 40.0]))
    assert np.shape(grid.objective) == (2, 3)
    assert grid.state.shape == (len(Unknown), 2, 3)
    assert grid.objective[1, 2] == pytest.approx(solved(tall, desk=fitting(tall).desk + 40.0).objective, rel=1e-9)


@pytest.mark.parametrize("rough", [False, True])
def test_the_start_does_not_matter(rough: bool) -> None:
    rng = np.random.default_rng(5)
    dims = people(300, rng)
    body, station = skeletons(dims), stations(dims, rng, rough=rough)
    plain: Any = solve(body, station)
    for _ in range(3):
        start = plain.state + rng.uniform(-1.0, 1.0, plain.state.shape) * SPREAD[:, None]
        again: Any = solve(body, station, start=start)
        assert np.array_equal(plain.exists, again.exists)
        there = plain.exists
        assert np.allclose(plain.objective[there], again.objective[there], rtol=1e-5)
        assert np.allclose(plain.state[:, there], again.state[:, there], atol=1e-3)


def test_every_posture_that_exists_keeps_its_limits() -> None:
    rng = np.random.default_rng(8)
    dims = people(1000, rng)
    station = stations(dims, rng, rough=True)
    found: Any = solve(skeletons(dims), station)
    there = found.exists
    assert 0.3 < np.mean(there) < 0.7
    assert np.mean(found.settled) > 0.99
    for field in dataclasses.fields(found.clearances):
        assert np.min(getattr(found.clearances, field.name)[there]) > -0.02, field.name
    assert np.max(np.abs(found.joints.keys[1] - station.desk - station.keyboard)[there]) < 0.02
    assert np.max(np.abs(found.joints.heel[1] - station.shoes)[there]) < 0.02
    assert np.array_equal(found.reason[there], np.zeros(np.sum(there)))
    assert np.all(found.shortfall[~there & found.settled] > 0.0)


def _inner(a: Any, b: Any, c: Any) -> float:
    """Angle at b, degrees."""
    u, v = np.subtract(a, b), np.subtract(c, b)
    return float(np.degrees(np.arccos(np.dot(u, v) / np.linalg.norm(u) / np.linalg.norm(v))))


def _row(value: Any, k: int) -> Any:
    def one(item: Any) -> Any:
        if isinstance(item, tuple):
            return tuple(one(part) for part in item)
        return float(item[k]) if isinstance(item, np.ndarray) else item

    return replace(value, **{f.name: one(getattr(value, f.name)) for f in dataclasses.fields(value)})


def _close(a: Any, b: Any) -> bool:
    return bool(
        np.allclose(np.asarray(a, dtype=float), np.asarray(b, dtype=float), rtol=1e-9, atol=1e-6, equal_nan=True)
    )
