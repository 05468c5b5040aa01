"""Timber and tube sections by role, from the brief or by default. Auto-sizing replaces the defaults."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

Section = tuple[float, float]

# width x height as the part lies in the furniture
DEFAULTS: Mapping[str, Section] = {
    "slat": (70.0, 20.0),
    "batten": (28.0, 45.0),
    "rail": (28.0, 95.0),
    "bearer": (45.0, 95.0),
    "post": (45.0, 45.0),
    "ledger": (35.0, 45.0),
    "cleat": (45.0, 70.0),
    "strip": (28.0, 28.0),
    "stiffener": (20.0, 60.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sections:
    """Width and height of each timber role, and the leg tubes, mm.

    Attributes:
        slat: Slat, flat.
        batten: Lid batten, on edge.
        rail: Side rail, on edge.
        bearer: End and middle bearer, on edge.
        post: Post.
        ledger: Ledger under the panel's inner edge: how far it stands out, how tall.
        cleat: Desk cleat: how far it stands out, how tall.
        strip: Strip under the batten ends.
        stiffener: Batten on edge under the panel.
        leg: Outside of the upper leg stage, square.
        leg_lower: Outside of the lower stage.
        leg_wall: Wall of both tubes.
    """

    slat: Section
    batten: Section
    rail: Section
    bearer: Section
    post: Section
    ledger: Section
    cleat: Section
    strip: Section
    stiffener: Section
    leg: float = 30.0
    leg_lower: float = 25.0
    leg_wall: float = 2.0


def resolve(chosen: Mapping[str, Section]) -> Sections:
    """The sections asked for, with defaults for the rest.

    Args:
        chosen: Width and height by role.
    """

    def of(role: str) -> Section:
        return chosen.get(role, DEFAULTS[role])

    return Sections(
        slat=of("slat"),
        batten=of("batten"),
        rail=of("rail"),
        bearer=of("bearer"),
        post=of("post"),
        ledger=of("ledger"),
        cleat=of("cleat"),
        strip=of("strip"),
        stiffener=of("stiffener"),
    )
