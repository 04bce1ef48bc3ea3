"""``ways isolate``: what to switch off before work, and what stays live."""

from __future__ import annotations

from pathlib import Path

import click

from app.cli._base import (
    NewFile,
    data_option,
    home_option,
    json_option,
    main,
    print_json,
    reading,
    replace_option,
    say,
)
from app.cli.labels import day_option, the_day


@main.command()
@click.option("--room", "refs", multiple=True, metavar="REF", help="A whole room.")
@click.option("--point", "refs", multiple=True, metavar="REF", help="A point.")
@click.option("--circuit", "refs", multiple=True, metavar="REF", help="A circuit.")
@click.option("--board", "refs", multiple=True, metavar="REF", help="A board itself.")
@click.option("--job", default="any", help="lighting, sockets, fixed, alarms or any.")
@click.option("--whole-house", is_flag=True, help="Every switch of the home instead.")
@click.option("--pdf", type=NewFile(), help="PDF file.")
@click.option("--html", type=NewFile(), help="HTML file.")
@replace_option
@day_option
@home_option
@json_option
@data_option
def isolate(  # noqa: PLR0913
    refs: tuple[str, ...],
    job: str,
    pdf: Path | None,
    html: Path | None,
    day: str | None,
    home: str | None,
    data: Path | None,
    *,
    whole_house: bool,
    as_json: bool,
) -> None:
    """Plan what to switch off before work, and what stays live; it proves nothing."""
    from app.domain.isolation import HouseOff, house_off, house_sheet, sheet_of
    from app.domain.network import network
    from app.interchange.isolation_text import isolation_text
    from app.services.answers import the_home
    from app.services.isolation import as_html, as_paper, planned

    if bool(refs) == whole_house:
        raise click.UsageError(
            "Name what is to be worked on: --room, --point, --circuit or --board; "
            "or ask for --whole-house."
        )
    with reading(data) as connection:
        net = network(the_home(connection, home).record)
    found = house_off(net) if whole_house else planned(net, refs, job)
    sheet = house_sheet(found) if isinstance(found, HouseOff) else sheet_of(found)
    if as_json:
        print_json(found.model_dump(mode="json"))
    if html:
        html.write_text(as_html(sheet, the_day(day)), encoding="utf-8")
        say(f"Written: {html}", err=True)
    if pdf:
        pdf.write_bytes(as_paper(net, sheet, the_day(day)))
        say(f"Written: {pdf}", err=True)
    if not (as_json or html or pdf):
        say(isolation_text(sheet))
