"""``ways reminders``: what is to be done again, and a file for a calendar."""

from __future__ import annotations

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


@main.command("reminders")
@home_option
@click.option(
    "--ics", is_flag=True, help="Answer as a file for a calendar (iCalendar)."
)
@json_option
@data_option
def reminders_(
    home: str | None, data: Path | None, *, ics: bool, as_json: bool
) -> None:
    """List what is to be done again, what waits first."""
    from datetime import UTC, datetime

    from app.domain.reminders import dues
    from app.interchange.calendar import reminders_calendar
    from app.interchange.reminder_text import reminders_text
    from app.services import answers

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    now = datetime.now(UTC).replace(microsecond=0)
    found = dues(record, now.astimezone().date())
    if ics:
        click.echo(reminders_calendar(record.home, found, now), nl=False)
    elif as_json:
        print_json(answers.as_json(found, "reminders"))
    else:
        say(reminders_text(found))
