"""A spreadsheet's cells as text, from CSV or XLSX; refused whole where it cannot be."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import islice
from pathlib import PurePath
from typing import NoReturn

from app.domain.spreadsheet.shapes import (
    MOST_COLUMNS,
    MOST_ROWS,
    Sheet,
    Workbook,
    column_letters,
)
from app.domain.spreadsheet.values import tidied
from app.errors import InvalidError, Problem
from app.interchange.tables_csv import plain_cell
from app.interchange.xlsx import is_zip, sheets_of

MOST_BYTES = 5 * 2**20
MOST_CHARACTERS = 5_000_000
MOST_CELL = 4000
# Nothing stands further down in any spreadsheet program.
LAST_ROW = 2**20
LONGEST_NAME = 80
SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars"}
OLD_WORKBOOK = b"\xd0\xcf\x11\xe0"
TOO_MANY = "with it the file holds too many cells. Copy the filled rows into a new one."
NOTHING_CHANGED = "Nothing was changed."


def workbook_from(data: bytes, name: str) -> Workbook:
    """Return the sheets of a file.

    Raises:
        InvalidError: It cannot be taken; its problems say where and why.
    """
    if len(data) > MOST_BYTES:
        raise InvalidError(
            f"The file is larger than {MOST_BYTES // 2**20} MB. {NOTHING_CHANGED}"
        )
    if data.startswith(OLD_WORKBOOK):
        refuse("the file", "It is an older kind of workbook. Save it as XLSX or CSV.")
    budget = Budget(MOST_CHARACTERS)
    if is_zip(data):
        read_as = "XLSX"
        sheets = sheets_of(data, lambda title, rows: _sheet(title, rows, budget))
    else:
        text, letters = decoded(data)
        rows, separator = _csv_rows(text)
        sheets = (_sheet("", rows, budget),)
        read_as = f"CSV with {SEPARATORS[separator]}, {letters}"
    if not any(sheet.rows or sheet.refusal for sheet in sheets):
        refuse("the file", "It holds no cell with anything in it.")
    if len(sheets) == 1 and sheets[0].refusal:
        refuse(sheets[0].name or "the file", sheets[0].refusal)
    return Workbook(name=shown_name(name), sheets=sheets, read_as=read_as)


def shown_name(name: str) -> str:
    """Return a file's name without its folders, as a note may hold it."""
    last = PurePath(name.replace("\\", "/")).name
    plain = "".join(c for c in last if c.isprintable()).strip()
    return plain[:LONGEST_NAME] or "a file without a name"


def decoded(data: bytes) -> tuple[str, str]:
    """Return a file's text, and how its letters were read.

    Raises:
        InvalidError: It is no text.
    """
    for mark, code in ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16-le"),
                       (b"\xfe\xff", "utf-16-be")):  # fmt: skip
        if data.startswith(mark):
            return _decoded(data[len(mark) :], code), code[:6].upper()
    if code := _utf_16_without_mark(data):
        return _decoded(data, code), "UTF-16"
    if b"\x00" in data:
        refuse(f"byte {data.index(0) + 1}", "This is no text.")
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        return _decoded(data, "cp1252"), "Windows-1252"


class Budget:
    """How many characters all sheets together may still hold."""

    def __init__(self, most: int) -> None:
        self._left = most

    def spend(self, count: int) -> bool:
        """Take some off; False when they are more than there were."""
        self._left -= count
        return self._left >= 0


def refuse(place: str, reason: str) -> NoReturn:
    """Refuse a file whole, saying where and why."""
    raise InvalidError(
        f"The spreadsheet cannot be taken. {NOTHING_CHANGED}", (Problem(place, reason),)
    )


def _sheet(title: str, cells: Iterable[tuple[str, ...]], budget: Budget) -> Sheet:
    """Return a sheet within bounds, without the empty rows and columns at its end."""
    title = tidied(title)
    rows: list[tuple[str, ...]] = []
    filled = 0
    for number, row in enumerate(islice(cells, LAST_ROW), 1):
        if not row:
            rows.append(row)
            continue
        if not budget.spend(sum(map(len, row)) + len(row)):
            return Sheet(name=title, refusal=f"Row {number}: {TOO_MANY}")
        kept = _without_end(row)
        filled += bool(kept)
        if why := _too_much(number, kept, filled):
            return Sheet(name=title, refusal=why)
        rows.append(kept)
    while rows and not rows[-1]:
        rows.pop()
    return Sheet(name=title, rows=tuple(rows))


def _too_much(number: int, row: tuple[str, ...], filled: int) -> str:
    if filled > MOST_ROWS:
        return f"Row {number}: {MOST_ROWS} filled rows are the most."
    if len(row) > MOST_COLUMNS:
        last = column_letters(len(row) - 1)
        return f"Row {number} reaches to column {last}; {MOST_COLUMNS} are the most."
    long = [index for index, cell in enumerate(row) if len(cell) > MOST_CELL]
    if long:
        where = f"{column_letters(long[0])}{number}"
        return f"Cell {where} holds more than {MOST_CELL} characters."
    return ""


def _without_end(row: tuple[str, ...]) -> tuple[str, ...]:
    width = len(row)
    while width and not row[width - 1].strip():
        width -= 1
    return row[:width]


def _decoded(data: bytes, code: str) -> str:
    try:
        text = data.decode(code)
    except UnicodeDecodeError as error:
        refuse(f"byte {error.start + 1}", "This is no letter of any usual kind.")
    if "\x00" in text:
        refuse(f"character {text.index(chr(0)) + 1}", "This is no text.")
    return text


def _utf_16_without_mark(data: bytes) -> str:
    """Return which UTF-16 it is by where the noughts stand; nothing if it is none."""
    start = data[:400]
    even, odd = start[::2].count(0), start[1::2].count(0)
    half = len(start) // 2
    if half and odd > half * 0.7 and not even:
        return "utf-16-le"
    return "utf-16-be" if half and even > half * 0.7 and not odd else ""


def _csv_rows(text: str) -> tuple[Iterator[tuple[str, ...]], str]:
    """Return the rows of a text, and what stands between its cells."""
    first, _, rest = text.partition("\n")
    said = first.strip().strip('"').lower()
    if said.startswith("sep=") and said[4:] in SEPARATORS:
        # The line is a row of the sheet too, so that the others keep their numbers.
        return _rows(f"\n{rest}", said[4:]), said[4:]
    separator = _separator(text)
    return _rows(text, separator), separator


def _separator(text: str) -> str:
    """Return what parts the first rows into most cells, the same number in each."""
    start = text[:20_000]

    def fit(separator: str) -> tuple[int, int]:
        widths = [len(row) for row in _some(start, separator) if any(row)]
        usual, times = Counter(widths).most_common(1)[0] if widths else (1, 0)
        return (times if usual > 1 else 0, usual)

    return max(SEPARATORS, key=fit)


def _some(start: str, separator: str) -> list[list[str]]:
    try:
        return list(csv.reader(io.StringIO(start, newline=""), delimiter=separator))
    except csv.Error:
        return []


def _rows(text: str, separator: str) -> Iterator[tuple[str, ...]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    try:
        for row in reader:
            yield tuple(map(plain_cell, row))
    except csv.Error as error:
        refuse(f"line {reader.line_num}", f"This is no row of cells: {error}.")
