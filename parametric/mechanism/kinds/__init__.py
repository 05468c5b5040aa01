"""The furniture of each kind, as data."""
