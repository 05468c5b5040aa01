from __future__ import annotations

import numpy as np

from parametric.posture.scoring.number import score


def test_one_score_is_an_int() -> None:
    found = score(np.int64(3))
    assert type(found) is int
    assert found == 3


def test_scores_stay_an_array() -> None:
    found = score(np.array([True, False]))
    assert isinstance(found, np.ndarray)
    assert found.dtype == np.int64
    assert found.tolist() == [1, 0]
