"""The command ``ways``: thin commands that parse, call a service, and print."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO

import click

from app import __version__
from app.errors import AppError

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from app.config import Config

SHOWN_PROBLEMS = 100

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
            raise click.ClickException("\n  ".join((error.sentence, *lines))) from error
        except BrokenPipeError:
            raise
        except OSError as error:
            raise click.ClickException(f"{error}.") from error


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


@main.command()
@data_option
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 0 takes a free one.")
@click.option("--open/--no-open", "open_browser", default=True, help="Open a browser.")
@click.option("--demo", is_flag=True, help="Show an invented home; nothing is kept.")
def serve(
    data: Path | None, port: int | None, *, open_browser: bool, demo: bool
) -> None:
    """Show the pages in a browser on this machine."""
    from app import server

    with _demo_config() if demo else _opened(data) as config:
        if demo:
            click.echo("This is a demo: an invented home. What you do is not kept.")
        else:
            click.echo(f"The record is {config.database}")
        server.serve(_to_serve(config, port), open_browser=open_browser, say=click.echo)


@main.command("import")
@click.argument("file", type=click.File("rb"))
@click.option("--as", "as_ref", metavar="REF", help="Take it in under this reference.")
@data_option
def import_(file: BinaryIO, as_ref: str | None, data: Path | None) -> None:
    """Take in a record document as a home of its own: whole, or not at all."""
    from app.interchange.document import MOST_BYTES, from_document
    from app.services.documents import take_in

    record = from_document(file.read(MOST_BYTES + 1))
    with _opened(data) as config, _change(config) as connection:
        ref = take_in(connection, record, as_ref=as_ref)
    click.echo(f"Taken in: {record.home.name} ({ref})")


@main.command()
@home_option
@click.option(
    "-o",
    "--output",
    type=click.Path(dir_okay=False, path_type=Path),
    help="File to write; else the screen.",
)
@data_option
def export(home: str | None, output: Path | None, data: Path | None) -> None:
    """Write a home as a record document, to a file or to the screen."""
    from app.interchange import to_document
    from app.services.answers import the_home

    with _reading(data) as connection:
        document = to_document(the_home(connection, home).record).encode()
    if output is None:
        click.echo(document, nl=False)
    else:
        output.write_bytes(document)
        click.echo(f"Written: {output}")


@main.command()
@click.option(
    "--answer",
    type=click.Choice(("point", "way", "room", "faults")),
    help="Of what ask or faults answers with --json.",
)
def schema(answer: str | None) -> None:
    """Print the JSON Schema of the record document, or of what --answer names."""
    from app.interchange import document_schema
    from app.services.answers import answer_schema

    _print_json(answer_schema(answer) if answer else document_schema())


@main.command()
@click.argument("question", type=click.Choice(("point", "way", "room")))
@click.argument("ref")
@home_option
@json_option
@data_option
def ask(
    question: str, ref: str, home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """Ask what feeds a point, what a way feeds, or which ways serve a room."""
    from app.interchange.answer_text import answer_text
    from app.services import answers

    with _reading(data) as connection:
        record = answers.the_home(connection, home).record
    answer = answers.answer(record, question, ref)
    if as_json:
        _print_json(answers.as_json(answer, question))
    else:
        click.echo(answer_text(answer))


@main.command("faults")
@home_option
@json_option
@data_option
def faults_(home: str | None, data: Path | None, *, as_json: bool) -> None:
    """List where the record contradicts itself or stops short."""
    from app.domain.faults import faults
    from app.interchange.answer_text import faults_text
    from app.services import answers

    with _reading(data) as connection:
        found = faults(answers.the_home(connection, home).record)
    if as_json:
        _print_json(answers.as_json(found, "faults"))
    else:
        click.echo(faults_text(found))


@main.command()
@data_option
def demo(data: Path | None) -> None:
    """Add the invented demo home to the data, as a home of its own."""
    from app.services.documents import add_demo

    with _opened(data) as config, _change(config) as connection:
        ref = add_demo(connection)
    click.echo(f"Added: the demo home ({ref})")


@main.group()
def db() -> None:
    """Look after the file that holds the record."""


@db.command()
@data_option
def path(data: Path | None) -> None:
    """Print where the file is."""
    click.echo(_config(data).database)


@db.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@data_option
def backup(file: Path | None, data: Path | None) -> None:
    """Copy the file to FILE, or among the copies in the data folder."""
    from app.services.upkeep import copy_of

    click.echo(f"Copied to {copy_of(_config(data), file)}")


@db.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@data_option
def restore(file: Path, data: Path | None) -> None:
    """Let the copy FILE take the place of the present file, which is kept."""
    from app.services.upkeep import restored

    config = _config(data)
    kept = restored(config, file)
    click.echo(f"{config.database} is now as {file} was.")
    if kept:
        click.echo(f"What was there before is {kept}")


@db.command()
@data_option
def upgrade(data: Path | None) -> None:
    """Bring the file to the shape that this version works with."""
    with _opened(data) as config:
        click.echo(f"{config.database} is up to date.")


def _config(data: Path | None) -> Config:
    from app.config import Config, data_folder

    return Config(data=data_folder(data).expanduser().resolve())


def _to_serve(config: Config, port: int | None) -> Config:
    from dataclasses import replace

    from app.logs import configure_logging
    from app.services.key import secret_key

    configure_logging(config.data)
    chosen = config.port if port is None else port
    return replace(config, port=chosen, secret_key=secret_key(config.data))


@contextmanager
def _opened(data: Path | None) -> Iterator[Config]:
    """Give the settings on a data folder whose file is up to date."""
    from app.store.migrate import upgrade as bring_up_to_date

    config = _config(data)
    copy = bring_up_to_date(config.database, config.backups)
    if copy:
        click.echo(f"The file was brought up to date; a copy is {copy}", err=True)
    yield config


@contextmanager
def _demo_config() -> Iterator[Config]:
    from app.services.documents import demo_folder

    with demo_folder() as config:
        yield config


@contextmanager
def _reading(data: Path | None) -> Iterator[Connection]:
    from app.store.engine import make_engine, reading

    with (
        _opened(data) as config,
        _said_plainly(config),
        reading(make_engine(config.database)) as connection,
    ):
        yield connection


@contextmanager
def _change(config: Config) -> Iterator[Connection]:
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


def _print_json(value: Any) -> None:
    import json

    text = json.dumps(value, ensure_ascii=False, indent=1)
    click.echo(f"{text}\n".encode(), nl=False)
