"""A spreadsheet whose columns are named in a command, rather than chosen on a page."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from sqlalchemy import Connection

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Board, Record
from app.domain.spreadsheet import TARGETS, Match, Sheet, Workbook, headings
from app.domain.spreadsheet.values import plain
from app.errors import InvalidError, NotFoundError
from app.services.spreadsheets import Waiting, first_match, usable


def named(
    connection: Connection,
    record: Record,
    workbook: Workbook,
    kind: str,
    options: dict[str, Any],
) -> Waiting:
    """Return a file with what its columns hold: as named, else as before, else guessed.

    Args:
        connection: The file of the record, which remembers matches.
        record: The home's record.
        workbook: The file.
        kind: What it holds.
        options: ``pairs`` as HEADING=FIELD, ``sheet`` by its name, ``heading_row``;
            the others are fields of `Waiting`.

    Raises:
        NotFoundError: There is no such sheet, board or kind of device.
        InvalidError: A column or field that was named is not there.
    """
    plain_ones = {k: v for k, v in options.items() if k in Waiting.model_fields}
    index = _index(workbook, plain_ones.pop("sheet", None))
    _check(record, **plain_ones)
    chosen = usable(workbook, index)
    match, _ = first_match(connection, kind, chosen, options["heading_row"] or 0)
    values: dict[str, Any] = {
        **plain_ones,
        "home": record.home.ref,
        "kind": kind,
        "workbook": workbook,
        "sheet": index,
        "match": changed(match, chosen, kind, options["pairs"]),
    }
    return Waiting.model_validate(values)


def changed(match: Match, sheet: Sheet, kind: str, pairs: Iterable[str]) -> Match:
    """Return a match with some columns as they are named.

    Raises:
        InvalidError: There is no such column, or no such field.
    """
    columns = list(match.columns)
    words = [plain(word) for word in headings(sheet, match.row)]
    codes = [target.code for target in TARGETS[kind]]
    for pair in pairs:
        heading, _, code = pair.rpartition("=")
        if plain(heading) not in words or not plain(heading):
            there = ", ".join(f"“{w}”" for w in headings(sheet, match.row) if w)
            raise InvalidError(f"There is no column “{heading}”. There are: {there}.")
        if code and code not in codes:
            some = ", ".join(codes)
            raise InvalidError(f"There is no field “{code}”. There are: {some}.")
        columns = ["" if held == code else held for held in columns]
        columns[words.index(plain(heading))] = code
    return Match(row=match.row, columns=tuple(columns))


def _index(workbook: Workbook, name: str | None) -> int:
    names = [sheet.name for sheet in workbook.sheets]
    if name is None:
        return 0
    if name not in names:
        there = ", ".join(f"“{n}”" for n in names)
        raise NotFoundError(f"There is no sheet “{name}”. There are: {there}.")
    return names.index(name)


def _check(
    record: Record, *, board: str | None, kind_unsaid: str, **_others: object
) -> None:
    if board is not None and record.find(Board, board) is None:
        refs = ", ".join(b.ref for b in record.boards) or "none yet"
        raise NotFoundError(f"There is no board “{board}”. There are: {refs}.")
    if kind_unsaid not in DEVICE_KINDS:
        kinds = ", ".join(DEVICE_KINDS)
        raise NotFoundError(f"There is no kind “{kind_unsaid}”. There are: {kinds}.")
