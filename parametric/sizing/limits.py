"""Limits that checks judge by and clashes are found with; mm. Their sources are named in `core.sources`."""

from __future__ import annotations

from typing import Final

SEAT_UNDER: Final = 40.0  # loaded seat under popliteal height with shoe, at most
SEAT_OVER: Final = 15.0  # and over it
ELBOW_OFF: Final = 15.0  # desk surface to elbow height, either way
KNEE_SPARE: Final = 10.0  # room over the knee that passes
LEAST_ALLOWANCE: Final = 70.0  # bed past stature, least
GOOD_ALLOWANCE: Final = 150.0  # and good
LEAST_FEET: Final = 450.0  # floor for the feet, least
LEAST_WAY: Final = 330.0  # way for a person, least
GOOD_WAY: Final = 450.0  # and good
LEAST_DOOR: Final = (457.0, 914.0)  # way out of the vehicle
