"""``ways db``: look after the file that holds the record."""

from __future__ import annotations

from pathlib import Path

import click

from app.cli._base import (
    config_of,
    data_option,
    main,
    opened,
    say,
)


@main.group()
def db() -> None:
    """Look after the file that holds the record."""


@db.command()
@data_option
def path(data: Path | None) -> None:
    """Print where the file is."""
    say(config_of(data).database)


@db.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@data_option
def backup(file: Path | None, data: Path | None) -> None:
    """Copy the file to FILE, or among the copies in the data folder.

    Photographs and papers go into the folder beside the copy: home.sqlite3 has
    home.files.
    """
    from app.errors import AppError
    from app.services.copies import said_to_lack
    from app.services.upkeep import copy_of

    copy, lacks = copy_of(config_of(data), file)
    say(f"Copied to {copy}")
    _say_files(copy)
    if lacks:
        raise AppError(said_to_lack(copy, lacks))


@db.command()
@data_option
def upgrade(data: Path | None) -> None:
    """Bring the file to the shape that this version works with."""
    with opened(data) as config:
        say(f"{config.database} is up to date.")


def _say_files(copy: Path) -> None:
    """Say where a copy's photographs and papers are, if it has any."""
    from app.config import files_beside

    beside = files_beside(copy)
    if beside.is_dir():
        said = f"Its photographs and papers: {beside}. Keep both together."
        say(said, err=True)
