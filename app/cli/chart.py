"""``ways chart``: the circuit chart of a board."""

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
    replace_option,
)
from app.cli.labels import day_option, out_option, the_day, written


@main.command()
@click.argument("board", metavar="BOARD")
@click.option(
    "--paper",
    type=click.Choice(("a4", "a5")),
    default="a4",
    help="Size of the paper; A5 lies across. Left out: A4.",
)
@out_option
@replace_option
@day_option
@home_option
@json_option
@data_option
def chart(
    board: str,
    paper: str,
    out: Path | None,
    day: str | None,
    home: str | None,
    data: Path | None,
    *,
    as_json: bool,
) -> None:
    """Write the circuit chart of BOARD, a reference, as PDF; or show it as JSON."""
    from app.domain.labels.chart import chart_of
    from app.domain.network import network
    from app.domain.record import Board
    from app.services.answers import find, the_home
    from app.services.papers import as_values, chart_pdf

    with reading(data) as connection:
        record = the_home(connection, home).record

    net, found = network(record), find(record, (Board,), board)
    if as_json:
        print_json(as_values(chart_of(net, found)))
    else:
        written(chart_pdf(net, found, the_day(day), paper=paper), out)
