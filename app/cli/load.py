"""``ways load`` and ``ways circuit``: figures from the record, with their working."""

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
)


@main.command()
@click.option(
    "--add",
    "added",
    multiple=True,
    metavar="KIND=KW",
    help="One load more, such as shower=8.5; may be given several times.",
)
@home_option
@json_option
@data_option
def load(
    added: tuple[str, ...], home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """Add up the load with diversity, today and with what is thought of."""
    from app.domain.load import added_load, what_if
    from app.domain.network import network
    from app.interchange.figures_text import load_json, load_text
    from app.services.answers import the_home

    additions = [added_load(text) for text in added]
    with reading(data) as connection:
        net = network(the_home(connection, home).record)
    found = what_if(net, additions)
    if as_json:
        print_json(load_json(net, found))
    else:
        click.echo(load_text(net, found))


@main.command()
@click.argument("ref")
@home_option
@json_option
@data_option
def circuit(ref: str, home: str | None, data: Path | None, *, as_json: bool) -> None:
    """Work out the figures of a circuit, each with what was put in."""
    from app.domain.circuits import circuit_figures
    from app.domain.network import network
    from app.domain.record import Circuit
    from app.interchange.figures_text import figures_json, figures_text
    from app.services.answers import find, the_home

    with reading(data) as connection:
        net = network(the_home(connection, home).record)
    found = circuit_figures(net, find(net.record, (Circuit,), ref))
    if as_json:
        print_json(figures_json(found))
    else:
        click.echo(figures_text(found))
