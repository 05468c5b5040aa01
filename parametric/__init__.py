"""Convertible bed, extension and desk for a small van, worked out from the body that uses it."""

from __future__ import annotations

__version__ = "0.1.0"
