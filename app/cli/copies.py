"""``ways copies`` and ``ways restore``: the copies there are, and going back to one."""

from __future__ import annotations

from pathlib import Path

import click

from app.cli._base import (
    config_of,
    data_option,
    main,
    reading,
    say,
)
from app.errors import AppError


@main.command()
@data_option
def copies(data: Path | None) -> None:
    """List the copies of the record, the newest first."""
    from app.services.copies import places_of
    from app.store.copies import copies_in

    config = config_of(data)
    found = list(copies_in(config.backups))
    try:
        with reading(data) as connection:
            apart = places_of(config, connection).apart
        found += copies_in(apart) if apart else ()
    except AppError as error:
        # A file that does not open is when the copies are looked for.
        say(error.sentence, err=True)
    for copy in sorted(found, reverse=True):
        say(f"{copy.made_at:%Y-%m-%d %H:%M} UTC  {copy.note}  {copy.path}")
    if not found:
        say("There is no copy yet.")


@main.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@data_option
def restore(file: Path, data: Path | None) -> None:
    """Let the copy FILE take the place of the present file, which is kept."""
    from app.services.files import not_here
    from app.services.upkeep import restored

    config = config_of(data)
    kept = restored(config, file)
    say(f"{config.database} is now as {file} was.")
    if kept:
        say(f"What was there before is {kept}")
    if missing := not_here(config):
        say(
            f"Files that it names and that are not here: {missing}. "
            "“ways files --check” says which."
        )
