from __future__ import annotations

import pytest

from parametric.body import Body, estimate
from parametric.posture import lie, lying_length


def test_lying_lengthens_the_body() -> None:
    """Bodyspace corrections as reprinted by City Univ. of Hong Kong: about 15; 2050 tall lies 2065 long."""
    assert lying_length(estimate(sex="male", stature=2050.0)) == pytest.approx(2065.0)


def test_the_body_lies_half_way_between_the_ends(tall: Body) -> None:
    lying = lie(tall, head="rear", bed=(30.0, 2140.0), y=-100.0, z=470.0)
    assert lying.end - lying.start == pytest.approx(1975.0)
    assert lying.start - 30.0 == pytest.approx(2140.0 - lying.end)
    assert (lying.y, lying.z, lying.head) == (-100.0, 470.0, "rear")


def test_a_short_bed_leaves_the_body_outside_at_both_ends(tall: Body) -> None:
    lying = lie(tall, head="front", bed=(0.0, 1900.0), y=0.0, z=0.0)
    assert lying.start == pytest.approx(-37.5)
    assert lying.end == pytest.approx(1937.5)
