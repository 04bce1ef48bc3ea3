"""Circuits and points as CSV, for a spreadsheet.

A cell that a spreadsheet would take for a formula begins with an apostrophe, as OWASP's
"CSV Injection" page advises.  So does one that begins with apostrophes and would be a
formula without them: that is why `plain_cell` gives every text back as it was.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator

from app.domain.record import Circuit, Item, Point, Record, Tie, specs

FORMULA = re.compile(r"'*[=+\-@\t\r]")


def circuits_csv(record: Record) -> bytes:
    """Return the circuits: one a row, every field a column, as the record has them."""
    return _csv(Circuit, record.circuits, {})


def points_csv(record: Record) -> bytes:
    """Return the points, each with what it is tied to.

    As C1; C2 (neutral): a tie that does not feed the point says what it is.  Brought in
    again, the ties are the same; how each is known is not in the table, for whoever
    reads it has seen nothing.
    """
    ties = {
        point.ref: "; ".join(_tied(tie) for tie in record.ties_of(point.ref))
        for point in record.points
    }
    return _csv(Point, record.points, {"tied_to": ties})


def _tied(tie: Tie) -> str:
    return tie.tied_to if tie.role == "feeds" else f"{tie.tied_to} ({tie.role})"


def _csv(
    cls: type[Item], items: Iterable[Item], more: dict[str, dict[str, str]]
) -> bytes:
    names = [spec.name for spec in specs(cls)]
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([*names, *more])
    for item in items:
        extra = [column[item.ref] for column in more.values()]
        writer.writerow([*_cells(item, names), *extra])
    return text.getvalue().encode("utf-8-sig")


def _cells(item: Item, names: list[str]) -> Iterator[str]:
    for name in names:
        value = getattr(item, name)
        if value is None:
            yield ""
        elif isinstance(value, tuple):
            yield _plain("; ".join(value))
        elif isinstance(value, str):
            yield _plain(value)
        else:
            yield str(value)


def _plain(text: str) -> str:
    return f"'{text}" if FORMULA.match(text) else text


def plain_cell(text: str) -> str:
    """Return a cell of a CSV file without the apostrophe that kept it from working."""
    marked = text.startswith("'") and FORMULA.match(text)
    return text[1:] if marked else text
