"""The commented brief that `parametric new` writes; it is valid as it stands."""

from __future__ import annotations

import re
from importlib.resources import files

_NAME = "my_van"


def template_text(name: str) -> str:
    """The template as TOML text.

    Args:
        name: What the design is to be called; what a name cannot hold becomes ``_``.
    """
    slug = re.sub(r"[^A-Za-z0-9_-]+", "_", name).strip("_-")[:64] or _NAME
    text = files("parametric.brief").joinpath("template.toml").read_text(encoding="utf-8")
    return text.replace(f'name = "{_NAME}"', f'name = "{slug}"', 1)
