"""Kinds of files a build can write; a light module, so that the command line may name them before it starts."""

from __future__ import annotations

USUAL = ("step", "stl")
KINDS = (*USUAL, "context")
