"""Convertible bed, extension and desk for a small van, worked out from the body that uses it."""

__version__ = "0.1.0"
