from __future__ import annotations

import pytest

from parametric.posture.chain import LENGTHS, Row
from parametric.posture.joint_limits import JointLimit, joint_limits

LIMITS = joint_limits()


@pytest.mark.parametrize("limit", LIMITS.values(), ids=LIMITS)
def test_comfort_lies_within_the_limits_and_around_neutral(limit: JointLimit) -> None:
    assert limit.limit_low <= limit.low < limit.neutral < limit.high <= limit.limit_high
    assert limit.weight >= 0.0
    assert limit.source
    assert limit.unit in {"deg", "mm"}


def test_every_row_that_wants_something_has_its_line() -> None:
    wanting = {row.name.lower(): row for row in Row if row <= Row.PLACE}
    assert wanting.keys() <= LIMITS.keys()
    assert all((LIMITS[name].unit == "mm") == (row in LENGTHS) for name, row in wanting.items())


def test_published_figures() -> None:
    """VBG: knee at least 90. HFES 100 via NUREG-0700: torso-thigh at least 90. ISO 9241-306: 600, never under 300."""
    assert LIMITS["knee"].low == 90.0
    assert LIMITS["hip"].low == 90.0
    assert (LIMITS["view"].neutral, LIMITS["view"].limit_low) == (600.0, 300.0)
    assert (180.0 - LIMITS["elbow"].high, 180.0 - LIMITS["elbow"].low) == (60.0, 100.0)  # RULA lower arm
