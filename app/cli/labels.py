"""``ways labels``: the labels of a board, and what is wrong with them."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from app.cli._base import (
    NewFile,
    data_option,
    home_option,
    json_option,
    main,
    print_json,
    reading,
    replace_option,
    say,
)

if TYPE_CHECKING:
    from app.domain.labels import Choice, Label

out_option = click.option(
    "-o",
    "--output",
    "out",
    type=NewFile(),
    help="File to write the PDF to.",
)
day_option = click.option(
    "--day", metavar="2026-03-01", help="Day that the paper carries; else today."
)


@main.command()
@click.argument("board", metavar="BOARD")
@click.option("--manner", default="plain", help="plain, sheet or strip.")
@click.option("--sheet", default="", help="A sheet, such as 3x7-63.5.")
@click.option("--start", default="1", help="Label of the sheet to start at.")
@click.option("--ways", default="", help="References of devices; else every way.")
@click.option("--size", default="60x20", help="Width and height on plain paper, mm.")
@click.option("--module", default="17.5", help="Width of a module on a strip, mm.")
@click.option("--strip", default="18", help="Height of a strip, mm.")
@click.option("--right", default="0", help="Move the print right by, mm.")
@click.option("--down", default="0", help="Move the print down by, mm.")
@out_option
@replace_option
@day_option
@home_option
@json_option
@data_option
def labels(
    board: str,
    out: Path | None,
    day: str | None,
    home: str | None,
    data: Path | None,
    *,
    as_json: bool,
    **how: str,
) -> None:
    """Write the labels of BOARD, a reference, as PDF; or show them as JSON."""
    from app.domain.labels import label_problems, labels_of, laid_out
    from app.domain.network import network
    from app.domain.record import Board
    from app.services import papers
    from app.services.answers import find, the_home
    from app.store.label_sheets import own_sheets

    with reading(data) as connection:
        record = the_home(connection, home).record
        own = own_sheets(connection)
    net, found = network(record), find(record, (Board,), board)
    offered = labels_of(net, found)
    problems = label_problems(net, found)
    if as_json:
        print_json(papers.as_values({"labels": offered, "problems": problems}))
        return
    choice = _choice(how)
    sheet = papers.sheet_named(own, how["sheet"])
    if choice.manner == "sheet" and choice.start > sheet.count:
        raise click.BadParameter(f"This sheet holds {sheet.count} labels.")
    cells = laid_out(offered, _chosen(how["ways"], offered), choice, sheet)
    for problem in problems:
        say(problem.sentence, err=True)
    for sentence in filter(None, map(papers.left_out, cells)):
        say(sentence, err=True)
    written(papers.labels_pdf(found, cells, choice, the_day(day)), out)


def the_day(text: str | None) -> date:
    """Return the day that was given, or today.

    Raises:
        BadParameter: It is no day.
    """
    if text is None:
        return datetime.now().astimezone().date()
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise click.BadParameter("Write a day as 2026-03-01.") from None


def written(made: bytes, out: Path | None) -> None:
    """Write a PDF to its file and say so.

    Raises:
        UsageError: No file was named.
    """
    if out is None:
        raise click.UsageError("Say where the PDF goes: -o FILE. Or ask for --json.")
    out.write_bytes(made)
    say(f"Written: {out}")


def _choice(how: dict[str, str]) -> Choice:
    from pydantic import ValidationError

    from app.domain.labels import Choice

    wide, _, tall = how["size"].partition("x")
    values: dict[str, Any] = {
        "manner": how["manner"],
        "start": how["start"],
        "width_mm": wide,
        "height_mm": tall,
        "module_mm": how["module"],
        "strip_mm": how["strip"],
        "right_mm": how["right"],
        "down_mm": how["down"],
    }
    try:
        return Choice.model_validate_strings(values)
    except ValidationError as error:
        said = [f"{e['loc'][0]}: {e['msg']}" for e in error.errors(include_url=False)]
        raise click.BadParameter("; ".join(said)) from error


def _chosen(ways: str, offered: tuple[Label, ...]) -> frozenset[str]:
    wanted = frozenset(ways.replace(",", " ").split())
    known = frozenset(label.ref for label in offered)
    if wanted - known:
        missing = ", ".join(sorted(wanted - known))
        raise click.BadParameter(f"This board has no {missing}.")
    return wanted or frozenset(label.ref for label in offered if label.outgoing)
