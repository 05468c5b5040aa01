"""Check meshes straight from part data, and what touches or overlaps what. No CAD kernel in here."""
