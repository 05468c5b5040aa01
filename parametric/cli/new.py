"""`parametric new`: a commented brief to fill in."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Annotated

import typer

from parametric.core.errors import OutputError


def run(
    file: Annotated[Path, typer.Argument(help="File to write, such as my_van.toml.")],
) -> None:
    """Write a commented brief to fill in; it builds as it stands."""
    from parametric.brief.template import template_text

    _write_new(file, template_text(file.stem))
    typer.echo(f"Wrote {file}. Fill in your van and yourself, then: parametric size {file}")


def _write_new(file: Path, text: str) -> None:
    """Write a file that is not there yet, whole or not at all."""
    partial = file.with_name(f".{file.name}.{os.getpid()}.partial")
    try:
        if file.exists():
            raise OutputError(f"{file} is there already; name a new file")
        partial.write_text(text, encoding="utf-8")
        os.link(partial, file)
    except FileExistsError:
        raise OutputError(f"{file} is there already; name a new file") from None
    except OutputError:
        raise
    except (OSError, ValueError) as error:
        says = getattr(error, "strerror", None) or str(error)
        raise OutputError(f"{file}: cannot be written: {says}; name a file in a folder you can write to") from None
    finally:
        partial.unlink(missing_ok=True)
