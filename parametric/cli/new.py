"""`parametric new`: a commented brief to fill in."""

from __future__ import annotations

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
    try:
        file.touch(exist_ok=False)
        try:
            file.write_text(text, encoding="utf-8")
        except BaseException:
            file.unlink()
            raise
    except FileExistsError:
        raise OutputError(f"{file} is there already; name a new file") from None
    except OSError as error:
        says = error.strerror or str(error)
        raise OutputError(f"{file}: cannot be written: {says}; name a file in a folder you can write to") from None
