"""A sheet of results as the paper has it: a board's circuits, row by row."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from app.domain.edits import added, new_ref, removed, replaced
from app.domain.record import Board, Circuit, Record, Result, specs
from app.domain.record.choices import POLARITY, WORKED
from app.domain.results.read import Reading, read


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of the sheet.

    Attributes:
        name: Field of a `Result`.
        head: What stands over it.
        unit: Its unit; empty for a choice.
        sign: Field that says whether the value is more or less; may be empty.
        choices: What may be chosen; none for a value.
        of: ``circuit``, or ``board`` for what is measured at a board.
    """

    name: str
    head: str
    unit: str = ""
    sign: str = ""
    choices: Mapping[str, str] = field(default_factory=dict)
    of: str = "circuit"


BUTTON = {code: word for code, word in WORKED.items() if code != "done"}
COLUMNS = (
    Column(name="r1_ohm", head="r1", unit="Ω"),
    Column(name="rn_ohm", head="rn", unit="Ω"),
    Column(name="r2_ohm", head="r2", unit="Ω"),
    Column(name="r1_r2_ohm", head="R1+R2", unit="Ω"),
    Column(name="r2_alone_ohm", head="R2", unit="Ω"),
    Column(
        name="live_live_mohm", head="Live to live", unit="MΩ", sign="live_live_over"
    ),
    Column(
        name="live_earth_mohm", head="Live to earth", unit="MΩ", sign="live_earth_over"
    ),
    Column(name="polarity", head="Polarity", choices=POLARITY),
    Column(name="zs_ohm", head="Zs", unit="Ω"),
    Column(name="rcd_ms", head="RCD", unit="ms"),
    Column(name="rcd_button", head="Button", choices=BUTTON),
    Column(name="ze_ohm", head="Ze or Zdb", unit="Ω", of="board"),
    Column(name="fault_current_ka", head="Fault current", unit="kA", of="board"),
)
BOUNDS = {spec.name: spec for spec in specs(Result)}
BY_NAME = {column.name: column for column in COLUMNS}
SIGNS = {"over": ">", "under": "<", "exact": ""}


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row: what was tested, and what stands there already from the same paper."""

    ref: str
    title: str
    of: str
    result: Result | None

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns that this row has."""
        return tuple(c for c in COLUMNS if c.of == self.of)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """The sheet of one board, as one paper has it."""

    board: Board
    rows: tuple[Row, ...]

    @property
    def results(self) -> tuple[Result, ...]:
        """What was copied already."""
        return tuple(row.result for row in self.rows if row.result)


def sheet_of(record: Record, board: Board, paper: str | None) -> Sheet:
    """Return a board's sheet: the board itself, then its circuits by their ways."""
    own = {r.about: r for r in record.results if paper and r.paper == paper}
    devices = record.devices_of(board.ref)
    circuits = dict.fromkeys(c for d in devices for c in record.circuits_of(d.ref))
    rows = [
        Row(ref=board.ref, title=board.title, of="board", result=own.get(board.ref))
    ]
    rows += [
        Row(ref=c.ref, title=_titled(c), of="circuit", result=own.get(c.ref))
        for c in circuits
    ]
    return Sheet(board=board, rows=tuple(rows))


def values_of(row: Row, typed: Mapping[str, str]) -> dict[str, object]:
    """Return the fields of a result from what was typed in its row.

    Raises:
        ValueError: A value cannot be read; the sentence names no column.
    """
    values: dict[str, object] = {}
    for column in row.columns:
        text = typed.get(column.name, "")
        if column.choices:
            values[column.name] = text if text in column.choices else "unknown"
            continue
        found = read(text, column.unit)
        values[column.name] = _fitting(column, found)
        if column.sign:
            values[column.sign] = found.sign
    return values


def _fitting(column: Column, found: Reading) -> Decimal | None:
    """Return a value that a result can hold, and hold as it was written."""
    if found.sign != "exact" and not column.sign:
        raise ValueError("No > or < is kept here: leave it open, and note it beside.")
    value, most = found.value, BOUNDS[column.name].high or 0
    if value is not None and (value > most or value != round(value, 4)):
        raise ValueError(f"Enter at most {most} {column.unit}, with four places.")
    return value


def is_empty(values: Mapping[str, object]) -> bool:
    """Return whether nothing was measured in a row."""
    return all(value in (None, "unknown", "exact") for value in values.values())


def copied(
    record: Record,
    sheet: Sheet,
    values: Mapping[str, Mapping[str, object]],
    head: Mapping[str, object],
) -> Record:
    """Return the record with a sheet copied; a row left empty is no result.

    Args:
        record: The home.
        sheet: The sheet as it stands.
        values: Fields by the reference of each row.
        head: What all have in common: ``paper``, ``tested_on``, ``tested_by``. An
            empty one is emptied in every row, unless the rows differ in it.
    """
    common = {n: v for n, v in head.items() if v or not _differs(sheet, n)}
    for row in sheet.rows:
        given = values.get(row.ref, {})
        if row.result is None and not is_empty(given):
            own = {"ref": new_ref(record, Result), "about": row.ref, **head, **given}
            record = added(record, Result.model_validate(own))
        elif row.result is not None and is_empty(given):
            record = removed(record, row.result.ref)
        elif row.result is not None:
            changed = {**row.result.model_dump(), **common, **given}
            record = replaced(record, row.result.ref, Result.model_validate(changed))
    return record


def _differs(sheet: Sheet, name: str) -> bool:
    """Return whether rows differ in what the head asks once: each keeps its own."""
    return len({getattr(result, name) for result in sheet.results}) > 1


def shown(result: Result | None, column: Column) -> str:
    """Return what stands in a cell, as it would be typed."""
    value = getattr(result, column.name, None)
    if column.choices:
        return str(value or "unknown")
    if value is None:
        return ""
    sign = getattr(result, column.sign) if column.sign else "exact"
    return f"{SIGNS[sign]}{_plain(value)}"


def tested_on(results: Iterable[Result]) -> date | None:
    """Return the day that results have in common."""
    days = {result.tested_on for result in results}
    return days.pop() if len(days) == 1 else None


def _plain(value: Decimal) -> str:
    return f"{value.normalize():f}"


def _titled(circuit: Circuit) -> str:
    number = f"{circuit.number} " if circuit.number else ""
    return f"{number}{circuit.title}"
