"""The one door to the CAD kernel, so that a missing system library gets one clear message."""

from __future__ import annotations

from parametric.core.errors import OutputError

try:
    import cadquery as cq
    import OCP
except ImportError as error:
    if ".so" not in str(error):
        raise
    raise OutputError(
        f"the CAD kernel does not load ({error}); on Debian or Ubuntu: apt-get install libgl1 libx11-6"
    ) from error

__all__ = ["OCP", "cq"]
