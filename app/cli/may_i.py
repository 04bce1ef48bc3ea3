"""``ways may-i``: whether someone must be told of a job, by which rule."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

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
    from app.domain.record import Record


@main.command("may-i")
@click.option("--jobs", is_flag=True, help="List every job with its code.")
@click.option("--job", metavar="CODE", help="The job, such as bath-fan.")
@click.option("--nation", metavar="NATION", help="Whose rules; else the home's own.")
@click.option("--place", metavar="PLACE", help="Where, such as kitchen or bath_zone.")
@click.option("--at", default="", metavar="REF", help="Room or point of the record.")
@click.option(
    "--answer",
    "answers",
    multiple=True,
    metavar="QUESTION=ANSWER",
    help="An answer, such as new_circuit=no.",
)
@home_option
@json_option
@data_option
def may_i(  # noqa: PLR0913
    job: str | None,
    nation: str | None,
    place: str | None,
    at: str,
    answers: tuple[str, ...],
    home: str | None,
    data: Path | None,
    *,
    jobs: bool,
    as_json: bool,
) -> None:
    """Say whether someone must be told of a job, by which rule, as looked up when."""
    from app.interchange.may_i_text import jobs_text, may_i_text
    from app.services.answers import as_json as shaped
    from app.services.may_i import asked, read_answers, the_job

    if jobs == bool(job):
        raise click.UsageError("Name a job: --job CODE; or list them: --jobs.")
    if job is None:
        say(jobs_text())
        return
    what = the_job(job)
    given = read_answers((*((f"place={place}",) if place else ()), *answers))
    record = _record(data, home, needed=nation is None or bool(at))
    found = asked(what, nation, given, record, at)
    if as_json:
        print_json(shaped(found, "may-i"))
    else:
        say(may_i_text(found))


def _record(data: Path | None, home: str | None, *, needed: bool) -> Record | None:
    """Return the home named, or the only one; None where none is there or needed."""
    from app.errors import AppError
    from app.services.answers import the_home

    try:
        with reading(data) as connection:
            return the_home(connection, home).record
    except AppError:
        if home is not None or needed:
            raise
        return None
