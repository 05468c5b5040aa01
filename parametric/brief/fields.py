"""What the tables of a brief have in common: strict frozen models, names, texts, ranges, several problems at once."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Annotated, TypeVar

from pydantic import AfterValidator, BaseModel, ConfigDict, StrictBool, StrictStr
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from parametric.brief.quantities import mm
from parametric.brief.words import shown

Key = tuple[str | int, ...]
Clash = tuple[Key, str]

_SLUG = re.compile(r"[A-Za-z0-9_][A-Za-z0-9_-]{0,63}")
CLASH = "clash"
_T = TypeVar("_T")


class Table(BaseModel):
    """A table of the brief: nothing unknown in it, nothing changed after reading."""

    model_config = ConfigDict(frozen=True, extra="forbid")


def refuse(title: str, clashes: Sequence[Clash]) -> None:
    """Report any number of problems from inside one validator, each under its own key.

    Raises:
        ValidationError: There is at least one clash.
    """
    if clashes:
        raise ValidationError.from_exception_data(
            title,
            [
                InitErrorDetails(type=PydanticCustomError(CLASH, "{says}", {"says": says}), loc=key, input=None)
                for key, says in clashes
            ],
        )


def count(low: int, high: int | None = None) -> AfterValidator:
    """A list of `low` to `high` elements, judged only once each element is sound."""

    def counted(elements: tuple[_T, ...]) -> tuple[_T, ...]:
        if len(elements) < low or (high is not None and len(elements) > high):
            bounds = f"at least {low}" if high is None else f"{low} to {high}"
            raise ValueError(f"read a list of {len(elements)}; write {bounds}")
        return elements

    return AfterValidator(counted)


def _slug(name: str) -> str:
    if _SLUG.fullmatch(name) is None:
        raise ValueError(f"read {shown(name)}; write 1 to 64 letters (a-z), digits, _ or -, not starting with -")
    return name


def _label(text: str) -> str:
    if not 1 <= len(text) <= 64 or not text.isprintable() or text != text.strip():
        raise ValueError(f"read {shown(text)}; write 1 to 64 characters on one line, no blanks around them")
    return text


def _text(text: str) -> str:
    if len(text) > 2000 or not all(c.isprintable() or c in "\n\t" for c in text):
        raise ValueError(f"read {shown(text)}; write at most 2000 printable characters")
    return text


def _rising(pair: tuple[float, float]) -> tuple[float, float]:
    if pair[0] >= pair[1]:
        raise ValueError(f"read [{pair[0]:g}, {pair[1]:g}]; write the smaller first: [from, to]")
    return pair


Slug = Annotated[StrictStr, AfterValidator(_slug)]
Label = Annotated[StrictStr, AfterValidator(_label)]
Text = Annotated[StrictStr, AfterValidator(_text)]
Flag = StrictBool

X = Annotated[float, mm(0, 8000)]
Y = Annotated[float, mm(-1500, 1500)]
Z = Annotated[float, mm(0, 3000)]
XRange = Annotated[tuple[X, X], AfterValidator(_rising)]
YRange = Annotated[tuple[Y, Y], AfterValidator(_rising)]
ZRange = Annotated[tuple[Z, Z], AfterValidator(_rising)]
