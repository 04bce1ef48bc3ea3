"""``ways attach`` and ``ways files``: photographs and papers of the record."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from app.cli._base import (
    change,
    data_option,
    home_option,
    json_option,
    main,
    opened,
    print_json,
    reading,
    say,
)

if TYPE_CHECKING:
    from app.domain.record import Attachment

STATES = {"missing": "its file is not here", "damaged": "its file is damaged"}


@main.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--to", "to", metavar="REF", help="Thing it belongs to; else the home.")
@click.option("--caption", default="", help="What it shows, on one line.")
@home_option
@data_option
def attach(
    file: Path, to: str | None, caption: str, home: str | None, data: Path | None
) -> None:
    """Add a photograph or a PDF to a thing of the record."""
    from app.pictures import MOST_BYTES
    from app.services.answers import the_home
    from app.services.files import attach as attach_file
    from app.services.files import looked_at, one_line

    with file.open("rb") as stream:
        sent = looked_at(stream.read(MOST_BYTES + 1), file.name)
    with opened(data) as config, change(config) as connection:
        made = attach_file(
            connection,
            the_home(connection, home),
            config.files,
            sent,
            of=(to,) if to else (),
            caption=one_line(caption),
        )
    said = "Here already" if made.was_here else "Added"
    say(f"{said}: {made.ref}")


@main.command()
@click.option("--check", is_flag=True, help="Read every file: is it what was added?")
@home_option
@json_option
@data_option
def files(home: str | None, data: Path | None, *, check: bool, as_json: bool) -> None:
    """List photographs and papers; with --check, end with 1 if one is not right."""
    from app.cli._base import config_of
    from app.services.answers import the_home
    from app.services.files import unsound

    with reading(data) as connection:
        rows = the_home(connection, home).record.attachments
    wrong: dict[str, str] = {}
    if check:
        found = unsound(config_of(data).files, rows)
        wrong = {row.ref: state for row, state in found}
    if as_json:
        print_json([_as_json(row, wrong.get(row.ref)) for row in rows])
    else:
        for row in rows:
            say(_line(row, wrong.get(row.ref)))
    if wrong:
        raise SystemExit(1)


def _line(row: Attachment, state: str | None) -> str:
    of = ", ".join(row.of) or "the home"
    said = f": {STATES[state]}" if state else ""
    return f"{row.ref}  {row.title}  ({of}, {row.media_type}, {row.size} bytes){said}"


def _as_json(row: Attachment, state: str | None) -> dict[str, Any]:
    return {**row.model_dump(mode="json"), "wrong": state}
