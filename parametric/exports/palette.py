"""Colours of materials, so that a part looks the same in every file. Chosen by eye."""

from __future__ import annotations

import re

Colour = tuple[float, float, float]

_COLOURS: dict[str, Colour] = {
    "plywood": (0.87, 0.74, 0.54),
    "timber": (0.80, 0.62, 0.40),
    "spruce": (0.85, 0.70, 0.48),
    "pine": (0.84, 0.66, 0.41),
    "oak": (0.68, 0.50, 0.32),
    "beech": (0.82, 0.62, 0.46),
    "ash": (0.85, 0.76, 0.62),
    "van": (0.80, 0.83, 0.85),
    "body": (0.78, 0.60, 0.52),
    "foam": (0.55, 0.64, 0.69),
    "strap": (0.20, 0.25, 0.29),
    "webbing": (0.20, 0.25, 0.29),
    "brass": (0.75, 0.61, 0.31),
    "steel": (0.56, 0.58, 0.60),
    "zinc": (0.66, 0.69, 0.71),
    "alumin": (0.73, 0.75, 0.77),
    "rubber": (0.17, 0.17, 0.18),
    "nylon": (0.90, 0.90, 0.86),
    "plastic": (0.31, 0.32, 0.33),
}
_STRENGTH_CLASS = re.compile(r"[cd]\d\d")
_OTHER: Colour = (0.63, 0.60, 0.55)


def colour(material: str) -> Colour:
    """Red, green and blue (sRGB, 0..1) of a material by a word in its key; timber for a class such as ``C24``."""
    key = material.lower()
    if _STRENGTH_CLASS.fullmatch(key):
        return _COLOURS["timber"]
    return next((rgb for word, rgb in _COLOURS.items() if word in key), _OTHER)
