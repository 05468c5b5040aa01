"""Readers of the stock tables: timber classes, sheets, planed sections."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from parametric.core.errors import CatalogueError


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberClass:
    """A strength class of EN 338:2016, edgewise bending; the symbols are those of the standard.

    Attributes:
        name: Class, for example ``C24``.
        f_m_k: Bending strength, MPa.
        f_t_0_k: Tension along the grain, MPa.
        f_t_90_k: Tension across the grain, MPa.
        f_c_0_k: Compression along the grain, MPa.
        f_c_90_k: Compression across the grain, MPa.
        f_v_k: Shear strength, MPa.
        e_0_mean: Mean modulus along the grain, MPa.
        e_0_05: 5 % modulus along the grain, MPa.
        e_90_mean: Mean modulus across the grain, MPa.
        g_mean: Mean shear modulus, MPa.
        rho_k: Characteristic density, kg/m3.
        rho_mean: Mean density, kg/m3.
        source: Where the row comes from.
    """

    name: str
    f_m_k: float
    f_t_0_k: float
    f_t_90_k: float
    f_c_0_k: float
    f_c_90_k: float
    f_v_k: float
    e_0_mean: float
    e_0_05: float
    e_90_mean: float
    g_mean: float
    rho_k: float
    rho_mean: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A plywood as sold.

    Attributes:
        material: For example ``birch_plywood``.
        nominal: Thickness it is sold under, mm.
        plies: Number of veneers.
        mean: Thickness to expect, mm.
        min: Thinnest within the tolerance, mm.
        max: Thickest within the tolerance, mm.
        density: kg/m3.
        source: Where the row comes from.
    """

    material: str
    nominal: float
    plies: int
    mean: float
    min: float
    max: float
    density: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A planed timber section as sold.

    Attributes:
        width: Shorter side, mm.
        height: Longer side, mm.
        note: What it is usually bought for.
        source: Where the row comes from.
    """

    width: float
    height: float
    note: str
    source: str


@cache
def timber_classes() -> dict[str, TimberClass]:
    """Every strength class by name."""
    return {
        row["name"]: TimberClass(
            name=row["name"],
            source=row["source"],
            **{key: float(value) for key, value in row.items() if key not in ("name", "source")},
        )
        for row in _rows("timber_classes.csv")
    }


def timber_class(name: str) -> TimberClass:
    """The strength class of that name.

    Raises:
        CatalogueError: No class has this name; the message lists them.
    """
    table = timber_classes()
    if name not in table:
        raise CatalogueError(f'"{name}" is not a timber class; known are {", ".join(table)}')
    return table[name]


@cache
def sheets() -> tuple[Sheet, ...]:
    """Every sheet, by material and rising thickness."""
    return tuple(
        Sheet(
            material=row["material"],
            nominal=float(row["nominal"]),
            plies=int(row["plies"]),
            mean=float(row["mean"]),
            min=float(row["min"]),
            max=float(row["max"]),
            density=float(row["density"]),
            source=row["source"],
        )
        for row in _rows("sheets.csv")
    )


def sheet_materials() -> tuple[str, ...]:
    """The names of the sheet materials."""
    return tuple(dict.fromkeys(row.material for row in sheets()))


def sheet(material: str, nominal: float) -> Sheet:
    """The sheet of a material that is sold under a nominal thickness (mm).

    Raises:
        CatalogueError: The material or the thickness does not exist; the message lists what does.
    """
    thicknesses = {row.nominal: row for row in sheets() if row.material == material}
    if not thicknesses:
        raise CatalogueError(f'"{material}" is not a sheet material; known are {", ".join(sheet_materials())}')
    if nominal not in thicknesses:
        listed = ", ".join(f"{t:g}" for t in thicknesses)
        raise CatalogueError(f"{material} is not sold {nominal:g} mm thick; known are {listed} mm")
    return thicknesses[nominal]


@cache
def sections() -> tuple[Section, ...]:
    """Every planed section, the smaller first."""
    return tuple(
        Section(width=float(row["width"]), height=float(row["height"]), note=row["note"], source=row["source"])
        for row in _rows("sections.csv")
    )


def section(width: float, height: float) -> Section:
    """The section of that size (mm), whichever side is named first.

    Raises:
        CatalogueError: It is not a trade size; the message lists them.
    """
    wanted = tuple(sorted((width, height)))
    for row in sections():
        if (row.width, row.height) == wanted:
            return row
    listed = ", ".join(f"{row.width:g}x{row.height:g}" for row in sections())
    raise CatalogueError(f"{width:g}x{height:g} is not a trade section; known are {listed}")


def _rows(file: str) -> list[dict[str, str]]:
    text = files("parametric.catalogue").joinpath(file).read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))
