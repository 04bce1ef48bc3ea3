"""``ways trace``: what switching off has shown, and what to switch off next."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO, cast

import click

from app.cli._base import (
    change,
    data_option,
    home_option,
    json_option,
    main,
    opened,
    print_json,
    reading,
    say,
)

if TYPE_CHECKING:
    from app.domain.trace.plan import Manner

# As in the domain, which --help does not load.
MANNERS = ("one_at_a_time", "halving", "self_checking")


@main.group(invoke_without_command=True)
@home_option
@json_option
@data_option
@click.pass_context
def trace(
    context: click.Context, home: str | None, data: Path | None, *, as_json: bool
) -> None:
    """Say what is known of each point from the rounds of switching off."""
    if context.invoked_subcommand is not None:
        return
    from app.domain.network import network
    from app.domain.trace.answers import trace_answer
    from app.interchange.trace_text import trace_text
    from app.services import answers

    with reading(data) as connection:
        found = trace_answer(network(answers.the_home(connection, home).record))
    if as_json:
        print_json(answers.as_json(found, "trace"))
    else:
        say(trace_text(found))


@trace.command()
@click.option(
    "--manner",
    type=click.Choice(MANNERS),
    default="self_checking",
    show_default=True,
    help="How to go about it.",
)
@home_option
@json_option
@data_option
def plan(manner: str, home: str | None, data: Path | None, *, as_json: bool) -> None:
    """Say what to switch off next, and how much the manner still asks for."""
    from app.domain.network import network
    from app.domain.trace.answers import plan_answer
    from app.interchange.trace_text import plan_text
    from app.services import answers

    with reading(data) as connection:
        net = network(answers.the_home(connection, home).record)
    planned = plan_answer(net, cast("Manner", manner))
    if as_json:
        print_json(answers.as_json(planned, "trace-plan"))
    else:
        say(plan_text(planned))


@trace.command()
@click.argument("file", type=click.File("rb"))
@home_option
@json_option
@data_option
def read(file: BinaryIO, home: str | None, data: Path | None, *, as_json: bool) -> None:
    """Take rounds in from a JSON file, all or none.

    Its schema: ways schema --answer rounds.
    """
    from app.interchange.rounds import MOST_BYTES
    from app.services.answers import the_home
    from app.services.rounds import read_rounds

    with opened(data) as config, change(config) as connection:
        count = read_rounds(
            connection, the_home(connection, home), file.read(MOST_BYTES + 1)
        )
    if as_json:
        print_json({"rounds": count})
    elif count:
        say(f"Rounds taken in: {count}")
    else:
        say("No rounds taken in: it holds none, or was taken in before.")
