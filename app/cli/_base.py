"""What every command shares: the group, its options, the file it opens."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from app import __version__
from app.errors import AppError

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from app.config import Config

SHOWN_PROBLEMS = 100
REPLACE = "app.cli.replace"
# Controls of both ranges but the ends of lines and tabs; turns of the direction.
ORDERS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
# What JSON may hold as it is, and a console would take for an order.
UPPER = re.compile("[\x7f-\x9f]")

data_option = click.option(
    "--data",
    type=click.Path(file_okay=False, path_type=Path),
    help="Folder of the data; else WAYS_DATA, else the usual place of this system.",
)
home_option = click.option(
    "--home", metavar="REF", help="Which home; may be left out when there is only one."
)
json_option = click.option(
    "--json", "as_json", is_flag=True, help="Answer as JSON, for another program."
)


class NewFile(click.Path):
    """A file to write.

    One that is there is refused before any work, but with ``--replace``.
    """

    def __init__(self, *, or_folder: bool = False) -> None:
        super().__init__(dir_okay=or_folder, path_type=Path)

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> Any:
        """Return the path, if it may be written to."""
        path = Path(os.fsdecode(super().convert(value, param, ctx)))
        refuse_if_there(path)
        return path


def refuse_if_there(path: Path) -> None:
    """Refuse a file, or a folder, that is there and shall not be written over.

    Raises:
        InvalidError: It is there; a folder is never replaced.
    """
    from app.errors import InvalidError

    if path.is_dir():
        raise InvalidError(f"{path} is there already, a folder. Give another name.")
    if path.is_file() and not click.get_current_context().meta.get(REPLACE):
        raise InvalidError(
            f"{path} is there already. Give another name, or write over it with "
            "--replace."
        )


def _keep_replace(context: click.Context, _: click.Parameter, value: object) -> None:
    context.meta[REPLACE] = value


# Eager, so that it is known when the file is looked at.
replace_option = click.option(
    "--replace",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_keep_replace,
    help="Write over a file that is there.",
)


def output_option(command: Callable[..., Any]) -> Callable[..., Any]:
    """Give a command the file that it writes, else the screen."""
    option = click.option(
        "-o", "--output", type=NewFile(), help="File to write; else the screen."
    )
    return option(replace_option(command))


class Ways(click.Group):
    """The commands, in the order they are written; a refusal ends with its reasons."""

    def list_commands(self, _context: click.Context) -> list[str]:
        """Keep the order."""
        return list(self.commands)

    def invoke(self, context: click.Context) -> Any:
        """Run a command; what cannot be done is said, with every reason."""
        try:
            return super().invoke(context)
        except AppError as error:
            lines = [f"{p.place}: {p.reason}" for p in error.problems[:SHOWN_PROBLEMS]]
            said = "\n  ".join((error.sentence, *lines))
            raise click.ClickException(ORDERS.sub("\ufffd", said)) from error
        except BrokenPipeError:
            raise
        except OSError as error:
            raise click.ClickException(ORDERS.sub("\ufffd", f"{error}.")) from error


@click.group(
    cls=Ways,
    name="ways",
    invoke_without_command=True,
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.version_option(__version__, prog_name="ways")
@click.pass_context
def main(context: click.Context) -> None:
    """Keep the record of a home's electrical installation, and ask what feeds what."""
    for stream in (sys.stdout, sys.stderr):
        # A console that knows no Ω shows a query mark rather than ending in an error.
        if reconfigure := getattr(stream, "reconfigure", None):
            reconfigure(errors="replace")
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


def config_of(data: Path | None) -> Config:
    """Return the settings on a data folder."""
    from app.config import Config, data_folder

    return Config(data=data_folder(data).expanduser().resolve())


@contextmanager
def opened(data: Path | None) -> Iterator[Config]:
    """Give the settings on a data folder whose file is up to date."""
    from app.store.migrate import upgrade as bring_up_to_date

    config = config_of(data)
    copy = bring_up_to_date(config.database, config.backups)
    if copy:
        say(f"The file was brought up to date; a copy is {copy}", err=True)
    yield config


@contextmanager
def reading(data: Path | None) -> Iterator[Connection]:
    """Give a connection for reading."""
    from app.store import engine

    with (
        opened(data) as config,
        _said_plainly(config),
        engine.reading(engine.make_engine(config.database)) as connection,
    ):
        yield connection


@contextmanager
def change(config: Config) -> Iterator[Connection]:
    """Give a connection that commits at the end of the block, or not at all."""
    from app.store.engine import make_engine, writing

    with _said_plainly(config), writing(make_engine(config.database)) as connection:
        yield connection


@contextmanager
def _said_plainly(config: Config) -> Iterator[None]:
    """Put it in a sentence when another program holds the file, or the disk is full."""
    from sqlalchemy.exc import OperationalError

    try:
        yield
    except OperationalError as error:
        raise AppError(
            f"{config.database} cannot be used now: {error.orig}. Nothing was changed."
        ) from error


def say(text: object, *, err: bool = False) -> None:
    """Write lines for a person; what would give the console orders is left out.

    A record may have come from a stranger, and a console takes orders from the controls
    of ECMA-48 (both ranges); those of the direction of writing would turn what follows.
    """
    click.echo(ORDERS.sub("\ufffd", str(text)), err=err)


def print_json(value: Any) -> None:
    """Print a value as JSON, in UTF-8 whatever the console is."""
    import json

    text = _escaped(json.dumps(value, ensure_ascii=False, indent=1))
    click.echo(f"{text}\n".encode(), nl=False)


def _escaped(text: str) -> str:
    """Return JSON that holds no order for a console, and says the same."""
    return UPPER.sub(lambda found: f"\\u{ord(found[0]):04x}", text)


def write_out(text: str, output: Path | None) -> None:
    """Write a document in JSON to a file, or to the screen; always in UTF-8."""
    if output is None:
        click.echo(_escaped(text).encode(), nl=False)
    else:
        output.write_bytes(text.encode())
        say(f"Written: {output}")
