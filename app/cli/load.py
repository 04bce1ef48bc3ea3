"""``ways load``: maximum demand with diversity, and what more would do."""

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
    say,
)


@main.command()
@click.option(
    "--add",
    "added",
    metavar="WHAT=KW",
    multiple=True,
    help="What would be added, such as shower=8.5 or charger=7.4:held-back.",
)
@home_option
@json_option
@data_option
def load(
    added: tuple[str, ...], home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """Add up what the home draws, with diversity, against all that carries it."""
    from app.domain.load import addition, load_answer
    from app.domain.network import network
    from app.interchange.figures_text import load_text
    from app.services import answers

    additions = [addition(text) for text in added]
    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    answer = load_answer(network(record), additions)
    if as_json:
        print_json(answers.as_json(answer, "load"))
    else:
        say(load_text(answer))
