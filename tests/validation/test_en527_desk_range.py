"""The desk of seated office work against EN 527-1.

Sources: EN 527-1, height of sitting desks 650 to 850 mm (as read in a table of Offipedia, not in the standard itself);
made for statures of 1493 to 1913 mm (DIN catalogue page of EN 527-1:2011).

Shoes of 30 mm are worn here. The worked-out desk lies inside for statures of 1650 to 1913. For shorter people the
elbow is lower than the range reaches, so nothing is asserted but that.
"""

from __future__ import annotations

import pytest

from parametric.brief.model import Brief
from parametric.pipeline.size import size

LEAST, MOST = 650.0, 850.0


def desk(sex: str, stature: float) -> float:
    """Desk height worked out for shoes of 30 in a roomy van, mm."""
    brief = Brief.model_validate(
        {
            "name": "office",
            "van": {"length_day": 3600, "ceiling": 2200, "wall": [[0, 2000], [2200, 2000]]},
            "sleeper": [{"sex": sex, "stature": stature, "shoes": 30}],
            "bed": {"width": 1150},
        }
    )
    return size(brief).dimensions.heights.desk


@pytest.mark.parametrize("sex", ["male", "female"])
@pytest.mark.parametrize("stature", [1650.0, 1700.0, 1750.0, 1800.0, 1850.0, 1913.0])
def test_the_desk_lies_in_the_range_of_the_standard(sex: str, stature: float) -> None:
    # 5 for rounding in the secondary table and for a desk in whole mm
    assert LEAST - 5.0 <= desk(sex, stature) <= MOST


def test_short_people_need_less_than_the_standard_gives() -> None:
    assert desk("female", 1500.0) < LEAST
