"""Spreadsheets made for the tests: as CSV and as XLSX; 300 points, some at fault."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from openpyxl import Workbook

Rows = Sequence[Sequence[object]]
HEADINGS = (
    "Room", "Floor", "Point", "Where", "Qty", "Circuit", "Fuse (A)", "RCD mA",
    "Load (W)", "Outdoors", "Notes",
)  # fmt: skip
ROOMS = ("Kitchen", "Hall")
THINGS = ("Double socket", "light", "FCU", "Smoke alarm", "switch")
# Each cell that cannot be taken: row of the sheet, column, what stands in it.
WRONG = (
    (17, "Fuse (A)", "13x"),
    (23, "Qty", "none"),
    (31, "Point", "Soket"),
    (44, "Circuit", "Cellar lights"),
    (58, "RCD mA", "30 A"),
    (61, "Load (W)", "7,200"),
    (77, "Outdoors", "perhaps"),
    (90, "Room", "Atrium"),
    (104, "Qty", "0"),
    (118, "Fuse (A)", "999"),
    (127, "Point", "Gizmo"),
    (139, "Load (W)", "lots"),
    (152, "Qty", "1.5"),
    (166, "Fuse (A)", "#REF!"),
    (181, "Circuit", "board 9 way 1"),
    (199, "RCD mA", "-5"),
    (214, "Floor", "mezzanine"),
    (238, "Where", "x" * 121),
    (265, "Load (W)", "1.23456"),
    (303, "Outdoors", "99"),
)


def points(*, wrong: bool = False) -> list[list[object]]:
    """Return 300 points below two rows that are none, so that they end at row 303."""
    rows: list[list[object]] = [["What is in the house"], [], list(HEADINGS)]
    rows += [_point(number) for number in range(300)]
    for row, column, typed in WRONG if wrong else ():
        rows[row - 1][HEADINGS.index(column)] = typed
    return rows


def _point(number: int) -> list[object]:
    return [
        ROOMS[number % 2], "", THINGS[number % 5], f"place {number}", 1,
        ("Kitchen sockets", "C2", "?")[number % 3], 13, "", 100, "no",
        "=cmd()" if number == 4 else "",
    ]  # fmt: skip


def as_csv(rows: Rows, separator: str = ",", encoding: str = "utf-8") -> bytes:
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=separator).writerows(rows)
    return text.getvalue().encode(encoding)


def as_xlsx(*sheets: Rows, names: Sequence[str] = ()) -> bytes:
    """Return a workbook; a text that begins with = stays text."""
    book = Workbook()
    book.remove(book.worksheets[0])
    for index, rows in enumerate(sheets):
        sheet = book.create_sheet(names[index] if names else None)
        for y, row in enumerate(rows, 1):
            for x, value in enumerate(row, 1):
                if value != "":
                    cell = sheet.cell(y, x)
                    cell.value = value
                    if isinstance(value, str):
                        cell.data_type = "s"
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()
