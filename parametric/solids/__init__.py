"""CAD solids from part data. One of the few rooms that may use the CAD kernel."""
