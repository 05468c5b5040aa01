"""A result folder that is either the old one or the new one, whatever happens in between.

Files are written to a hidden sibling, ``.NAME.partial``. When all are there the old folder moves aside to
``.NAME.previous``, the new one takes its place, and the old one is deleted. What a killed run left lying is put right
by the next run.
"""

from __future__ import annotations

import os
import shutil
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

from parametric.core.errors import OutputError

MARK = "design.json"  # a folder without it was not made here


@contextmanager
def replacing(target: Path) -> Iterator[Path]:
    """Give an empty folder to write to; it becomes `target` if the block ends well, and vanishes if not.

    A failure, Ctrl-C or SIGTERM within the block leaves an earlier `target` as it was.

    Raises:
        OutputError: The target may not be replaced, cannot be written, or is being written by another run.
    """
    target = Path(os.path.abspath(target))
    with _reported(target):
        _refuse(target)
    partial, previous = _sibling(target, "partial"), _sibling(target, "previous")
    with _terminating(), _reported(target):
        made = _make_parents(target.parent)
        try:
            with _owned(partial):
                _mend(target, previous)
                yield partial
                _swap(partial, target, previous)
        except BaseException:
            for folder in made:
                _remove_if_empty(folder)
            raise


def write(path: Path, data: bytes) -> None:
    """Write one file, making its folder.

    Raises:
        OutputError: It cannot be written.
    """
    with _reported(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)


def _refuse(target: Path) -> None:
    """Raise unless the target is free, empty, or of our making."""
    if target.is_symlink():
        raise OutputError(f"{target} is a link; name the folder it points to, {os.path.realpath(target)}")
    if not target.exists():
        return
    if not target.is_dir():
        raise OutputError(f"{target} is a file; name a folder")
    if Path.cwd().is_relative_to(target):
        raise OutputError(f"{target} is the folder you are in or above it; start from outside it or name another")
    with _reported(target):
        names = os.listdir(target)
    if names and MARK not in names:
        raise OutputError(f"{target} holds other things and no {MARK}; name a new or an empty folder")


def _sibling(target: Path, role: str) -> Path:
    return target.with_name(f".{target.name}.{role}")


def _make_parents(folder: Path) -> list[Path]:
    """Make the missing folders down to this one; returns them, innermost first."""
    missing = [f for f in (folder, *folder.parents) if not f.exists()]
    folder.mkdir(parents=True, exist_ok=True)
    return missing


def _remove_if_empty(folder: Path) -> None:
    if folder.is_dir() and not any(folder.iterdir()):
        folder.rmdir()


@contextmanager
def _owned(partial: Path) -> Iterator[None]:
    """Make the partial folder ours alone, clearing what a killed run left in it; remove it in the end."""
    partial.mkdir(exist_ok=True)
    handle = None if sys.platform == "win32" else _lock(partial)
    try:
        for left in partial.iterdir():
            _remove(left)
        yield
    finally:
        if partial.exists():
            shutil.rmtree(partial)
        if handle is not None:
            os.close(handle)


def _lock(folder: Path) -> int:
    """Lock a folder until the process ends or the handle is closed."""
    import fcntl  # not on Windows

    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(handle)
        raise OutputError(f"{folder} is being written by another run; wait for it to end") from None
    return handle


def _mend(target: Path, previous: Path) -> None:
    """Put back or delete the old folder that a killed run had moved aside."""
    if previous.exists():
        if target.exists():
            shutil.rmtree(previous)
        else:
            previous.rename(target)


def _swap(partial: Path, target: Path, previous: Path) -> None:
    old = target.exists()
    try:
        if old:
            target.rename(previous)
        partial.rename(target)
    except BaseException:
        if old and not target.exists():
            previous.rename(target)
        raise
    if old:
        # the new folder is in place: what cannot be deleted now is deleted by the next run
        shutil.rmtree(previous, ignore_errors=True)


def _remove(path: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    else:
        path.unlink()


@contextmanager
def _reported(path: Path) -> Iterator[None]:
    """Turn errors of the file system into one clear message."""
    try:
        yield
    except OutputError:
        raise
    except OSError as error:
        at = error.filename or path
        raise OutputError(f"{path} cannot be written: {at}: {error.strerror or error}; name another folder") from error


@contextmanager
def _terminating() -> Iterator[None]:
    """Let SIGTERM end the block by an exception, so that it is cleaned up."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGTERM, _stop)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def _stop(number: int, _frame: FrameType | None) -> None:
    raise SystemExit(128 + number)
