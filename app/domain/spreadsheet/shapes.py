"""What was read of a spreadsheet: text in rows, nothing more."""

from __future__ import annotations

from app.domain.record._field import Model, field

MOST_ROWS = 2000
MOST_COLUMNS = 60
# Stands for a formula without a result; no cell of a file can hold it.
FORMULA = "\x00formula"


class Sheet(Model):
    """One sheet: its cells as text, as far as they are filled.

    A row of the file is a row here, so that the first is row 1.  A formula whose result
    the file does not hold is `FORMULA`.
    """

    name: str = field("Name", "")
    rows: tuple[tuple[str, ...], ...] = field("Rows", ())
    refusal: str = field("Why it cannot be used", "")


class Workbook(Model):
    """A file that was read: one sheet or several."""

    name: str = field("Name of the file", ...)
    sheets: tuple[Sheet, ...] = field("Sheets", ...)
    read_as: str = field("How its letters and columns were read", "")


def column_letters(index: int) -> str:
    """Return what a spreadsheet calls a column, counted from nought: A, B, … AA."""
    letters = ""
    number = index + 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
