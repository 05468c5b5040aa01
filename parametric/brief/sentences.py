"""Validation errors turned into one plain sentence each: what was read and what is allowed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from parametric.brief.fields import CLASH, Key
from parametric.brief.model import Brief
from parametric.brief.words import choices, clipped, near, shown

_SILENT = "default_factory_not_called"  # a default that hangs on a field with its own message


def sentences(error: ValidationError) -> Iterator[tuple[Key, str]]:
    """Key and sentence of every problem; one for each key."""
    said: set[Key] = set()
    for details in error.errors(include_url=False):
        key = tuple(part for part in details["loc"] if part != "[key]")
        if details["type"] != _SILENT and key not in said:
            said.add(key)
            yield key, _SAYS.get(details["type"], _other)(key, details)


def dotted(key: Key) -> str:
    """A key path as people write it: ``van.opening[0].width``."""
    text = ""
    for part in key:
        text += f"[{part}]" if isinstance(part, int) else f".{clipped(part)}"
    return text.removeprefix(".")


def _missing(key: Key, details: ErrorDetails) -> str:
    if isinstance(key[-1], int):
        return f"is missing: the list read is {shown(details['input'])}"
    table = _table_at(key[:-1])
    about = table.model_fields[key[-1]].description if table and key[-1] in table.model_fields else None
    inner = _table_at(key)
    if inner is None:
        return f"is missing: {about}"
    brackets = f"[[{key[-1]}]]" if _repeats(key) else f"[{key[-1]}]"
    return f"is missing: write a {brackets} table ({about})"


def _unknown(key: Key, details: ErrorDetails) -> str:
    table = _table_at(key[:-1])
    known = list(table.model_fields) if table else []
    word = str(key[-1])
    hint = near(word, known)
    if not hint and (homes := [home for home, names in _homes().items() if word in names]):
        hint = f"; it belongs in {choices(homes)}"
    return f"is not a known key{hint or '; known are ' + ', '.join(known)}"


def _choice(key: Key, details: ErrorDetails) -> str:
    allowed = re.findall(r"'([^']*)'", details.get("ctx", {}).get("expected", ""))
    value = details["input"]
    return f"read {shown(value)}; write {choices(allowed)}{near(value, allowed) if isinstance(value, str) else ''}"


def _own(key: Key, details: ErrorDetails) -> str:
    return str(details["ctx"]["error"])


def _clash(key: Key, details: ErrorDetails) -> str:
    return str(details["ctx"]["says"])


def _table(key: Key, details: ErrorDetails) -> str:
    name = dotted(tuple(part for part in key if isinstance(part, str)))
    brackets = f"[[{name}]]" if key and isinstance(key[-1], int) else f"[{name}]"
    return f"read {shown(details['input'])}; write a {brackets} table"


def _list(key: Key, details: ErrorDetails) -> str:
    if _table_at(key) is not None:
        name = dotted(tuple(part for part in key if isinstance(part, str)))
        return f"read {shown(details['input'])}; write a [[{name}]] table, in double brackets"
    return f"read {shown(details['input'])}; write a list in [ ]"


def _many(key: Key, details: ErrorDetails) -> str:
    return f"read a list longer than {details['ctx']['max_length']}; leave out what is too much"


def _text(key: Key, details: ErrorDetails) -> str:
    return f'read {shown(details["input"])}; write text in "quotes"'


def _flag(key: Key, details: ErrorDetails) -> str:
    return f"read {shown(details['input'])}; write true or false"


def _other(key: Key, details: ErrorDetails) -> str:
    return f"read {shown(details['input'])}; {clipped(details['msg'])}"


_SAYS: Mapping[str, Callable[[Key, ErrorDetails], str]] = {
    "missing": _missing,
    "extra_forbidden": _unknown,
    "literal_error": _choice,
    "value_error": _own,
    CLASH: _clash,
    "model_type": _table,
    "mapping_type": _table,
    "dict_type": _table,
    "tuple_type": _list,
    "too_long": _many,
    "string_type": _text,
    "bool_type": _flag,
}


def _table_at(key: Key) -> type[BaseModel] | None:
    """The model that reads the table at a key; None where no table belongs."""
    table: type[BaseModel] | None = Brief
    for part in key:
        if isinstance(part, str):
            field = table.model_fields.get(part) if table else None
            table = model_in(field.annotation) if field else None
    return table


def _repeats(key: Key) -> bool:
    parent = _table_at(key[:-1])
    return parent is not None and get_origin(parent.model_fields[str(key[-1])].annotation) is tuple


def model_in(annotation: Any) -> type[BaseModel] | None:
    """The model within an annotation such as ``tuple[Fixed, ...]`` or ``Roof | None``; None if there is none."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((found for arg in get_args(annotation) if (found := model_in(arg))), None)


def _homes(table: type[BaseModel] = Brief, path: str = "") -> dict[str, set[str]]:
    """The keys of every table by its dotted path."""
    homes = {path: set(table.model_fields)} if path else {}
    for name, field in table.model_fields.items():
        if (inner := model_in(field.annotation)) is not None:
            homes |= _homes(inner, f"{path}.{name}" if path else name)
    return homes
