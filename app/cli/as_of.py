"""``ways as-of``: the record as it stood on a day, and what differs since."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from app.cli._base import (
    data_option,
    home_option,
    json_option,
    main,
    output_option,
    print_json,
    reading,
    say,
    write_out,
)

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from app.services.history import AsOf
    from app.services.homes import OpenHome


class Moment(click.ParamType[datetime]):
    """A day, to its end, or a minute of it, by the clocks of the United Kingdom."""

    name = "date"

    def convert(
        self,
        value: object,
        param: click.Parameter | None,
        context: click.Context | None,
    ) -> datetime:
        """Read it; what is none is refused with an example."""
        from app.domain.uk_time import moment_named

        if isinstance(value, datetime):
            return value
        try:
            return moment_named(str(value))
        except ValueError:
            self.fail(
                f"“{value}” is no date: write it as 2026-03-01, or with a time as "
                "2026-03-01T14:30.",
                param,
                context,
            )


@main.group("as-of")
@click.argument("date", type=Moment())
@click.pass_context
def as_of_(context: click.Context, date: datetime) -> None:
    """Show the record as it stood at the end of DATE, such as 2026-03-01.

    With a time it is the end of that minute: 2026-03-01T14:30.
    """
    context.obj = date


@as_of_.command()
@home_option
@output_option
@data_option
@click.pass_obj
def export(
    date: datetime, home: str | None, output: Path | None, data: Path | None
) -> None:
    """Write the record as it stood as a record document."""
    from app.interchange import to_document
    from app.services.answers import the_home

    with reading(data) as connection:
        own = the_home(connection, home)
        stood = _as_of(connection, own, date)
    write_out(to_document(stood.record), output)


@as_of_.command()
@click.argument("date2", type=Moment())
@home_option
@json_option
@data_option
@click.pass_obj
def compare(
    date: datetime,
    date2: datetime,
    home: str | None,
    data: Path | None,
    *,
    as_json: bool,
) -> None:
    """Say what differs between DATE and DATE2."""
    from app.interchange.history_text import compared_text
    from app.services import answers
    from app.services import history as past

    with reading(data) as connection:
        own = answers.the_home(connection, home)
        both = [_as_of(connection, own, at) for at in sorted((date, date2))]
    found = past.compare(*both)
    if as_json:
        print_json(answers.as_json(found, "compare"))
    else:
        say(compared_text(found))


def _as_of(connection: Connection, own: OpenHome, at: datetime) -> AsOf:
    from app.services.history import as_of

    return as_of(connection, own, at, datetime.now(UTC))
