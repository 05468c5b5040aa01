"""The estimate against figures computed from the whole public survey.

Source: ANSUR II 2012, Gordon et al., Natick/TR-15/007, public rows (4082 men, 1986 women), from which another person
computed the tables below: percentiles by linear interpolation, barefoot, erect. The moments shipped come from a
three-quarter subset of the same rows, so the figures agree within sampling, not exactly.

Tolerances:
    A statistic of a random three quarters differs from the whole by its standard error times sqrt(1 - 3/4) = 1/2.
    Four such standard errors (1 in 16 000) plus the rounding of the printed figure are allowed.
    Percentiles of the shipped normal distribution differ from those counted by the skewness of the dimension too. By
    Cornish and Fisher a skewness of 0.6, that of the mass and the belly, moves the 5th, 50th and 95th percentile by
    0.6 / 6 * 1.7 = 0.17 standard deviations; 0.2 are allowed.
"""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from parametric.body import estimate
from parametric.catalogue.survey import SurveySex, moments

SUBSET = {"male": 3081, "female": 1479}
FOUR_ERRORS = 4 * 0.5

# name: (mean, sd, p5, p50, p95) of men, then of women
TABLE = {
    "stature": ((1756, 69, 1648, 1755, 1870), (1629, 64, 1525, 1626, 1740)),
    "body_mass": ((85.5, 14.2, 64.4, 84.6, 110.7), (67.8, 11.0, 51.3, 66.8, 87.1)),
    "sitting_height": ((918, 36, 860, 918, 977), (857, 33, 803, 857, 912)),
    "eye_height_sitting": ((805, 33, 750, 804, 860), (748, 30, 698, 748, 799)),
    "elbow_height_sitting": ((245, 29, 197, 246, 291), (232, 26, 189, 233, 276)),
    "thigh_clearance": ((181, 16, 157, 180, 207), (168, 14, 145, 167, 191)),
    "buttock_knee_length": ((618, 31, 569, 617, 669), (591, 33, 541, 589, 646)),
    "buttock_popliteal_length": ((503, 27, 459, 502, 548), (485, 29, 441, 483, 535)),
    "knee_height": ((554, 28, 509, 553, 602), (511, 27, 469, 510, 557)),
    "popliteal_height": ((430, 25, 390, 430, 471), (388, 24, 350, 387, 428)),
    "bideltoid_breadth": ((510, 33, 459, 509, 567), (450, 29, 406, 450, 499)),
    "hip_breadth_sitting": ((379, 30, 333, 378, 431), (399, 33, 348, 397, 456)),
    "elbow_to_elbow_breadth": ((580, 51, 497, 579, 667), (495, 41, 432, 492, 564)),
    "elbow_fingertip_length": ((480, 23, 444, 480, 520), (440, 23, 404, 438, 480)),
    "shoulder_elbow_length": ((364, 18, 334, 363, 394), (334, 17, 307, 334, 363)),
    "foot_length": ((271, 13, 250, 271, 293), (246, 12, 226, 246, 268)),
    "abdominal_depth_sitting": ((255, 37, 200, 251, 320), (230, 32, 184, 227, 285)),
    "shoulder_height": ((1441, 63, 1339, 1439, 1546), (1335, 58, 1242, 1332, 1434)),
    "thumb_tip_reach": ((812, 44, 742, 811, 886), (744, 43, 674, 742, 816)),
}
ROWS = [(sex, name, *figures[i]) for name, figures in TABLE.items() for i, sex in enumerate(("male", "female"))]

# name: (a, b, residual SD) of d = a + b * stature, men, then women
REGRESSIONS = {
    "sitting_height": ((205.8, 0.4057, 22), (215.8, 0.3935, 21)),
    "eye_height_sitting": ((158.0, 0.3681, 22), (181.1, 0.3479, 21)),
    "elbow_height_sitting": ((116.3, 0.0733, 28), (155.7, 0.0471, 26)),
    "thigh_clearance": ((80.6, 0.0569, 15), (52.9, 0.0706, 13)),
    "buttock_knee_length": ((-9.0, 0.3570, 18), (-27.9, 0.3798, 22)),
    "buttock_popliteal_length": ((-32.9, 0.3051, 18), (-47.0, 0.3267, 20)),
    "knee_height": ((-83.8, 0.3633, 13), (-90.9, 0.3698, 13)),
    "popliteal_height": ((-107.0, 0.3056, 13), (-94.1, 0.2962, 14)),
    "bideltoid_breadth": ((249.8, 0.1484, 31), (189.1, 0.1604, 27)),
    "hip_breadth_sitting": ((96.3, 0.1612, 28), (92.2, 0.1883, 30)),
    "elbow_fingertip_length": ((10.6, 0.2674, 14), (-7.0, 0.2744, 15)),
    "shoulder_elbow_length": ((-17.2, 0.2169, 11), (-24.6, 0.2204, 10)),
    "foot_length": ((30.1, 0.1373, 9), (18.5, 0.1399, 9)),
    "abdominal_depth_sitting": ((116.7, 0.0786, 37), (90.5, 0.0855, 31)),
    "shoulder_height": ((-126.9, 0.8926, 16), (-96.9, 0.8793, 14)),
    "head_length": ((133.1, 0.0378, 7), (122.2, 0.0415, 7)),
}
LINES = [(sex, name, *lines[i]) for name, lines in REGRESSIONS.items() for i, sex in enumerate(("male", "female"))]

