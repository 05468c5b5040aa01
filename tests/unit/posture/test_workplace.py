from __future__ import annotations

import dataclasses

import pytest

from parametric.posture import Workplace


def test_a_workplace_is_a_value_with_a_floor_and_no_desk_unless_said() -> None:
    place = Workplace(seat=450.0, back=1000.0, place=0.0, shoes=10.0)
    assert (place.floor, place.desk) == (0.0, None)
    with pytest.raises(dataclasses.FrozenInstanceError, match="seat"):
        place.seat = 400.0  # type: ignore[misc]
