"""What a spreadsheet would make, as text for a terminal and as values for a program."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from app.domain.spreadsheet import Made, Match, Sheet, headings


def made_text(
    sheet: Sheet, match: Match | None, made: Made, count: Sequence[str], *, stored: bool
) -> str:
    """Return what a sheet makes, or every cell that cannot be taken, as text."""
    return "\n".join(_lines(sheet, match, made, count, stored=stored))


def made_values(
    sheet: Sheet, match: Match | None, made: Made, count: Sequence[str], *, stored: bool
) -> dict[str, Any]:
    """Return the same as values that JSON can hold."""
    return {
        "stored": stored,
        "columns": dict(_columns(sheet, match)),
        "makes": list(count),
        "rows": [
            {
                "row": row.row,
                "ref": row.ref,
                "what": row.what,
                "facts": dict(row.facts),
                "beside": list(row.beside),
            }
            for row in made.rows
        ],
        "faults": [
            {"row": f.row, "column": f.column, "typed": f.typed, "reason": f.why}
            for f in made.faults
        ],
        "there": [{"row": t.row, "ref": t.ref, "what": t.what} for t in made.there],
        "left_out": list(made.left_out),
    }


def _lines(
    sheet: Sheet, match: Match | None, made: Made, count: Sequence[str], *, stored: bool
) -> Iterator[str]:
    for heading, code in _columns(sheet, match):
        yield f"  {heading} = {code or '(not taken)'}"
    yield from (f"  {sentence}" for sentence in made.left_out)
    for there in made.there:
        yield f"  row {there.row}  is here already: {there.what} ({there.ref})"
    if made.faults:
        number = len(made.faults)
        cells = "cell" if number == 1 else "cells"
        yield f"Nothing was taken: {number} {cells} to put right."
        yield from (f"  {fault.sentence}" for fault in made.faults)
        return
    for row in made.rows if not stored else ():
        facts = "; ".join(f"{label}: {words}" for label, words in row.facts)
        yield "  ".join(filter(None, (f"  row {row.row}", row.what, facts)))
        yield from (f"      {sentence}" for sentence in row.beside)
    said = ", ".join(count) or "nothing that is not there already"
    yield f"{'Taken in' if stored else 'Would make'}: {said}."


def _columns(sheet: Sheet, match: Match | None) -> Iterator[tuple[str, str]]:
    if match is None:
        return
    words = headings(sheet, match.row)
    for index, code in enumerate(match.columns):
        if index < len(words) and (words[index] or code):
            yield words[index] or f"column {index + 1}", code
