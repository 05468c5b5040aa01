"""Parts put where they belong: world placements, part numbers, quantities, mass properties."""
