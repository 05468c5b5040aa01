"""A brief with a few values replaced: what a way out of a clash proposes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from parametric.brief.model import Brief


def changed(brief: Brief, changes: Mapping[str, Any]) -> Brief | None:
    """The brief with values replaced by dotted key, judged again as a whole; None if that is no legal brief.

    Args:
        brief: As it stands.
        changes: New values by dotted key, such as ``{"bed.platform_height": 440.0}``.

    Raises:
        KeyError: A key leads nowhere.
    """
    whole, data = brief.model_dump(), brief.model_dump(exclude_unset=True)
    for key, value in changes.items():
        *tables, last = key.split(".")
        known, table = whole, data
        for name in tables:
            # what was left out stays left out, so that a default that follows another value still follows it
            known, table = known[name], table.setdefault(name, {})
        if last not in known:
            raise KeyError(key)
        table[last] = value
    try:
        return Brief.model_validate(data)
    except ValidationError:
        return None
