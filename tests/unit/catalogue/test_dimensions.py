from __future__ import annotations

import pytest

from parametric.catalogue.dimensions import dimension, dimensions
from parametric.core.errors import CatalogueError


def test_every_row_is_complete_and_columns_are_not_shared() -> None:
    table = dimensions().values()
    assert len(table) == 35
    assert len({item.column for item in table}) == len(table)
    for item in table:
        assert item.name.islower()
        assert item.name.isidentifier()
        assert "from memory" in item.iso
        assert item.description
        assert item.source


def test_only_the_mass_is_not_a_length() -> None:
    assert [item.name for item in dimensions().values() if item.unit != "mm"] == ["body_mass"]


def test_near_names_are_proposed() -> None:
    with pytest.raises(
        CatalogueError, match=r"'poplitael_height' is not a body dimension; did you mean popliteal_height"
    ):
        dimension("poplitael_height")


def test_hopeless_names_get_the_whole_list() -> None:
    with pytest.raises(
        CatalogueError, match=r"'q' is not a body dimension; known are stature, body_mass, .*waist_breadth"
    ):
        dimension("q")
