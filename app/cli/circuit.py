"""``ways circuit``: the figures of a circuit, with their working."""

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


@main.command()
@click.argument("ref")
@home_option
@json_option
@data_option
def circuit(ref: str, home: str | None, data: Path | None, *, as_json: bool) -> None:
    """Work out the figures of circuit REF, each with its working."""
    from app.domain.circuits import circuit_figures
    from app.domain.network import network
    from app.domain.record import Circuit
    from app.interchange.figures_text import circuit_text
    from app.services import answers

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    found = answers.find(record, (Circuit,), ref)
    answer = circuit_figures(network(record), found)
    if as_json:
        print_json(answers.as_json(answer, "circuit"))
    else:
        say(circuit_text(answer))
