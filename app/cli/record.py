"""``ways import``, ``export`` and ``schema``: the record as a document."""

from __future__ import annotations

from pathlib import Path
from typing import BinaryIO

import click

from app.cli._base import (
    change,
    data_option,
    home_option,
    main,
    opened,
    print_json,
    reading,
)


@main.command("import")
@click.argument("file", type=click.File("rb"))
@click.option("--as", "as_ref", metavar="REF", help="Take it in under this reference.")
@data_option
def import_(file: BinaryIO, as_ref: str | None, data: Path | None) -> None:
    """Take in a record document as a home of its own: whole, or not at all."""
    from app.interchange.document import MOST_BYTES, from_document
    from app.services.documents import take_in

    record = from_document(file.read(MOST_BYTES + 1))
    with opened(data) as config, change(config) as connection:
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

    with reading(data) as connection:
        document = to_document(the_home(connection, home).record).encode()
    if output is None:
        click.echo(document, nl=False)
    else:
        output.write_bytes(document)
        click.echo(f"Written: {output}")


@main.command()
@click.option(
    "--answer",
    type=click.Choice(
        (
            "point",
            "way",
            "room",
            "circuit",
            "load",
            "faults",
            "remarks",
            "reminders",
            "trace",
            "trace-plan",
            "rounds",
        )
    ),
    help="Of what that command answers with --json; of rounds that trace reads.",
)
def schema(answer: str | None) -> None:
    """Print the JSON Schema of the record document, or of what --answer names."""
    from app.interchange import document_schema
    from app.services.answers import answer_schema

    print_json(answer_schema(answer) if answer else document_schema())
