"""``ways import-table``: circuits, points or ways from a spreadsheet."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO

import click

from app.cli._base import (
    change,
    data_option,
    home_option,
    json_option,
    main,
    opened,
    print_json,
    say,
)

if TYPE_CHECKING:
    from app.domain.record import Record
    from app.domain.spreadsheet import Made
    from app.services.spreadsheets import Waiting

THERE = (
    "Some of it is here already. Say --only-new to leave that out, or --once-more to "
    "make it again."
)
# As in the domain, which --help does not load.
KINDS = ("circuits", "points", "ways")


@main.command("import-table")
@click.argument("kind", type=click.Choice(KINDS))
@click.argument("file", type=click.File("rb"))
@click.option("--board", metavar="REF", help="Board of ways that name none.")
@click.option(
    "--map",
    "pairs",
    metavar="HEADING=FIELD",
    multiple=True,
    help="What a column holds, or nothing after the = to leave it out; else guessed.",
)
@click.option("--sheet", metavar="NAME", help="Which sheet; else the first.")
@click.option(
    "--heading-row", type=click.IntRange(min=1), help="Row of the headings; else found."
)
@click.option("--make-devices", is_flag=True, help="Make ways that are not there.")
@click.option("--make-rooms", is_flag=True, help="Make rooms that are not there.")
@click.option(
    "--kind-unsaid",
    metavar="KIND",
    default="unknown",
    show_default=True,
    help="What a device is where the sheet says nothing, such as circuit_breaker.",
)
@click.option(
    "--only-new/--once-more",
    default=None,
    help="Leave out what is there already, or make it once more; unsaid: refuse it.",
)
@click.option("--dry-run", is_flag=True, help="Say what would be made; change nothing.")
@home_option
@json_option
@data_option
def import_table(
    kind: str,
    file: BinaryIO,
    home: str | None,
    data: Path | None,
    *,
    dry_run: bool,
    as_json: bool,
    only_new: bool | None,
    **options: Any,
) -> None:
    """Take in circuits, points or a board's ways from a CSV or XLSX file.

    All of it as one change, or nothing: every cell that cannot be taken is named by its
    row and column.
    """
    from app.interchange.spreadsheet import MOST_BYTES, workbook_from
    from app.services.answers import the_home
    from app.services.named_columns import named
    from app.services.spreadsheets import carry_out, outcome

    workbook = workbook_from(file.read(MOST_BYTES + 1), Path(file.name).name)
    with opened(data) as config, change(config) as connection:
        start = the_home(connection, home)
        options["only_new"] = bool(only_new)
        waiting = named(connection, start.record, workbook, kind, options)
        made = outcome(start.record, waiting)
        open_yet = bool(made.there) and only_new is None
        if not (dry_run or open_yet):
            _, made = carry_out(connection, start, waiting, None)
    look = dry_run or open_yet
    _say(start.record, waiting, made, as_json=as_json, dry_run=look)
    if open_yet:
        if not as_json:
            say(THERE)
        raise click.exceptions.Exit(0 if dry_run else 1)


def _say(
    old: Record, file: Waiting, made: Made, *, as_json: bool, dry_run: bool
) -> None:
    from app.interchange.table_text import made_text, made_values
    from app.services.spreadsheets import counted

    done = not dry_run and not made.faults
    count = counted(old, made.record) if not made.faults else ()
    if as_json:
        print_json(made_values(file.chosen, file.match, made, count, stored=done))
    else:
        say(made_text(file.chosen, file.match, made, count, stored=done))
    if made.faults:
        raise click.exceptions.Exit(1)
