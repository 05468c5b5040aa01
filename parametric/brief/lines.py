"""On which line of a TOML text each key stands."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field

from parametric.brief.fields import Key

_TOKEN = re.compile(
    r'"""(?:\\.|[^\\])*?"{3,5}'
    r"|'''.*?'{3,5}"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|\#[^\n]*"
    r"|\n"
    r"|[\[\]{},=.]"
    r"|[^\s\[\]{},=.#\"']+",
    re.DOTALL,
)


def key_lines(text: str) -> dict[Key, int]:
    """Line (from 1) of every table, key and list element of a *valid* TOML text."""
    scan = _Scan(tokens=_tokens(text))
    while scan.at < len(scan.tokens):
        _statement(scan)
    return scan.lines


def line_of(key: Key, lines: dict[Key, int]) -> int | None:
    """Line of a key, else of the nearest table or list around it; None if there is none."""
    return next((lines[key[:n]] for n in range(len(key), 0, -1) if key[:n] in lines), None)


@dataclass(slots=True)
class _Scan:
    tokens: list[tuple[str, int]]
    at: int = 0
    table: Key = ()
    lines: dict[Key, int] = field(default_factory=dict)
    counts: dict[Key, int] = field(default_factory=dict)

    def peek(self) -> str:
        return self.tokens[self.at][0] if self.at < len(self.tokens) else ""

    def take(self) -> tuple[str, int]:
        self.at += 1
        return self.tokens[self.at - 1]

    def note(self, key: Key, line: int) -> None:
        for n in range(1, len(key) + 1):
            self.lines.setdefault(key[:n], line)


def _tokens(text: str) -> list[tuple[str, int]]:
    tokens: list[tuple[str, int]] = []
    line = 1
    for match in _TOKEN.finditer(text):
        token = match[0]
        if not token.startswith("#"):
            tokens.append((token, line))
        line += token.count("\n")
    return tokens


def _statement(scan: _Scan) -> None:
    if scan.peek() == "\n":
        scan.take()
    elif scan.peek() == "[":
        _header(scan)
    else:
        _pair(scan, scan.table)


def _header(scan: _Scan) -> None:
    _, line = scan.take()
    repeats = scan.peek() == "["
    if repeats:
        scan.take()
    names = _names(scan, "]")
    scan.take()
    if repeats:
        scan.take()
    key = (*_resolve(scan, names[:-1]), names[-1])
    scan.note(key, line)
    if repeats:
        count = scan.counts.get(key, 0)
        scan.counts[key] = count + 1
        key = (*key, count)
        scan.lines[key] = line
    elif key in scan.counts:
        key = (*key, scan.counts[key] - 1)
    scan.table = key


def _resolve(scan: _Scan, names: list[str]) -> Key:
    """A dotted path goes through the latest element of every [[list]] on its way."""
    key: Key = ()
    for name in names:
        key = (*key, name)
        if key in scan.counts:
            key = (*key, scan.counts[key] - 1)
    return key


def _pair(scan: _Scan, table: Key) -> None:
    line = scan.tokens[scan.at][1]
    key = (*table, *_names(scan, "="))
    scan.take()
    scan.note(key, line)
    _value(scan, key)


def _value(scan: _Scan, key: Key) -> None:
    if scan.peek() == "{":
        scan.take()
        while scan.peek() not in ("}", ""):
            if scan.peek() in (",", "\n"):
                scan.take()
            else:
                _pair(scan, key)
        scan.take()
    elif scan.peek() == "[":
        _elements(scan, key)
    else:
        while scan.peek() not in (",", "]", "}", "\n", ""):
            scan.take()


def _elements(scan: _Scan, key: Key) -> None:
    scan.take()
    index = 0
    while scan.peek() not in ("]", ""):
        if scan.peek() in (",", "\n"):
            scan.take()
            continue
        element = (*key, index)
        scan.lines[element] = scan.tokens[scan.at][1]
        _value(scan, element)
        index += 1
    scan.take()


def _names(scan: _Scan, end: str) -> list[str]:
    names: list[str] = []
    while scan.peek() not in (end, ""):
        token, _ = scan.take()
        if token != ".":
            names.append(_bare(token))
    return names


def _bare(token: str) -> str:
    return str(tomllib.loads(f"k={token}")["k"]) if token[0] in "\"'" else token
