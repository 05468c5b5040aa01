"""Use cases: numbers without a CAD kernel, and the model with it."""
