"""The clear text of ISO 10303-21: numbered entities, texts and numbers, written the same way every time."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

_REFERENCE = re.compile(r"#(\d+)")


class Entities:
    """Entities of one file, numbered from 1 in the order they are added."""

    def __init__(self) -> None:
        self._lines: list[str] = []

    def add(self, body: str) -> str:
        """Add one entity; returns its reference, such as ``#12``."""
        self._lines.append(body)
        return f"#{len(self._lines)}"

    def add_block(self, bodies: Sequence[str]) -> str:
        """Add entities that refer to each other from ``#1``; returns the reference of the first."""
        base = len(self._lines)
        self._lines.extend(_REFERENCE.sub(lambda m: f"#{int(m[1]) + base}", body) for body in bodies)
        return f"#{base + 1}"

    def text(self, header: Sequence[str]) -> str:
        """The whole file."""
        data = (f"#{k}={body};" for k, body in enumerate(self._lines, 1))
        lines = ["ISO-10303-21;", "HEADER;", *(f"{h};" for h in header), "ENDSEC;", "DATA;", *data, "ENDSEC;"]
        return "\n".join([*lines, "END-ISO-10303-21;", ""])


def listed(references: Iterable[str]) -> str:
    """A list of entities or values."""
    return f"({','.join(references)})"


def text(value: str) -> str:
    """A quoted text; what is not plain ASCII is written in hexadecimal as the standard asks."""
    out = []
    for plain, other in re.findall(r"([ -~]+)|([^ -~]+)", value):
        if plain:
            out.append(plain.replace("\\", "\\\\").replace("'", "''"))
        else:
            out.append(f"\\X4\\{other.encode('utf-32-be').hex().upper()}\\X0\\")
    return f"'{''.join(out)}'"


def real(value: float) -> str:
    """A number with the decimal point the standard asks for, to 12 digits."""
    mantissa, _, exponent = f"{round(value, 12) + 0.0:.12g}".partition("e")
    point = mantissa if "." in mantissa else f"{mantissa}."
    return f"{point}E{exponent}" if exponent else point


def reals(values: Iterable[float]) -> str:
    """A list of numbers."""
    return listed(real(v) for v in values)
