"""Postures that the body takes on the furniture, and the flesh that goes with them."""

from __future__ import annotations

from parametric.posture.figure import Figure, lying_figure, seated_figure
from parametric.posture.kinds.feet_down import solve
from parametric.posture.lying import HeadEnd, Lying, lie, lying_length
from parametric.posture.relief import knee_angle_when_lowered, recline_for
from parametric.posture.seated import Seated
from parametric.posture.workplace import Workplace

__all__ = [
    "Figure",
    "HeadEnd",
    "Lying",
    "Seated",
    "Workplace",
    "knee_angle_when_lowered",
    "lie",
    "lying_figure",
    "lying_length",
    "recline_for",
    "seated_figure",
    "solve",
]
