"""``ways history``: what was changed, when, and from where."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

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


@main.command()
@click.option("--item", metavar="REF", help="Only the changes of this item.")
@click.option(
    "--since",
    type=click.DateTime(("%Y-%m-%d",)),
    metavar="DATE",
    help="Only the changes since this day, such as 2026-03-01.",
)
@home_option
@json_option
@data_option
def history(
    item: str | None,
    since: datetime | None,
    home: str | None,
    data: Path | None,
    *,
    as_json: bool,
) -> None:
    """List what was changed, newest first, with each item before and after."""
    from app.domain.uk_time import start_of
    from app.interchange.history_text import history_text
    from app.services import answers
    from app.services import history as past

    with reading(data) as connection:
        own = answers.the_home(connection, home)
        ref = past.known_ref(connection, own, item) if item else ""
        start = start_of(since.date()) if since else None
        changes = past.changes_since(connection, own, start, ref)
        found = past.happened(connection, own, changes)
    if as_json:
        print_json(answers.as_json(found, "history"))
    else:
        say(history_text(found, ref))
