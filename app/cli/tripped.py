"""``ways tripped``: what hangs on what can trip, the likeliest first."""

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
@click.argument("device", metavar="[DEVICE]", required=False)
@click.option(
    "--sheet",
    type=NewFile(),
    help="PDF file: one page for the whole home, to hang by the board.",
)
@replace_option
@day_option
@home_option
@json_option
@data_option
def tripped(
    device: str | None,
    sheet: Path | None,
    day: str | None,
    home: str | None,
    data: Path | None,
    *,
    as_json: bool,
) -> None:
    """List what hangs on DEVICE, a reference, or on everything that can trip."""
    from app.domain.network import network
    from app.domain.record import Device, IntakeItem
    from app.domain.tripped import can_trip, hanging, moved
    from app.interchange.tripped_text import tripped_text
    from app.services.answers import as_json as as_values
    from app.services.answers import find, the_home
    from app.services.tripped import sheet_pdf

    with reading(data) as connection:
        record = the_home(connection, home).record
    net = network(record)
    items = can_trip(record)
    if device:
        one = moved(net, find(record, (Device, IntakeItem), device).ref)
        items = (one,) if one else ()
    found = tuple(hanging(net, item) for item in items)
    if as_json:
        print_json(as_values(found, "tripped"))
    if sheet:
        sheet.write_bytes(sheet_pdf(net, the_day(day)))
        say(f"Written: {sheet}", err=True)
    if not (as_json or sheet):
        say(tripped_text(found))
