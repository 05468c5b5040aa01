"""Where a person sits: the heights and places that furniture leaves to the body."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Number = float | NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Workplace:
    """A seat and a desk in the van frame, mm. The sitter faces forward (+x).

    Every number may also be an array; arrays of one workplace have equal shapes, and what is solved from it has too.

    Attributes:
        seat: Height of the seat under load.
        floor: Height of the floor under the feet.
        back: Rearmost point of the seated body along x.
        place: Middle of the sitting place along y.
        desk: Height of the desk surface; None without a desk.
        shoes: Sole and heel of the shoes.
    """

    seat: Number
    floor: Number = 0.0
    back: Number
    place: Number
    desk: Number | None = None
    shoes: Number
