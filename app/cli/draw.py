"""``ways draw``: a drawing of the record as an SVG file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from app.cli._base import (
    NewFile,
    data_option,
    home_option,
    main,
    reading,
    replace_option,
    say,
)

if TYPE_CHECKING:
    from app.domain.record import Record

DRAWINGS = ("house", "one-line", "street", "board")


@main.command()
@click.argument("what", type=click.Choice(DRAWINGS), metavar="|".join(DRAWINGS))
@click.option("--circuit", metavar="REF", help="Of the house: bring it forward.")
@click.option("--room", metavar="REF", help="Of the house: bring it forward.")
@click.option("--board", metavar="REF", help="Which board; may be left out for one.")
@click.option(
    "-o",
    "--output",
    "out",
    required=True,
    type=NewFile(),
    help="File to write the SVG to.",
)
@replace_option
@home_option
@data_option
def draw(
    what: str,
    circuit: str | None,
    room: str | None,
    board: str | None,
    out: Path,
    home: str | None,
    data: Path | None,
) -> None:
    """Write a drawing as an SVG file: black on white, with all it needs inside."""
    from app.services.answers import the_home

    _check(what, circuit, room, board)
    with reading(data) as connection:
        record = the_home(connection, home).record
    made = _drawn(record, what, circuit, room, board)
    out.write_text(made, encoding="utf-8")
    say(f"Written: {out}")


def _check(what: str, circuit: str | None, room: str | None, board: str | None) -> None:
    """Refuse an option that the drawing does not have."""
    if (circuit or room) and what != "house":
        raise click.UsageError("Only the house brings a circuit or a room forward.")
    if circuit and room:
        raise click.UsageError("Bring forward a circuit or a room, not both.")
    if board and what != "board":
        raise click.UsageError("Only a drawing of a board takes --board.")


def _drawn(
    record: Record, what: str, circuit: str | None, room: str | None, board: str | None
) -> str:
    from app.domain.record import Circuit, Room
    from app.services.answers import find
    from app.services.drawings import board_file, house_file, one_line_file, street_file

    if what == "one-line":
        return one_line_file(record)
    if what == "street":
        return street_file(record)
    if what == "board":
        return board_file(record, board)
    if circuit:
        return house_file(record, find(record, (Circuit,), circuit).ref)
    return house_file(record, find(record, (Room,), room).ref if room else "")
