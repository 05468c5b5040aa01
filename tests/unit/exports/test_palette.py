"""Colours of materials."""

from __future__ import annotations

import pytest

from parametric.exports.palette import colour


@pytest.mark.parametrize(
    "material", ["birch_plywood", "C24", "D30", "foam", "stainless_steel", "aluminium", "unheard of"]
)
def test_every_material_has_a_colour_between_black_and_white(material: str) -> None:
    assert all(0.0 < c < 1.0 for c in colour(material))


def test_materials_are_told_apart() -> None:
    assert len({colour(m) for m in ("birch_plywood", "C24", "foam", "steel", "webbing", "unheard of")}) == 6


def test_strength_classes_are_timber() -> None:
    assert colour("C24") == colour("c16") == colour("D40") == colour("timber")
