"""The `parametric` command: its subcommands, and what becomes of errors."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Any, NoReturn

import typer
from typer.core import TyperGroup

from parametric import __version__
from parametric.cli import body, build, check, new, size
from parametric.core.errors import BriefError, ParametricError

UNUSABLE, BUG = 2, 3
INTERRUPTED, PIPE_CLOSED = 130, 141  # as shells report a program ended by SIGINT or SIGPIPE


class _Commands(TyperGroup):
    """The commands, whose two ways of being stopped typer would report as a failed check or not at all."""

    def invoke(self, ctx: Any) -> Any:
        """Run the command named."""
        try:
            return super().invoke(ctx)
        except KeyboardInterrupt:
            _fail("stopped; nothing was changed", INTERRUPTED)
        except BrokenPipeError:
            # the reader has had enough, as `| head` does; Python must not complain about it at exit
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            sys.exit(PIPE_CLOSED)


app = typer.Typer(
    name="parametric",
    cls=_Commands,
    add_completion=True,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
    help="Works out, checks and exports a bed that is also a seat and a desk, for a small van and the body in it.",
    epilog="Start with: parametric new my_van.toml. Exit codes: 0 no check fails, 1 a check fails, "
    "2 the brief or the command is unusable, 3 a bug.",
)
for _command in (new, body, size, check, build):
    app.command(name=_command.__name__.rsplit(".", 1)[-1])(_command.run)


@app.callback(invoke_without_command=True)
def _start(
    context: typer.Context,
    version: bool = typer.Option(False, "--version", help="Print the version and stop."),
) -> None:
    if version:
        typer.echo(f"parametric {__version__}")
    elif context.invoked_subcommand is None:
        typer.echo(_NEXT)


_NEXT = """\
A bed that is also a seat and a desk, worked out from your van and your body.

  parametric body --stature 1.96m   your dimensions, and what to measure
  parametric new my_van.toml        a brief to fill in; it builds as it is
  parametric size my_van.toml       heights, lengths, and which wishes clash
  parametric check my_van.toml      every check in every mode
  parametric build my_van.toml      STEP and STL under outputs/my_van

parametric COMMAND --help tells the rest."""


def main() -> None:
    """Run the command line and exit with its code; an error becomes one clear message on standard error."""
    try:
        app()
    except BriefError as error:
        _fail("\n".join(error.lines()), UNUSABLE)
    except ParametricError as error:
        _fail(str(error), UNUSABLE)
    except OSError as error:
        # files are opened elsewhere, with a message of their own: this is the terminal, or the pipe behind it
        _fail(f"the output cannot be written: {error.strerror or error}", UNUSABLE)
    except Exception as error:  # noqa: BLE001 - the last net: a bug becomes one message and exit code 3
        _bug(error)


def _fail(message: str, code: int) -> NoReturn:
    sys.stderr.write(f"{message}\n")
    sys.exit(code)


def _bug(error: Exception) -> None:
    import traceback

    if os.environ.get("PARAMETRIC_DEBUG"):
        traceback.print_exc()
    last = traceback.extract_tb(error.__traceback__)[-1]
    place = f"{Path(last.filename).name}:{last.lineno}"
    _fail(
        f"parametric has a bug: {type(error).__name__}: {error} ({place}).\n"
        "Nothing was written. Set PARAMETRIC_DEBUG=1 for the details and report them with the brief.",
        BUG,
    )
