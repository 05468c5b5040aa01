"""Ten thousand postures of random people in random vans, against importing the CAD kernel, on one core.

It judges nothing: python -m tests.benchmarks.postures.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from statistics import median

import numpy as np

from parametric.posture.solver import solve
from tests.random_postures import people, skeletons, stations

COUNT = 10_000
ROUNDS = 5
AIM = 0.7


def main() -> None:
    """Measure in turn and print medians."""
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    rng = np.random.default_rng(1)
    dims = people(COUNT, rng)
    body, usual, rough = skeletons(dims), stations(dims, rng), stations(dims, rng, rough=True)
    cad: list[float] = []
    usual_times: list[float] = []
    rough_times: list[float] = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        subprocess.run((sys.executable, "-c", "import cadquery"), check=True)
        cad.append(time.perf_counter() - start)
        for station, times in ((usual, usual_times), (rough, rough_times)):
            start = time.perf_counter()
            solve(body, station)
            times.append(time.perf_counter() - start)
    base = median(cad)
    print(f"python -c 'import cadquery'  {base:.2f} s")
    for name, station, times in (("usual stations", usual, usual_times), ("rough stations", rough, rough_times)):
        found = solve(body, station)
        print(
            f"{COUNT} postures, {name}: {median(times):.2f} s, {median(times) / base:.2f} of it; aim under {AIM:g}; "
            f"{np.mean(found.exists):.1%} exist, {np.mean(found.settled):.2%} settled"
        )


if __name__ == "__main__":
    main()
