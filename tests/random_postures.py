"""Random people at random desks in random vans, seeded; for the posture solver's tests and benchmark."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from parametric.body import Sex, estimate
from parametric.posture.skeleton import Skeleton
from parametric.posture.station import NONE, Station

Array = NDArray[np.float64]
SEXES: tuple[Sex, ...] = ("male", "female")
SHORT, TALL = 1500.0, 2100.0


def people(count: int, rng: np.random.Generator) -> dict[str, Array]:
    """(count,) of every body dimension: both sexes, 1500 to 2100, scattered as people of one stature are."""
    out: dict[str, Array] = {}
    sexes, share = rng.integers(0, 2, count), rng.uniform(0.0, 1.0, count)
    for k, sex in enumerate(SEXES):
        low, high = estimate(sex=sex, stature=SHORT), estimate(sex=sex, stature=TALL)
        scatter = rng.multivariate_normal(np.zeros(len(low.mean)), low.covariance, count, check_valid="ignore")
        for j, name in enumerate(low.mean):
            value = low.mean[name] * (1.0 - share) + high.mean[name] * share + scatter[:, j]
            out[name] = np.where(sexes == k, value, out.get(name, value))
    return out


def skeletons(of: dict[str, Array]) -> Skeleton:
    """Their skeletons."""
    return Skeleton.from_dimensions({**of})


def stations(of: dict[str, Array], rng: np.random.Generator, *, rough: bool = False) -> Station:
    """One station each: seats a little low, desks a little high, a roof over every second one.

    Args:
        of: The people's dimensions.
        rng: Chance.
        rough: Far worse ones, of which about half admit no posture.
    """
    count = len(of["stature"])

    def between(low: float, high: float) -> Array:
        return rng.uniform(low, high, count)

    def some(share: float, value: Array) -> Array:
        return np.where(rng.random(count) < share, value, NONE)

    shoes, front = between(0.0, 30.0), between(1300.0, 1700.0)
    seat = of["popliteal_height"] + shoes + (between(-140.0, 60.0) if rough else between(-80.0, 30.0))
    back = front + between(30.0, 90.0) - of["buttock_popliteal_length"]
    elbow, least = of["elbow_height_sitting"], of["thigh_clearance"] + 40.0
    desk = seat + (elbow + between(-80.0, 120.0) if rough else np.maximum(elbow + between(-30.0, 60.0), least))
    edge = back + of["abdominal_depth_sitting"] + (between(-30.0, 120.0) if rough else between(10.0, 80.0))
    screen = edge + between(300.0, 450.0)
    return Station(
        seat=seat,
        seat_front=front,
        feet_from=front - between(0.0, 100.0),
        feet_to=front + (between(250.0, 800.0) if rough else between(450.0, 800.0)),
        rest=some(0.4, back),
        recline=(np.zeros(count), between(5.0, 35.0)),
        desk=desk,
        desk_edge=edge,
        desk_under=desk - (between(18.0, 60.0) if rough else 18.0),
        screen_x=(screen, screen + between(0.0, 250.0)),
        screen_z=desk + between(80.0, 420.0),
        roof=some(0.5, seat + of["sitting_height"] + (between(-150.0, 150.0) if rough else between(-60.0, 200.0))),
        shoes=shoes,
    )
