"""Take in what a person has in a spreadsheet: keep it waiting, match it, store it."""

from __future__ import annotations

import logging
from collections import Counter
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path
from typing import Literal

from pydantic import ValidationError
from sqlalchemy import Connection

from app.domain.edits import entries_between
from app.domain.record import SORTS, Record
from app.domain.record._field import Model, field
from app.domain.spreadsheet import (
    KINDS,
    Asked,
    Made,
    Match,
    Sheet,
    Workbook,
    guessed,
    heading_row,
    headings,
    made_of,
)
from app.domain.spreadsheet.headings import same_headings
from app.domain.spreadsheet.made import making_of
from app.domain.spreadsheet.targets import TARGETS
from app.errors import InvalidError, NotFoundError
from app.services.homes import OpenHome, save
from app.store import column_matches, waiting

log = logging.getLogger(__name__)

GONE = "This file is not waiting here any longer. Choose it again."


class Waiting(Model):
    """A spreadsheet between being chosen and being taken in."""

    home: str = field("Home", ...)
    kind: Literal["circuits", "points", "ways"] = field("What it holds", ...)
    workbook: Workbook = field("Its sheets", ...)
    sheet: int = field("Which sheet", 0)
    match: Match | None = field("What its columns hold")
    board: str | None = field("Board of ways that name none")
    make_devices: bool = field("Make ways that are not there", default=False)
    make_rooms: bool = field("Make rooms that are not there", default=False)
    kind_unsaid: str = field("Kind of a device where none is said", "unknown")
    only_new: bool = field("Leave out what is there already", default=False)

    @property
    def chosen(self) -> Sheet:
        """The sheet that was chosen."""
        return self.workbook.sheets[self.sheet]


def begin(folder: Path, file: Waiting, now: datetime) -> str:
    """Keep a file waiting; return its token."""
    return waiting.keep(folder, file.model_dump_json(), now)


def clear_waiting(folder: Path, now: datetime) -> None:
    """Remove what has waited for more than a day; what cannot be removed stays."""
    try:
        waiting.clear(folder, now)
    except OSError as error:
        log.warning("what waits cannot be cleared: %s", error)


def go_on(folder: Path, token: str, home: str, now: datetime) -> Waiting:
    """Return a file that waits for a home.

    Raises:
        NotFoundError: It does not, or not any longer.
    """
    text = waiting.kept(folder, token, now)
    try:
        file = Waiting.model_validate_json(text or "")
    except ValidationError:
        raise NotFoundError(GONE) from None
    if file.home != home:
        raise NotFoundError(GONE)
    return file


def usable(workbook: Workbook, sheet: int) -> Sheet:
    """Return a sheet of a file.

    Raises:
        InvalidError: It is too large; the sentence says where.
    """
    sheets = workbook.sheets
    chosen = sheets[sheet] if 0 <= sheet < len(sheets) else sheets[0]
    if chosen.refusal:
        raise InvalidError(f"The sheet “{chosen.name}”: {chosen.refusal}")
    return chosen


def first_match(
    connection: Connection, kind: str, sheet: Sheet, row: int
) -> tuple[Match, bool]:
    """Return what the columns seem to hold, and whether that was said once before.

    Args:
        connection: The file of the record, which remembers matches.
        kind: What the sheet holds.
        sheet: The sheet.
        row: Row of the headings; 0 to look for it.
    """
    at = row if 1 <= row <= len(sheet.rows) else heading_row(sheet, kind)
    words = headings(sheet, at)
    before = column_matches.remembered(connection, kind, same_headings(words))
    known = {target.code for target in TARGETS[kind]} | {""}
    if before is not None and len(before) == len(words) and set(before) <= known:
        return Match(row=at, columns=before), True
    return guessed(sheet, at, kind), False


def matched(connection: Connection, folder: Path, token: str, file: Waiting) -> None:
    """Keep what a person has said of a file, and remember its match for the next."""
    waiting.put(folder, token, file.model_dump_json())
    if file.match is not None:
        words = headings(file.chosen, file.match.row)
        column_matches.remember(
            connection, file.kind, same_headings(words), file.match.columns
        )


def outcome(record: Record, file: Waiting) -> Made:
    """Return what a file would make of a record, as it was matched."""
    asked = Asked(
        file=file.workbook.name,
        board=file.board,
        make_devices=file.make_devices,
        make_rooms=file.make_rooms,
        kind_unsaid=file.kind_unsaid,
        only_new=file.only_new,
    )
    match = file.match or Match()
    return made_of(file.kind, file.chosen, match, making_of(record, asked))


def carry_out(
    connection: Connection, start: OpenHome, file: Waiting, once: str | None
) -> tuple[int | None, Made]:
    """Take a file in as one change, all or nothing.

    Returns:
        The number of the change, None where there is a fault; and what was made.
    """
    made = outcome(start.record, file)
    if made.faults:
        return None, made
    sentence = f"Brought in {KINDS[file.kind].lower()} from “{file.workbook.name}”."
    return save(connection, start, made.record, sentence, once=once), made


def finished(folder: Path, token: str) -> None:
    """Let a file go that was taken in, or given up."""
    waiting.let_go(folder, token)


def counted(old: Record, new: Record) -> tuple[str, ...]:
    """Return how many things of each sort a change makes or changes, in words."""
    entries = entries_between(old, new)
    made = Counter(entry.sort for entry in entries if entry.before is None)
    changed = Counter(entry.sort for entry in entries if entry.before is not None)
    return (*_in_words(made, ""), *_in_words(changed, " filled in"))


def _in_words(count: Counter[str], after: str) -> Iterable[str]:
    for sort, cls in SORTS.items():
        if times := count[sort]:
            noun = cls.noun if times == 1 else cls.plural
            yield f"{times} {noun.lower()}{after}"
