"""``ways diff`` and ``ways reply``: what another record or a reply says otherwise."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

import click

from app.cli._base import (
    data_option,
    home_option,
    json_option,
    main,
    print_json,
    reading,
    say,
)

if TYPE_CHECKING:
    from app.domain.told import Told


@main.command("diff")
@click.argument("first", type=click.File("rb"))
@click.argument("second", type=click.File("rb"))
@json_option
@click.pass_context
def diff_(
    context: click.Context, first: BinaryIO, second: BinaryIO, *, as_json: bool
) -> None:
    """Say what differs between two record documents; ends with 1 if anything does."""
    from app.domain.edits import entries_between
    from app.domain.told import told
    from app.interchange import from_document

    old, new = from_document(first.read()), from_document(second.read())
    found = told(entries_between(old, new), new, old)
    if as_json:
        print_json([each.model_dump(mode="json") for each in found])
    else:
        _say(found)
    context.exit(1 if found else 0)


@main.command("reply")
@click.argument("file", type=click.File("rb"))
@home_option
@data_option
def reply_(file: BinaryIO, home: str | None, data: Path | None) -> None:
    """List what a reply, or a record that came back, would change; changes nothing."""
    from app.domain.replies import differences, open_corrections
    from app.domain.told import told
    from app.interchange.reply import read_reply
    from app.services import answers

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    reply, returned = read_reply(file.read(), record.home.ref)
    if returned is not None:
        _say(told(differences(record, returned), record))
    for said in open_corrections(record, reply):
        say(f"{record.by_ref[said.ref].title} ({said.ref}): {said.feeds}")


def _say(found: tuple[Told, ...]) -> None:
    for each in found:
        say(f"{each.name}: {each.what}")
        for sentence in each.sentences:
            say(f"  {sentence}")
