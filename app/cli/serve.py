"""``ways serve``: show the pages in a browser."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import click

from app.cli._base import data_option, main, opened

if TYPE_CHECKING:
    from app.config import Config


@main.command()
@data_option
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 0 takes a free one.")
@click.option("--open/--no-open", "open_browser", default=True, help="Open a browser.")
@click.option("--share", is_flag=True, help="Let paired phones on this network in.")
@click.option(
    "--address",
    "addresses",
    metavar="IPV4",
    multiple=True,
    help="Share at this address of the machine instead; may be given again.",
)
@click.option("--demo", is_flag=True, help="Show an invented home; nothing is kept.")
def serve(
    data: Path | None,
    port: int | None,
    addresses: tuple[str, ...],
    *,
    open_browser: bool,
    share: bool,
    demo: bool,
) -> None:
    """Show the pages in a browser on this machine.

    With --share, phones on the home network that you pair may use them too. Nothing
    is encrypted on that way; without it nothing but this machine is answered.
    """
    from datetime import UTC, datetime

    from app import server
    from app.services.files import clear_orphans
    from app.services.portfolio import clear_deleted
    from app.services.spreadsheets import clear_waiting

    if addresses and not share:
        raise click.UsageError("--address says where to share: add --share.")
    shared_at = _shared_at(addresses) if share else ()
    with _demo_config() if demo else opened(data) as config:
        clear_deleted(config, datetime.now(UTC))
        clear_orphans(config, datetime.now(UTC))
        clear_waiting(config.waiting, datetime.now(UTC))
        if demo:
            click.echo("This is a demo: an invented home. What you do is not kept.")
        else:
            click.echo(f"The record is {config.database}")
        server.serve(
            _to_serve(config, port, shared_at),
            open_browser=open_browser,
            say=click.echo,
            draw=_draw if _someone_looks_on() else None,
        )


def _shared_at(addresses: tuple[str, ...]) -> tuple[str, ...]:
    from app.errors import InvalidError
    from app.services.home_network import is_home, own_addresses

    for address in addresses:
        if not is_home(address):
            raise InvalidError(
                f"“{address}” is no address of a home network, such as 192.168.1.20. "
                "Nothing is shared."
            )
    return tuple(dict.fromkeys(addresses)) or own_addresses()


def _someone_looks_on() -> bool:
    return sys.stdout.isatty()


def _draw(line: str) -> None:
    """Write a line of a QR code, where the console has the signs for it."""
    try:
        line.encode(sys.stdout.encoding)
    except UnicodeEncodeError:
        return
    click.echo(click.style(line, fg="bright_white", bg="black"))


def _to_serve(config: Config, port: int | None, shared_at: tuple[str, ...]) -> Config:
    from dataclasses import replace

    from app.errors import DatabaseError
    from app.logs import configure_logging
    from app.services.key import secret_key

    try:
        configure_logging(config.data)
        key = secret_key(config.data)
    except OSError as error:
        raise DatabaseError(
            f"The folder {config.data} cannot be written to: {error.strerror}. "
            "The record needs a folder that may be written to, on a disk that is not "
            "full. Nothing was changed."
        ) from error
    chosen = config.port if port is None else port
    return replace(config, port=chosen, secret_key=key, shared_at=shared_at)


@contextmanager
def _demo_config() -> Iterator[Config]:
    from app.services.documents import demo_folder

    with demo_folder() as config:
        yield config