# d = a + b * stature + c * mass, and the residual SD
WITH_MASS = [
    ("male", "thigh_clearance", 165.9, -0.0404, 1.000, 8),
    ("male", "bideltoid_breadth", 433.5, -0.0610, 2.153, 15),
    ("male", "hip_breadth_sitting", 261.4, -0.0272, 1.936, 14),
    ("male", "abdominal_depth_sitting", 335.3, -0.1707, 2.563, 18),
    ("female", "thigh_clearance", 148.3, -0.0371, 1.179, 8),
    ("female", "bideltoid_breadth", 386.8, -0.0627, 2.443, 14),
    ("female", "hip_breadth_sitting", 305.6, -0.0524, 2.638, 18),
    ("female", "abdominal_depth_sitting", 316.6, -0.1697, 2.796, 17),
]

# means of the 93 men of 1900 mm and taller (mean stature 1928), and the residual SD of the regression
TALL_MEN = {
    "sitting_height": (987, 22),
    "eye_height_sitting": (867, 22),
    "elbow_height_sitting": (260, 28),
    "thigh_clearance": (190, 15),
    "buttock_knee_length": (679, 18),
    "buttock_popliteal_length": (555, 18),
    "knee_height": (619, 13),
    "popliteal_height": (484, 13),
    "bideltoid_breadth": (536, 31),
    "hip_breadth_sitting": (406, 28),
    "elbow_fingertip_length": (528, 14),
    "shoulder_elbow_length": (400, 11),
    "foot_length": (295, 9),
    "shoulder_height": (1597, 16),
}


def half_digit(figure: float) -> float:
    return 0.05 if figure != int(figure) else 0.5


@pytest.mark.parametrize(("sex", "name", "mean", "sd", "p5", "p50", "p95"), ROWS)
def test_moments_and_percentiles(
    sex: SurveySex, name: str, mean: float, sd: float, p5: float, p50: float, p95: float
) -> None:
    table = moments(sex)
    at = table.names.index(name)
    got = NormalDist(float(table.mean[at]), math.sqrt(table.cov[at, at]))
    n = SUBSET[sex]
    assert table.n == n
    assert got.mean == pytest.approx(mean, abs=half_digit(sd) + FOUR_ERRORS * sd / math.sqrt(n))
    assert got.stdev == pytest.approx(sd, abs=half_digit(sd) + FOUR_ERRORS * sd / math.sqrt(2 * n))
    for p, counted in ((0.05, p5), (0.50, p50), (0.95, p95)):
        assert got.inv_cdf(p) == pytest.approx(counted, abs=0.2 * sd)


def sampling(sex: SurveySex, stature: float, sd: float) -> float:
    """Four standard errors, subset against whole, of a regression line at a stature."""
    table = moments(sex)
    away = (stature - float(table.mean[0])) / math.sqrt(table.cov[0, 0])
    return FOUR_ERRORS * sd * math.sqrt((1 + away**2) / table.n)


@pytest.mark.parametrize(("sex", "name", "a", "b", "sd"), LINES)
def test_regression_on_stature(sex: SurveySex, name: str, a: float, b: float, sd: float) -> None:
    for stature in (1550, 1700, 1850, 2050):
        body = estimate(sex=sex, stature=stature)
        rounding = 0.05 + 0.00005 * stature
        assert body.mean[name] == pytest.approx(a + b * stature, abs=rounding + sampling(sex, stature, sd))
        assert body.sd[name] == pytest.approx(sd, abs=0.5 + FOUR_ERRORS * sd / math.sqrt(2 * SUBSET[sex]))


@pytest.mark.parametrize(("sex", "name", "a", "b", "c", "sd"), WITH_MASS)
def test_regression_on_stature_and_mass(sex: SurveySex, name: str, a: float, b: float, c: float, sd: float) -> None:
    for stature, mass in ((1600, 60), (1750, 80), (2050, 100)):
        body = estimate(sex=sex, stature=stature, mass=mass)
        rounding = 0.05 + 0.00005 * stature + 0.0005 * mass
        # mass and stature lie at most 3 standard deviations off where one is given the other
        tolerance = rounding + sampling(sex, stature, sd) + FOUR_ERRORS * 3 * sd / math.sqrt(SUBSET[sex])
        assert body.mean[name] == pytest.approx(a + b * stature + c * mass, abs=tolerance)
        assert body.sd[name] == pytest.approx(sd, abs=0.5 + FOUR_ERRORS * sd / math.sqrt(2 * SUBSET[sex]))


def test_two_metres_five_and_a_hundred_kilograms() -> None:
    """Printed beside the regressions: thigh 183, bideltoid 524, hip 399, abdomen 242 (to 1 mm, sampling up to 3)."""
    body = estimate(sex="male", stature=2050, mass=100)
    got = [body.mean[name] for _, name, *_ in WITH_MASS[:4]]
    assert got == pytest.approx([183, 524, 399, 242], abs=4)


@pytest.mark.parametrize(("name", "mean", "sd"), [(name, *figures) for name, figures in TALL_MEN.items()])
def test_tall_men(name: str, mean: float, sd: float) -> None:
    """4 mm for the bend of the line, and two standard errors of a mean over 93 men: 5.9 to 10.4 mm."""
    body = estimate(sex="male", stature=1928)
    assert body.mean[name] == pytest.approx(mean, abs=4 + 2 * sd / math.sqrt(93))
