"""A sheet, with what its columns hold, turned into the things that it would make."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from app.domain.links import broken_links
from app.domain.record import Record
from app.domain.spreadsheet.circuits import make_circuit
from app.domain.spreadsheet.growing import Asked, Growing, Making
from app.domain.spreadsheet.headings import Match, headings, plain_heading
from app.domain.spreadsheet.points import make_point
from app.domain.spreadsheet.rows import CellFault, MadeRow, RowIn, There
from app.domain.spreadsheet.shapes import Sheet, column_letters
from app.domain.spreadsheet.targets import TARGETS
from app.domain.spreadsheet.values import plain, tidied
from app.domain.spreadsheet.ways import make_way

__all__ = ["Asked", "CellFault", "Made", "MadeRow", "made_of"]

MAKERS: Mapping[str, Callable[[RowIn, Making], MadeRow | None]] = {
    "circuits": make_circuit,
    "points": make_point,
    "ways": make_way,
}
# A sheet with more is matched wrongly, or not for this.
MOST_FAULTS = 300
# A row of units under the headings, as some sheets have one.
UNIT_WORDS = frozenset(
    {"a", "ma", "ka", "mm", "mm2", "m", "w", "kw", "ω", "ohm", "v", "no", "no.", "m2"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """What a sheet would make of a record.

    Attributes:
        record: The record with all of it; to be kept only where there is no fault.
        rows: Each row that makes something, in order.
        faults: Each cell that cannot be taken.
        left_out: What is not taken of the sheet, in sentences.
        there: Each row that names what is in the record already.
    """

    record: Record
    rows: tuple[MadeRow, ...]
    faults: tuple[CellFault, ...]
    left_out: tuple[str, ...]
    there: tuple[There, ...] = ()


def made_of(kind: str, sheet: Sheet, match: Match, making: Making) -> Made:
    """Return what a sheet of a kind makes of a record, by what its columns hold."""
    names = _names(sheet, match)
    rows, left_out = [], [*_columns_left_out(sheet, match)]
    making.to_come.update(_references(sheet, match))
    faults: list[CellFault] = []
    skipped: dict[str, list[int]] = {}
    for number, cells in enumerate(sheet.rows, 1):
        why = _no_row(number, cells, match, sheet)
        if why is not None:
            skipped.setdefault(why, []).append(number)
            continue
        row = _row(kind, number, cells, match, names)
        made = MAKERS[kind](row, making)
        faults += row.faults
        if made:
            rows.append(made)
        if len(faults) >= MOST_FAULTS:
            left_out.append(f"The rows after row {number} were not looked at yet.")
            break
    left_out += [f"{why}: {_span(found)}." for why, found in skipped.items() if why]
    if making.asked.only_new and making.there:
        numbers = [there.row for there in making.there]
        left_out.append(f"Here already, so left out: {_span(numbers)}.")
    elif not rows and not faults:
        faults.append(_nothing(kind, match))
    return finished(making, rows, faults, left_out)


def finished(
    making: Making,
    rows: list[MadeRow],
    faults: list[CellFault],
    left_out: list[str],
) -> Made:
    """Return what was made, looked at as a whole: a circle of feeds is a fault."""
    record = making.growing.record()
    if not faults:
        faults = [
            CellFault(row=0, column="", typed="", reason=problem.reason)
            for problem in broken_links(record)
        ]
    return Made(
        record=record,
        rows=tuple(rows),
        faults=tuple(faults),
        left_out=(*left_out, *making.notes),
        there=tuple(making.there),
    )


def making_of(record: Record, asked: Asked) -> Making:
    """Return what a sheet is made into: the record as it is, and what is asked."""
    return Making(record=record, growing=Growing(record), asked=asked)


def _row(
    kind: str,
    number: int,
    cells: tuple[str, ...],
    match: Match,
    names: tuple[str, ...],
) -> RowIn:
    held = {
        code: (cells[index] if index < len(cells) else "", names[index])
        for index, code in enumerate(match.columns)
        if code and index < len(names)
    }
    return RowIn(
        number=number,
        cells={code: text for code, (text, _) in held.items()},
        columns={code: name for code, (_, name) in held.items()},
        targets={t.code: t for t in TARGETS[kind]},
        faults=[],
    )


def _names(sheet: Sheet, match: Match) -> tuple[str, ...]:
    """Return what to call each column: its heading, or its letter."""
    words = headings(sheet, match.row)
    plain_ones = [plain(word) for word in words]
    return tuple(
        word if word and plain_ones.count(plain(word)) == 1 else _lettered(word, index)
        for index, word in enumerate(words)
    )


def _lettered(word: str, index: int) -> str:
    letters = column_letters(index)
    return f"{word} ({letters})" if word else letters


def _references(sheet: Sheet, match: Match) -> Iterator[tuple[str, str]]:
    """Yield each reference that a row asks for, in small letters and as it stands."""
    if "ref" in match.columns:
        at = match.columns.index("ref")
        for cells in sheet.rows[match.row :]:
            if at < len(cells) and (ref := tidied(cells[at])):
                yield ref.casefold(), ref


def _columns_left_out(sheet: Sheet, match: Match) -> Iterator[str]:
    names = _names(sheet, match)
    filled = {
        index
        for cells in sheet.rows[match.row :]
        for index, cell in enumerate(cells)
        if tidied(cell)
    }
    taken = {index for index, code in enumerate(match.columns) if code}
    some = [f"“{names[index]}”" for index in sorted(filled - taken)]
    if some:
        yield f"Columns not taken: {', '.join(some)}."


def _no_row(
    number: int, cells: tuple[str, ...], match: Match, sheet: Sheet
) -> str | None:
    """Say why a row is none to take, if it is none; nothing where that is plain."""
    filled = [plain_heading(cell) for cell in cells if tidied(cell)]
    if number <= match.row:
        return "Rows above the headings" if filled and number < match.row else ""
    if not filled:
        return ""
    heads = {plain_heading(cell) for cell in sheet.rows[match.row - 1]}
    if set(filled) <= heads:
        return "Headings again"
    if number == match.row + 1 and set(filled) <= UNIT_WORDS:
        return "Units under the headings"
    held = [
        cells[index]
        for index, code in enumerate(match.columns)
        if code and index < len(cells)
    ]
    if not any(map(tidied, held)):
        return "Rows with nothing in the columns that are taken"
    return None


def _span(numbers: list[int]) -> str:
    """Return row numbers in words: 1 to 3, 9."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{r[0]} to {r[-1]}" if len(r) > 1 else str(r[0]) for r in runs[:20]]
    more = f" and {len(runs) - 20} more" if len(runs) > 20 else ""
    return ", ".join(said) + more


def _nothing(kind: str, match: Match) -> CellFault:
    if not any(match.columns):
        reason = "No column is matched yet, so nothing would be taken."
    else:
        reason = f"Below row {match.row} no row holds {kind} to take."
    return CellFault(row=0, column="", typed="", reason=reason)
