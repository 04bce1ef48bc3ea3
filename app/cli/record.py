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
    output_option,
    print_json,
    reading,
    say,
    write_out,
)


@main.command("import")
@click.argument("file", type=click.File("rb"))
@click.option("--as", "as_ref", metavar="REF", help="Take it in under this reference.")
@data_option
def import_(file: BinaryIO, as_ref: str | None, data: Path | None) -> None:
    """Take in a record document, or a pack, as a home: whole, or not at all."""
    from app.interchange.document import MOST_BYTES_WITH_HISTORY, document_from
    from app.services.documents import take_in
    from app.services.files import keep
    from app.services.pack_in import MOST_BYTES, is_pack, unpacked

    most = MOST_BYTES_WITH_HISTORY
    head = file.read(4)
    if is_pack(head):
        pack = unpacked(head + file.read(MOST_BYTES))
        document, files = pack.document, pack.files
    else:
        document, files = document_from(head + file.read(most - 3), most), ()
    record, history = document.record, document.history
    with opened(data) as config, change(config) as connection:
        for sent in files:
            keep(config.files, sent)
        ref = take_in(connection, record, as_ref=as_ref, history=history)
    past = f", with {len(history.changes)} changes" if history else ""
    past += f", with {len(files)} files" if files else ""
    say(f"Taken in: {record.home.name} ({ref}){past}")


@main.command()
@home_option
@output_option
@click.option("--with-history", is_flag=True, help="Keep all that was done to it, too.")
@data_option
def export(
    home: str | None, output: Path | None, data: Path | None, *, with_history: bool
) -> None:
    """Write a home as a record document, to a file or to the screen."""
    from app.interchange import to_document
    from app.services.answers import the_home
    from app.services.history import whole_history

    with reading(data) as connection:
        own = the_home(connection, home)
        history = whole_history(connection, own) if with_history else None
    write_out(to_document(own.record, history), output)


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
            "results",
            "trace",
            "may-i",
            "trace-plan",
            "rounds",
            "tripped",
            "history",
            "compare",
        )
    ),
    help="Of what that command answers with --json; of rounds that trace reads.",
)
def schema(answer: str | None) -> None:
    """Print the JSON Schema of the record document, or of what --answer names."""
    from app.interchange import document_schema
    from app.services.answers import answer_schema

    print_json(answer_schema(answer) if answer else document_schema())
