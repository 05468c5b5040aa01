"""What a score takes and gives: single numbers, or arrays of equal shape."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

Score = int | NDArray[np.int64]
Flag = bool | NDArray[np.bool_]

ANGLE_EPS: Final = 1e-6
"""A value this close to a limit (degrees) is on it, whatever the last bit says."""


def score(values: object) -> Score:
    """Whole numbers as an int if there is one, else as an array."""
    whole = np.asarray(values, dtype=np.int64)
    return int(whole) if whole.ndim == 0 else whole
