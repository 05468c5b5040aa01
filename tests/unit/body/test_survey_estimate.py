from __future__ import annotations

import re
import sys
from collections.abc import Mapping
from pathlib import Path
from subprocess import run
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

import parametric.body
from parametric.body import Sex, estimate
from parametric.catalogue.dimensions import dimensions
from parametric.catalogue.survey import allowed_range, moments
from parametric.core.errors import BodyError, CatalogueError, ParametricError

SEXES: tuple[Sex, ...] = ("male", "female", "unspecified")
MEASURABLE = [name for name in dimensions() if name not in ("stature", "body_mass")]

statures = st.floats(1500, 2100)
sexes = st.sampled_from(SEXES)


@st.composite
def measurements(draw: st.DrawFn) -> dict[str, float]:
    """A few measured dimensions within three standard deviations of the survey's men."""
    table = moments("male")
    names = draw(st.lists(st.sampled_from(MEASURABLE), unique=True, max_size=6))
    out = {}
    for name in names:
        at = table.names.index(name)
        out[name] = float(table.mean[at] + draw(st.floats(-3, 3)) * np.sqrt(table.cov[at, at]))
    return out


def test_public_where_it_is_promised() -> None:
    assert parametric.body.estimate is estimate
    assert tuple(estimate(sex="male", stature=1800).mean) == tuple(dimensions())


@given(sexes, statures, st.none() | st.floats(45, 140), measurements())
def test_what_is_known_is_reproduced_exactly(
    sex: Sex, stature: float, mass: float | None, measured: dict[str, float]
) -> None:
    body = estimate(sex=sex, stature=stature, mass=mass, measured=measured)
    given_values = {"stature": stature, **({} if mass is None else {"body_mass": mass}), **measured}
    assert body.known == set(given_values)
    for name, value in given_values.items():
        assert body.mean[name] == pytest.approx(value, abs=1e-9)
        assert body.sd[name] == 0.0


@given(st.sampled_from(("male", "female")), statures, measurements())
def test_knowing_more_never_widens(sex: Sex, stature: float, measured: dict[str, float]) -> None:
    before = estimate(sex=sex, stature=stature)
    for name, value in measured.items():
        after = estimate(sex=sex, stature=stature, measured={name: value})
        assert all(after.sd[each] <= before.sd[each] + 1e-9 for each in before.sd)
    everything = estimate(sex=sex, stature=stature, measured=measured)
    assert all(everything.sd[each] <= before.sd[each] + 1e-9 for each in before.sd)


@given(sexes, statures, measurements())
def test_order_of_measurements_does_not_matter(sex: Sex, stature: float, measured: dict[str, float]) -> None:
    turned = dict(reversed(measured.items()))
    assert estimate(sex=sex, stature=stature, measured=measured) == estimate(sex=sex, stature=stature, measured=turned)


@given(sexes, statures, measurements())
def test_measuring_what_was_expected_anyway_moves_nothing(sex: Sex, stature: float, measured: dict[str, float]) -> None:
    if sex == "unspecified":
        return
    first = estimate(sex=sex, stature=stature, measured=measured)
    name = next(each for each in MEASURABLE if each not in measured)
    low, high = allowed_range(name)
    assume(low <= first.mean[name] <= high)  # measurements no one body has may lead to one no tape would find
    second = estimate(sex=sex, stature=stature, measured={**measured, name: first.mean[name]})
    assert dict(second.mean) == pytest.approx(dict(first.mean), abs=1e-6)


@given(statures, st.none() | st.floats(45, 140))
def test_unspecified_is_the_mixture_of_both(stature: float, mass: float | None) -> None:
    men, women, mixed = (estimate(sex=sex, stature=stature, mass=mass) for sex in SEXES)
    for name in MEASURABLE:
        low, high = sorted((men.mean[name], women.mean[name]))
        assert low - 1e-9 <= mixed.mean[name] <= high + 1e-9
    # all weights follow from one dimension that tells the sexes apart, and then every variance must agree
    name = "biacromial_breadth"
    weight = (mixed.mean[name] - women.mean[name]) / (men.mean[name] - women.mean[name])
    for name in MEASURABLE:
        apart = men.mean[name] - women.mean[name]
        within = weight * men.sd[name] ** 2 + (1 - weight) * women.sd[name] ** 2
        assert mixed.sd[name] ** 2 == pytest.approx(within + weight * (1 - weight) * apart**2, rel=1e-6)


def test_weights_follow_bayes() -> None:
    density = {}
    for sex in ("male", "female"):
        table = moments(sex)
        sd = np.sqrt(table.cov[0, 0])
        density[sex] = float(np.exp(-0.5 * ((1690 - table.mean[0]) / sd) ** 2) / sd)
    weight = density["male"] / sum(density.values())
    men, women, mixed = (estimate(sex=sex, stature=1690).mean["popliteal_height"] for sex in SEXES)
    assert mixed == pytest.approx(weight * men + (1 - weight) * women, abs=1e-6)
    assert any(f"{weight:.0%} male" in note for note in estimate(sex="unspecified", stature=1690).notes)


def test_a_tall_person_of_unspecified_sex_is_nearly_surely_a_man() -> None:
    men, mixed = (estimate(sex=sex, stature=1980) for sex in ("male", "unspecified"))
    assert dict(mixed.mean) == pytest.approx(dict(men.mean), rel=1e-3)


def test_a_measurement_wins_over_what_was_said() -> None:
    body = estimate(sex="male", stature=1980, mass=90, measured={"stature": 1955, "body_mass": 84})
    assert body == estimate(sex="male", stature=1955, mass=84, measured={"stature": 1955, "body_mass": 84})
    assert body.mean["stature"] == 1955


