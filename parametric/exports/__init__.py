"""Files for other programs: STEP, STL, JSON."""
