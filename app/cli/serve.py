"""``ways serve``: show the pages in a browser."""

from __future__ import annotations

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
@click.option("--demo", is_flag=True, help="Show an invented home; nothing is kept.")
def serve(
    data: Path | None, port: int | None, *, open_browser: bool, demo: bool
) -> None:
    """Show the pages in a browser on this machine."""
    from app import server

    with _demo_config() if demo else opened(data) as config:
        if demo:
            click.echo("This is a demo: an invented home. What you do is not kept.")
        else:
            click.echo(f"The record is {config.database}")
        server.serve(_to_serve(config, port), open_browser=open_browser, say=click.echo)


def _to_serve(config: Config, port: int | None) -> Config:
    from dataclasses import replace

    from app.logs import configure_logging
    from app.services.key import secret_key

    configure_logging(config.data)
    chosen = config.port if port is None else port
    return replace(config, port=chosen, secret_key=secret_key(config.data))


@contextmanager
def _demo_config() -> Iterator[Config]:
    from app.services.documents import demo_folder

    with demo_folder() as config:
        yield config
