"""``design.json`` and ``checks.json``: the same content gives the same bytes."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping, Sequence
from collections.abc import Set as AbstractSet
from numbers import Integral, Real

from parametric.core.check import Check, worst

SCHEMA = "parametric.checks/1"
_DIGITS = 6
_KEYS = (
    "id",
    "mode",
    "variant",
    "parts",
    "at",
    "step",
    "chance",
    "proposal",
    "verdict",
    "value",
    "unit",
    "min",
    "max",
    "margin",
    "says",
    "source",
)


def checks_document(name: str, checks: Iterable[Check]) -> dict[str, object]:
    """The checks of a design as the document of schema ``parametric.checks/1``, in the order given."""
    listed = tuple(checks)
    return {
        "schema": SCHEMA,
        "design": name,
        "verdict": worst(listed),
        "checks": [{key: getattr(check, key) for key in _KEYS} for check in listed],
    }


def to_bytes(document: Mapping[str, object]) -> bytes:
    """A document as UTF-8 JSON that ends with a line end.

    Numbers are rounded to a millionth, and those that are not finite become null; sets are sorted, mappings keep
    their order.

    Raises:
        TypeError: Something in it has no form in JSON.
    """
    return (json.dumps(_plain(document), indent=1, ensure_ascii=False, allow_nan=False) + "\n").encode()


def _plain(value: object) -> object:
    match value:
        case None | bool():
            return value
        case str():
            return str(value)
        case Integral():
            return int(value)
        case Real():
            return _rounded(float(value))
        case Mapping():
            return {str(key): _plain(item) for key, item in value.items()}
        case AbstractSet():
            return sorted((_plain(item) for item in value), key=_order)
        case Sequence():
            return [_plain(item) for item in value]
    raise TypeError(f"{type(value).__name__} has no form in JSON: {value!r}")


def _rounded(value: float) -> float | None:
    return round(value, _DIGITS) + 0.0 if math.isfinite(value) else None


def _order(value: object) -> str:
    return json.dumps(value, sort_keys=True)
