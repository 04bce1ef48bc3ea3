"""``ways ask``: what feeds what."""

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
@click.argument("question", type=click.Choice(("point", "way", "room")))
@click.argument("ref")
@home_option
@json_option
@data_option
def ask(
    question: str, ref: str, home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """Ask what feeds a point, what a way feeds, or which ways serve a room."""
    from app.interchange.answer_text import answer_text
    from app.services import answers

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    answer = answers.answer(record, question, ref)
    if as_json:
        print_json(answers.as_json(answer, question))
    else:
        say(answer_text(answer))
