"""Clear distances inside the van, past the things that stay."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import product
from typing import Final

from parametric.body import Body
from parametric.brief.interior import ceiling_at, fixed_things, narrowest
from parametric.brief.van import Fixed, Van

Range = tuple[float, float]
OVERHEAD: Final = 900.0  # what hangs higher than this may hang over a seated head


def clear_length(van: Van, start: float, end: float, y: Range, z: Range) -> float:
    """How far forward from `start` the van is clear in a window of y and z, at most to `end`, mm."""
    hits = (max(start, f.x[0]) for f in fixed_things(van) if f.x[1] > start and meets(f.y, y) and meets(f.z, z))
    return min((end, *hits))


def aisle(van: Van, left: float, x: Range, top: float = 1000.0) -> float:
    """Least clear width between a face at `left` and whatever stands to its left, below `top`, mm."""
    wall = narrowest(van, "left", x[0], x[1], 0.0, top)
    boxes = (f.y[0] for f in fixed_things(van) if meets(f.x, x) and f.z[0] < top and f.y[1] > left)
    return min((wall, *boxes)) - left


def beyond_foot(van: Van, foot: float, y: Range) -> float:
    """Clear length beyond the foot of the bed at night, below 1000, mm."""
    return clear_length(van, foot, van.length_night, y, (0.0, 1000.0)) - foot


def over_head(van: Van, body: Body, back: float, place: float, roof_up: bool) -> float:
    """Lowest ceiling over the whole head of a body that sits upright, mm over the floor.

    Args:
        van: The vehicle.
        body: Who sits.
        back: Back of the body, mm along the vehicle.
        place: Middle of the body, mm left of the centreline.
        roof_up: State of a lifting roof.
    """
    middle = back + body.mean["chest_depth"] / 2.0
    long, broad = body.mean["head_length"] / 2.0, body.mean["head_breadth"] / 2.0
    return lowest_over(van, (middle - long, middle + long), (place - broad, place + broad), OVERHEAD, roof_up)


def lowest_over(van: Van, x: Range, y: Range, above: float, roof_up: bool) -> float:
    """Lowest of ceiling and things that stay over a window, of what hangs higher than `above`, mm over the floor."""
    ceiling = min(ceiling_at(van, a, b, roof_up) for a, b in product(x, y))
    hung = (f.z[0] for f in fixed_things(van) if meets(f.x, x) and meets(f.y, y) and f.z[0] >= above)
    return min((ceiling, *hung))


def blocked(boxes: Iterable[Fixed], x: Range, y: Range, z: Range) -> str | None:
    """Name of the first fixed thing that a box would meet."""
    return next((f.name for f in boxes if meets(f.x, x) and meets(f.y, y) and meets(f.z, z)), None)


def meets(a: Range, b: Range) -> bool:
    """Whether two ranges overlap by more than a touch."""
    return a[0] < b[1] and b[0] < a[1]
