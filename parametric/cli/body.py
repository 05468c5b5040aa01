"""`parametric body`: the dimensions of a person, and which measurement would tell most."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import TYPE_CHECKING, Annotated

import typer

from parametric.catalogue.dimensions import dimension, dimensions
from parametric.cli import output
from parametric.core.errors import BodyError

if TYPE_CHECKING:
    from parametric.body import Body
    from parametric.brief.quantities import Quantity

TARGETS: Mapping[str, Mapping[str, float]] = {
    "seat height": {"popliteal_height": 1.0},
    "desk height over the seat": {"elbow_height_sitting": 1.0},
    "desk height over the floor": {"popliteal_height": 1.0, "elbow_height_sitting": 1.0},
}
TOLD = 3


class Sex(StrEnum):
    """Which survey to estimate from."""

    MALE = "male"
    FEMALE = "female"
    UNSPECIFIED = "unspecified"


def run(
    stature: Annotated[str, typer.Option(help="Standing height, barefoot: 1960, 1.96m, '6 ft 6 in'.")],
    sex: Annotated[Sex, typer.Option(help="Which survey to estimate from.")] = Sex.UNSPECIFIED,
    mass: Annotated[str | None, typer.Option(help="Body mass: 88, 88kg, '194 lb'.")] = None,
    measured: Annotated[
        list[str] | None, typer.Option(metavar="NAME=VALUE", help="A measured dimension; may be repeated.")
    ] = None,
    json: Annotated[bool, typer.Option("--json", help="Print one JSON document.")] = False,
) -> None:
    """Print the dimensions of a person with their spread, and what to measure."""
    from parametric.body import estimate
    from parametric.brief.quantities import kg, mm
    from parametric.catalogue.survey import allowed_range

    person = estimate(
        sex=sex.value,
        stature=_read("--stature", mm(*allowed_range("stature")), stature),
        mass=None if mass is None else _read("--mass", kg(*allowed_range("body_mass")), mass),
        measured=dict(_measurement(text) for text in measured or ()),
    )
    if json:
        output.echo_json(_document(person))
    else:
        _print(person)


def _read(option: str, kind: Quantity, text: str) -> float:
    try:
        return kind.read(text)
    except ValueError as error:
        raise BodyError(f"{option}: {error}") from None


def _measurement(text: str) -> tuple[str, float]:
    from parametric.brief.quantities import kg, mm
    from parametric.catalogue.survey import allowed_range

    name, equals, value = (part.strip() for part in text.partition("="))
    if not equals:
        raise BodyError(f"--measured {text}: write NAME=VALUE, such as elbow_height_sitting=262")
    unit = kg if dimension(name).unit == "kg" else mm
    return name, _read(f"--measured {name}", unit(*allowed_range(name)), value)


def _document(person: Body) -> dict[str, object]:
    from parametric.body import narrowing

    rows = {
        name: {
            "unit": dimension(name).unit,
            "mean": person.mean[name],
            "sd": person.sd[name],
            **{f"p{p}": person.quantile(name, p / 100.0) for p in (5, 50, 95)},
            "known": name in person.known,
        }
        for name in person.mean
    }
    return {
        "schema": "parametric.body/1",
        "sex": person.sex,
        "dimensions": rows,
        "measure_next": {
            target: [{"name": n.name, "before": n.before, "after": n.after} for n in narrowing(person, weights)[:TOLD]]
            for target, weights in TARGETS.items()
        },
        "notes": list(person.notes),
        "cautions": list(person.cautions),
    }


def _print(person: Body) -> None:
    from parametric.body import narrowing

    typer.echo(f"{'dimension (mm; mass kg)':<34}{'p5':>8}{'p50':>8}{'p95':>8}")
    for name in dimensions():
        if name in person.known:
            typer.echo(f"{name:<34}{'':>8}{person.mean[name]:>8.0f}{'':>8}  given")
        else:
            typer.echo(f"{name:<34}" + "".join(f"{person.quantile(name, p):>8.0f}" for p in (0.05, 0.5, 0.95)))
    typer.echo("\nwhat to measure next (half the width that holds 9 in 10 such people, mm)")
    for target, weights in TARGETS.items():
        rows = narrowing(person, weights)
        if not rows or rows[0].before < 0.5:
            typer.echo(f"  {target}: known")
            continue
        best = rows[0]
        typer.echo(f"  {target}: +/-{best.before:.0f}; with {best.name} measured: +/-{best.after:.0f}")
    for text in (*person.cautions, *person.notes):
        output.echo_wrapped(f"note: {text}")
