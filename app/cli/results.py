"""``ways results``: what was measured, as copied from papers."""

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


@main.command("results")
@click.argument("circuit", required=False)
@home_option
@json_option
@data_option
def results_(
    circuit: str | None, home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """List test results, of one CIRCUIT or of all, the newest first."""
    from app.domain.record import Circuit
    from app.domain.results import results_of
    from app.interchange.result_text import results_text
    from app.services import answers

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    found = record.results
    if circuit is not None:
        found = results_of(record, answers.find(record, (Circuit,), circuit).ref)
    if as_json:
        print_json(answers.as_json(found, "results"))
    else:
        say(results_text(record, found))
