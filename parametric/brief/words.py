"""How values read from a brief are put into a message: short, printable, as the user wrote them."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

_LONGEST = 60


def shown(value: object, quote: str = '"') -> str:
    """A value as a TOML writer knows it, at most about 60 characters, without control characters."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f"{quote}{clipped(value)}{quote}"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    try:
        return clipped(str(value))
    except ValueError:  # Python will not print an integer of more than 4300 digits
        return "a huge number"


def clipped(text: str, longest: int = _LONGEST) -> str:
    """Printable text of at most about so many characters."""
    short = text if len(text) <= longest else text[: longest - 3] + "..."
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in short)


def figure(value: float) -> str:
    """A number without needless digits."""
    return f"{value:.10g}"


def choices(allowed: Iterable[str]) -> str:
    """Some words to choose from, quoted."""
    words = [f'"{word}"' for word in allowed]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def near(word: str, known: Iterable[str]) -> str:
    """``; did you mean ...?`` if some known word is close or contains this one, else nothing."""
    names = list(known)
    matches = difflib.get_close_matches(word[:_LONGEST], names, n=2, cutoff=0.6)
    if not matches and len(word) >= 4:
        matches = [name for name in names if word in name][:3]
    return f"; did you mean {choices(matches)}?" if matches else ""