def test_overstated_stature_is_said_once_and_only_of_a_stated_stature() -> None:
    assert sum("overstate" in note for note in estimate(sex="male", stature=1980).notes) == 1
    assert estimate(sex="male", stature=1980, measured={"stature": 1960}).notes == ()


@pytest.mark.parametrize(
    ("sex", "stature", "caution"),
    [
        ("male", 1993, None),
        ("male", 1994, r"stature 1994 mm lies outside the 1528 to 1993 surveyed: .* extrapolated"),
        ("male", 1500, "stature 1500 mm lies outside the 1528 to 1993 surveyed"),
        ("female", 1900, "stature 1900 mm lies outside the 1435 to 1827 surveyed"),
        ("unspecified", 1900, None),
        ("unspecified", 1450, None),
        ("unspecified", 2050, "stature 2050 mm lies outside the 1528 to 1993 surveyed"),
    ],
)
def test_extrapolation_is_a_caution(sex: Sex, stature: float, caution: str | None) -> None:
    cautions = estimate(sex=sex, stature=stature).cautions
    if caution is None:
        assert cautions == ()
    else:
        assert len(cautions) == 1
        assert re.search(caution, cautions[0])


def test_a_measurement_that_cannot_be_true_is_named_with_what_was_expected() -> None:
    body = estimate(sex="male", stature=1800, measured={"knee_height": 480, "popliteal_height": 450})
    assert body.mean["knee_height"] == 480
    (caution,) = body.cautions
    assert caution.startswith("knee_height 480 mm does not fit the rest, which lets expect 57")
    assert "used as given" in caution


def test_a_slip_does_not_taint_the_good_measurements() -> None:
    good = {"popliteal_height": 452.0, "crotch_height": 872.0, "sitting_height": 940.0, "eye_height_sitting": 826.0}
    assert estimate(sex="male", stature=1800, measured=good).cautions == ()
    cautions = estimate(sex="male", stature=1800, measured={**good, "knee_height": 400}).cautions
    assert [text.split()[0] for text in cautions if "does not fit" in text] == ["knee_height"]


def test_everything_measured() -> None:
    table = moments("female")
    everything = dict(zip(table.names, table.mean.tolist(), strict=True))
    body = estimate(sex="unspecified", stature=everything["stature"], measured=everything)
    assert dict(body.mean) == pytest.approx(everything)
    assert set(body.sd.values()) == {0.0}
    assert body.cautions == ()


@settings(max_examples=50)
@given(sexes, st.lists(st.sampled_from(MEASURABLE), unique=True, min_size=1))
def test_contradictory_measurements_do_not_break_it(sex: Sex, names: list[str]) -> None:
    wild = {name: allowed_range(name)[i % 2] for i, name in enumerate(names)}
    body = estimate(sex=sex, stature=1700, measured=wild)
    assert np.isfinite(list(body.mean.values())).all()
    assert np.isfinite(list(body.sd.values())).all()
    assert {name: body.mean[name] for name in wild} == wild


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"stature": 1199}, r"^stature is 1199; 1200 to 2300 mm is allowed$"),
        ({"stature": 1.96}, r"stature is 1\.96; 1200 to 2300 mm"),
        ({"stature": float("nan")}, "stature is nan; 1200 to 2300 mm"),
        ({"stature": float("inf")}, "stature is inf"),
        ({"stature": "1960"}, "stature is '1960'"),
        ({"stature": True}, "stature is True"),
        ({"stature": None}, "stature is None"),
        ({"mass": -80}, r"^body_mass is -80; 30 to 250 kg is allowed$"),
        ({"mass": 29.9}, r"body_mass is 29\.9; 30 to 250 kg"),
        ({"mass": 251}, "body_mass is 251; 30 to 250 kg"),
        ({"measured": {"knee_height": 62}}, r"^knee_height is 62; 203 to 999 mm is allowed$"),
        ({"measured": {"stature": 100}}, "stature is 100; 1200 to 2300 mm"),
        ({"sex": "man"}, "sex is 'man'; male, female or unspecified is needed"),
    ],
)
def test_bad_values_are_refused_with_the_allowed_range(changes: Mapping[str, Any], message: str) -> None:
    with pytest.raises(BodyError, match=message):
        estimate(**{"sex": "male", "stature": 1960, **changes})


def test_limits_themselves_are_allowed() -> None:
    assert estimate(sex="male", stature=2300, mass=250).mean["stature"] == 2300
    assert estimate(sex="female", stature=1200, mass=30).mean["body_mass"] == 30


def test_unknown_measurement_is_refused_with_a_proposal() -> None:
    with pytest.raises(
        CatalogueError, match="'elbow_hight_sitting' is not a body dimension; did you mean elbow_height_sit"
    ):
        estimate(sex="male", stature=1960, measured={"elbow_hight_sitting": 250})


def test_body_errors_are_value_errors_of_this_project() -> None:
    assert issubclass(BodyError, ParametricError)
    assert issubclass(BodyError, ValueError)


def test_needs_no_heavy_library() -> None:
    code = (
        "import sys, parametric.body as b; b.estimate(sex='male', stature=1960);"
        "print(*{'scipy', 'trimesh', 'cadquery', 'pydantic', 'pint', 'typer'} & set(sys.modules))"
    )
    root = Path(__file__).parents[3]
    done = run([sys.executable, "-c", code], cwd=root, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == ""
