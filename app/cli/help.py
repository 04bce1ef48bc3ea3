"""``ways help``: what a remark looks at, why, what to do, and its source."""

from __future__ import annotations

import click

from app.cli._base import (
    main,
    say,
)


@main.command("help")
@click.argument("remark")
def help_(remark: str) -> None:
    """Say what a remark looks at, why it matters, what to do, and its source."""
    from app.domain.remarks import UNITS
    from app.errors import NotFoundError
    from app.interchange.remark_text import unit_text

    if remark not in UNITS:
        names = ", ".join(sorted(UNITS))
        raise NotFoundError(f"There is no remark “{remark}”. There are: {names}.")
    say(unit_text(UNITS[remark]))
