"""One file for each kind of seat: how the body sits on it."""
