"""The cells of an XLSX workbook: values only, read row by row, looked at before that.

The file is a zip archive, and anyone may have made it: how large it is unpacked is read
off its directory before a part of it is, and what would name things outside is refused.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable, Iterator
from datetime import date, datetime, time
from itertools import zip_longest
from typing import Any, NoReturn, TypeVar

from app.domain.spreadsheet.shapes import FORMULA
from app.errors import InvalidError, Problem

SAVE_AGAIN = "Open it where it was made, save it again as XLSX or CSV, and choose that."
MOST_UNPACKED = 40 * 2**20
# Parts that are held whole: styles, the list of sheets.
MOST_HELD = 4 * 2**20
MOST_PARTS = 1000
MOST_SHEETS = 30
READ_BY_ROW = re.compile(r"xl/(worksheets/|sharedStrings\.xml|media/)", re.IGNORECASE)
XML = re.compile(r"\.(xml|rels|vml)$", re.IGNORECASE)
DECLARED = tuple(
    text.encode(code)
    for text in ("<!DOCTYPE", "<!ENTITY")
    for code in ("ascii", "utf-16-le", "utf-16-be")
)
FORMULA_PART = re.compile(rb"<(?:\w+:)?f[\s>/]")
T = TypeVar("T")
Rows = Iterator[tuple[str, ...]]


def is_zip(data: bytes) -> bool:
    """Return whether a file begins as a zip archive does."""
    return data.startswith((b"PK\x03\x04", b"PK\x05\x06"))


def sheets_of(data: bytes, take: Callable[[str, Rows], T]) -> tuple[T, ...]:
    """Return what is taken of each sheet.

    Args:
        data: The file.
        take: Takes a sheet's name and rows of text, and stops where they are too many.

    Raises:
        InvalidError: It is no workbook that can be taken; the problem says why.
    """
    has_formulas = _looked_at(data)
    try:
        sheets = _sheets(data, formulas=has_formulas)
        return tuple(take(name, rows) for name, rows in sheets)
    except InvalidError:
        raise
    except Exception:  # noqa: BLE001 - a broken file raises whatever it leads to
        reason = "It cannot be read: a part of it is damaged or missing."
        _refuse("the workbook", f"{reason} {SAVE_AGAIN}")


def _looked_at(data: bytes) -> bool:
    """Look at the archive before it is read; return whether it holds formulas."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            parts = archive.infolist()
            _check_sizes(parts)
            formulas = [_check_part(archive, part) for part in parts]
            return any(formulas)
    except InvalidError:
        raise
    except Exception:  # noqa: BLE001 - as above
        reason = "It is no whole archive: it is cut off or damaged."
        _refuse("the workbook", f"{reason} {SAVE_AGAIN}")


def _check_sizes(parts: list[zipfile.ZipInfo]) -> None:
    if len(parts) > MOST_PARTS:
        _refuse("the workbook", f"It has {len(parts)} parts; {MOST_PARTS} is the most.")
    total = sum(part.file_size for part in parts)
    if total > MOST_UNPACKED:
        size = f"{total // 2**20} MB"
        most = f"{MOST_UNPACKED // 2**20} MB"
        _refuse("the workbook", f"Unpacked it has {size}; {most} is the most.")
    for part in parts:
        if part.file_size > MOST_HELD and not READ_BY_ROW.match(part.filename):
            _refuse(part.filename[:80], "This part is larger than it ever needs to be.")


def _check_part(archive: zipfile.ZipFile, part: zipfile.ZipInfo) -> bool:
    """Refuse a part that declares things of its own; return whether it has formulas."""
    if not XML.search(part.filename):
        return False
    text = archive.read(part)
    if any(mark in text for mark in DECLARED):
        _refuse(part.filename[:80], "It declares entities, which no workbook needs.")
    sheet = part.filename.lower().startswith("xl/worksheets/")
    return sheet and FORMULA_PART.search(text) is not None


def _sheets(data: bytes, *, formulas: bool) -> Iterator[tuple[str, Rows]]:
    values = _opened(data, results=True)
    written = _opened(data, results=False) if formulas else None
    try:
        sheets = values.worksheets
        if len(sheets) > MOST_SHEETS:
            reason = f"It has {len(sheets)} sheets; {MOST_SHEETS} is the most."
            _refuse("the workbook", reason)
        for index, sheet in enumerate(sheets):
            beside = written.worksheets[index] if written else None
            yield sheet.title, _rows(sheet, beside)
    finally:
        values.close()
        if written:
            written.close()


def _opened(data: bytes, *, results: bool) -> Any:
    # Read only when a workbook comes: no start of the program waits for it.
    from openpyxl import load_workbook  # noqa: PLC0415

    return load_workbook(
        io.BytesIO(data), read_only=True, data_only=results, keep_links=False
    )


def _rows(sheet: Any, beside: Any) -> Rows:
    """Yield rows of text; a formula whose result is not there is marked as one."""
    # What the file says of its own extent need not be so.
    sheet.reset_dimensions()
    found = sheet.iter_rows()
    if beside is None:
        for row in found:
            yield tuple(_text(cell.value) for cell in row) if row else ()
        return
    beside.reset_dimensions()
    for row, written in zip_longest(found, beside.iter_rows(), fillvalue=()):
        yield tuple(
            _cell(cell, formula)
            for cell, formula in zip_longest(row, written, fillvalue=None)
        )


def _cell(cell: Any, written: Any) -> str:
    value = cell.value if cell is not None else None
    formula = written is not None and getattr(written, "data_type", "") == "f"
    return FORMULA if value is None and formula else _text(value)


def _text(value: Any) -> str:
    """Return a value as a person would have typed it."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.10g}"
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == time() else str(value)
    return (
        value.isoformat() if isinstance(value, date) else str(value).replace("\0", "")
    )


def _refuse(place: str, reason: str) -> NoReturn:
    raise InvalidError(
        "The spreadsheet cannot be taken. Nothing was changed.",
        (Problem(place, reason),),
    )
