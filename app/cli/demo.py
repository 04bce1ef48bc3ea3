"""``ways demo``: add the invented home."""

from __future__ import annotations

from pathlib import Path

from app.cli._base import (
    change,
    data_option,
    main,
    opened,
    say,
)


@main.command()
@data_option
def demo(data: Path | None) -> None:
    """Add the invented demo home to the data, as a home of its own."""
    from app.services.documents import add_demo

    with opened(data) as config, change(config) as connection:
        ref = add_demo(connection, config.files)
    say(f"Added: the demo home ({ref})")
