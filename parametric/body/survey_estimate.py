"""A body estimated from the survey and from whatever is known of the person."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from numbers import Real
from types import MappingProxyType

import numpy as np

from parametric.body.body import Body, Sex
from parametric.body.conditional import Conditional, condition, left_out
from parametric.catalogue.dimensions import dimension
from parametric.catalogue.survey import SEXES, Array, Moments, SurveySex, allowed_range, moments
from parametric.core.errors import BodyError

_SURPRISE_SD = 6.0  # own judgement: beyond it a slip in measuring is likelier than such a person
_OVER_REPORTED = (
    "People overstate their stature, men by 23 mm and women by 12 mm in the mean (ANSUR II 2012): "
    "measure it, barefoot against a wall."
)


def estimate(
    *, sex: Sex, stature: float, mass: float | None = None, measured: Mapping[str, float] | None = None
) -> Body:
    """Every dimension of a person as a normal distribution given what is known.

    Conditional normal distribution in the moments of ANSUR II 2012 (Natick/TR-15/007). For ``unspecified`` the two
    sexes, equally likely beforehand, are weighted by how well they explain what is known, and the mean and covariance
    of that mixture are taken.

    Args:
        sex: ``male``, ``female`` or ``unspecified``.
        stature: mm, barefoot, 1200 to 2300.
        mass: kg, 30 to 250.
        measured: Further dimensions by name, mm; a measurement wins over `stature` and `mass`.

    Raises:
        BodyError: A value is not a number or outside the allowed range, or no such sex.
        CatalogueError: No dimension has a name in `measured`.
    """
    sexes = _sexes(sex)
    known = _known(stature, mass, measured or {})
    tables = [moments(each) for each in sexes]
    names = tables[0].names
    at = [names.index(name) for name in known]
    values = np.array(list(known.values()))
    found = [condition(table.mean, table.cov, at, values) for table in tables]
    weights = _weights(found)
    mean, cov = _mixture(found, weights)
    likeliest = int(np.argmax(weights))
    cautions = _extrapolated(tables[likeliest], known) + _surprises(tables[likeliest], known)
    return Body(
        sex=sex,
        mean=MappingProxyType(dict(zip(names, mean.tolist(), strict=True))),
        sd=MappingProxyType(dict(zip(names, np.sqrt(np.diag(cov)).tolist(), strict=True))),
        known=frozenset(known),
        notes=_notes(sexes, weights, measured or {}),
        cautions=cautions,
        covariance=cov,
    )


def _sexes(sex: Sex) -> tuple[SurveySex, ...]:
    if sex == "unspecified":
        return SEXES
    if sex not in SEXES:
        raise BodyError(f"sex is {sex!r}; male, female or unspecified is needed")
    return (sex,)


def _known(stature: float, mass: float | None, measured: Mapping[str, float]) -> dict[str, float]:
    """Known values in the order of the names, so that the order they were given in cannot matter."""
    given: dict[str, float] = {"stature": stature}
    if mass is not None:
        given["body_mass"] = mass
    given |= measured
    return {name: _checked(name, given[name]) for name in sorted(given)}


def _checked(name: str, value: float) -> float:
    unit = dimension(name).unit
    low, high = allowed_range(name)
    if isinstance(value, bool) or not isinstance(value, Real) or not math.isfinite(value) or not low <= value <= high:
        raise BodyError(f"{name} is {value!r}; {low:.0f} to {high:.0f} {unit} is allowed")
    return float(value)


def _weights(found: Sequence[Conditional]) -> Array:
    logs = np.array([each.log_likelihood for each in found])
    likelihoods = np.exp(logs - logs.max())
    return np.asarray(likelihoods / likelihoods.sum())


def _mixture(found: Sequence[Conditional], weights: Array) -> tuple[Array, Array]:
    # differences to the first keep a value exact that all agree on: the known ones
    first = found[0].mean
    mean = first + sum(w * (each.mean - first) for w, each in zip(weights, found, strict=True))
    cov = np.zeros((len(mean), len(mean)))
    for weight, each in zip(weights, found, strict=True):
        apart = each.mean - mean
        cov += weight * (each.cov + np.outer(apart, apart))
    cov.flags.writeable = False
    return mean, cov


def _notes(sexes: Sequence[SurveySex], weights: Array, measured: Mapping[str, float]) -> tuple[str, ...]:
    notes = [] if "stature" in measured else [_OVER_REPORTED]
    if len(sexes) > 1:
        shares = " and ".join(f"{weight:.0%} {each}" for each, weight in zip(sexes, weights, strict=True))
        notes.append(f"Sex unspecified: mixed from {shares}, by what is known of the body.")
    return tuple(notes)


def _extrapolated(table: Moments, known: Mapping[str, float]) -> tuple[str, ...]:
    out = []
    for name, value in known.items():
        low, high = table.surveyed_range(name)
        if not low <= value <= high:
            out.append(
                f"{name} {value:.0f} {dimension(name).unit} lies outside the {low:.0f} to {high:.0f} surveyed: "
                "what is estimated from it is extrapolated."
            )
    return tuple(out)


def _surprises(table: Moments, known: Mapping[str, float]) -> tuple[str, ...]:
    """Values that the others contradict; the worst is set aside before the rest is judged, or it would taint them."""
    left = dict(known)
    out = []
    while len(left) > 1:
        at = [table.names.index(name) for name in left]
        expected, distance = left_out(table.mean, table.cov, at, np.array(list(left.values())))
        judged = [i for i, name in enumerate(left) if name != "stature"]
        worst = max(judged, key=lambda i: abs(float(distance[i])))
        if abs(distance[worst]) <= _SURPRISE_SD:
            break
        name = list(left)[worst]
        out.append(
            f"{name} {left.pop(name):.0f} {dimension(name).unit} does not fit the rest, which lets expect "
            f"{expected[worst]:.0f}: measure it and the stature again. It is used as given."
        )
    return tuple(out)
