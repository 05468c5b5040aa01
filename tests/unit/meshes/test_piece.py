"""Pieces made ready for collision questions."""

from __future__ import annotations

import numpy as np

from parametric.core.pose import at, turn
from parametric.core.shape import Box, Cylinder, Shape
from parametric.meshes.mesh import solid
from parametric.meshes.piece import core, drilled, lumps, piece, place

PLATE = Box((0.0, 0.0, 0.0), (100.0, 50.0, 18.0))
HOLE = Cylinder(5.0, 20.0, at(50.0, 25.0, -1.0))


def test_quick_data_fills_drilled_holes_only() -> None:
    window = Box((10.0, 10.0, -1.0), (20.0, 40.0, 19.0))
    made = piece(Shape((PLATE,), (HOLE, window)))
    assert len(made.vertices) == 16
    assert drilled(made) is solid(Shape((PLATE,), (HOLE, window)))


def test_box_of_a_turned_piece() -> None:
    stood = place(piece(Shape((PLATE,))), at(5.0, 0.0, 0.0) @ turn((0.0, 1.0, 0.0), -90.0))
    np.testing.assert_allclose(stood.box, [[-13.0, 0.0, 0.0], [5.0, 50.0, 100.0]], atol=1e-12)


def test_a_foil_has_no_core() -> None:
    assert core(piece(Shape((Box((0.0, 0.0, 0.0), (100.0, 50.0, 0.08)),)))) is None


def test_lumps_of_parts_that_only_touch() -> None:
    bolt = Shape((Cylinder(4.0, 40.0), Cylinder(8.0, 5.0, at(0.0, 0.0, -5.0))))
    assert len(lumps(piece(bolt))[0]) == 2
