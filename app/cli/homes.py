"""``ways homes``: all homes and what each needs; a copy, one put aside."""

from __future__ import annotations

from pathlib import Path

import click

from app.cli._base import (
    change,
    data_option,
    json_option,
    main,
    opened,
    print_json,
    reading,
    say,
)


@main.command("homes")
@json_option
@data_option
def homes_(data: Path | None, *, as_json: bool) -> None:
    """List the homes that are looked after, and what each needs next."""
    from datetime import datetime

    from app.services.portfolio import standing_of
    from app.store.homes import all_homes, home_id, load

    today = datetime.now().astimezone().date()
    found = []
    with reading(data) as connection:
        for home in all_homes(connection):
            key = home_id(connection, home.ref)
            if key is not None:
                found.append(standing_of(load(connection, key), today))
    if as_json:
        print_json(
            [
                {
                    "ref": each.home.ref,
                    "name": each.home.name,
                    "next": each.next.next_step,
                    "remarks": dict(each.worst),
                    "waiting": len(each.waiting),
                    "inspection": each.inspection.says,
                }
                for each in found
            ]
        )
        return
    for each in found:
        say(f"{each.home.ref}: {each.home.name}")
        say(f"  Next: {each.next.next_step}. {len(each.waiting)} to do now.")
        say(f"  Inspection: {each.inspection.says}")


@main.command("copy-home")
@click.argument("ref")
@click.argument("new_ref")
@click.option("--name", help="Name of the copy; else that of the home, with “copy”.")
@data_option
def copy_home_(ref: str, new_ref: str, name: str | None, data: Path | None) -> None:
    """Copy the home REF, under the reference NEW_REF."""
    from app.services.homes import open_home
    from app.services.portfolio import copy_home

    with opened(data) as config, change(config) as connection:
        start = open_home(connection, ref)
        called = name or f"{start.record.home.name}, copy"[:120]
        copy_home(connection, start, new_ref, called)
    say(f"Copied: {called} ({new_ref})")


@main.command("archive")
@click.argument("ref")
@click.option("--back", is_flag=True, help="Take it up again.")
@data_option
def archive_(ref: str, data: Path | None, *, back: bool) -> None:
    """Put the home REF aside, so that it is no longer among those looked after."""
    from app.services.portfolio import archive, take_up

    with opened(data) as config, change(config) as connection:
        (take_up if back else archive)(connection, ref)
    say(f"{'Taken up again' if back else 'Put aside'}: {ref}")
