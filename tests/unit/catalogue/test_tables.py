"""Truth of the stock tables: the relations the standards themselves state."""

from __future__ import annotations

import math

import pytest

from parametric.catalogue.tables import (
    Sheet,
    TimberClass,
    section,
    sections,
    sheet,
    sheet_materials,
    sheets,
    timber_class,
    timber_classes,
)
from parametric.core.errors import CatalogueError


@pytest.mark.parametrize("row", timber_classes().values(), ids=lambda row: row.name)
def test_classes_keep_the_relations_of_en_384(row: TimberClass) -> None:
    """EN 384 (relations from memory): every row of EN 338 follows from f_m, E and rho, to its own rounding."""
    soft = row.name.startswith("C")
    assert row.f_t_0_k == pytest.approx(-3.07 + 0.73 * row.f_m_k if soft else 0.6 * row.f_m_k, abs=0.5)
    assert row.f_c_0_k == pytest.approx(4.3 * math.sqrt(row.f_m_k), abs=0.6)
    assert row.f_c_90_k == pytest.approx((0.007 if soft else 0.010) * row.rho_k, abs=0.1)
    assert row.e_0_05 == pytest.approx((0.67 if soft else 0.84) * row.e_0_mean, rel=0.01)
    assert row.e_90_mean == pytest.approx(row.e_0_mean / (30 if soft else 15), abs=6)
    assert row.g_mean == pytest.approx(row.e_0_mean / 16, abs=6)


def test_c24_is_the_row_of_en_338_2016() -> None:
    c24 = timber_class("C24")
    assert (c24.f_m_k, c24.f_v_k, c24.e_0_mean, c24.e_0_05, c24.rho_k, c24.rho_mean) == (24, 4.0, 11000, 7400, 350, 420)


def test_unknown_class_lists_what_exists() -> None:
    with pytest.raises(CatalogueError, match=r'"C23" is not a timber class; known are C14, .*, D40'):
        timber_class("C23")


@pytest.mark.parametrize("row", sheets(), ids=lambda row: f"{row.material}-{row.nominal:g}")
def test_sheets_make_sense(row: Sheet) -> None:
    assert row.min <= row.mean <= row.max
    assert abs(row.nominal - row.mean) <= 1.2
    assert row.plies % 2 == 1  # a balanced plywood
    assert row.source


def test_birch_means_follow_from_the_lay_up() -> None:
    """Handbook of Finnish Plywood (from memory): 1.4 mm veneers, the two faces sanded to 1.1 mm."""
    for row in sheets():
        if row.material == "birch_plywood":
            assert row.mean == pytest.approx(1.4 * row.plies - 0.6, abs=1e-9)


def test_sheet_lookup_and_its_errors() -> None:
    assert sheet("birch_plywood", 18).mean == 17.6
    assert sheet_materials() == ("birch_plywood", "poplar_plywood", "spruce_plywood")
    with pytest.raises(CatalogueError, match='"oak" is not a sheet material; known are birch_plywood, '):
        sheet("oak", 18)
    with pytest.raises(CatalogueError, match="spruce_plywood is not sold 19 mm thick; known are 9, 12, 15, 18, "):
        sheet("spruce_plywood", 19)


def test_sections_are_unique_and_smaller_side_first() -> None:
    sizes = [(row.width, row.height) for row in sections()]
    assert sizes == sorted(set(sizes))
    assert all(w <= h for w, h in sizes)


@pytest.mark.parametrize("size", [(20, 70), (70, 20), (28, 45), (45, 45), (20, 60)])
def test_section_lookup_either_way_round(size: tuple[float, float]) -> None:
    row = section(*size)
    assert (row.width, row.height) == tuple(sorted(size))


def test_unknown_section_lists_what_exists() -> None:
    with pytest.raises(CatalogueError, match="21x70 is not a trade section; known are 18x60, "):
        section(21, 70)
