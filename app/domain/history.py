"""What was done to a home, in order, and the walk back through it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from app.domain.edits import Entry, stepped_back
from app.domain.record import Record
from app.domain.record._field import Model, field
from app.domain.told import Told


@dataclass(frozen=True, slots=True, kw_only=True)
class PastChange:
    """One change, as it goes from one file to another.

    Attributes:
        at: When, UTC.
        sentence: What was done.
        made_by: Name of the phone or the computer that made it; may be empty.
        undoes: Place, from 1, of the change that it took back, if any.
        entries: Each item before and after.
    """

    at: datetime
    sentence: str
    made_by: str
    undoes: int | None
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """All that was done to a home.

    Attributes:
        began: Since when the home is recorded, UTC.
        changes: The changes, the oldest first.
    """

    began: datetime
    changes: tuple[PastChange, ...]


class Happened(Model):
    """One change, told."""

    number: int = field("Its number", ...)
    at: str = field("When, in UTC", ...)
    sentence: str = field("What was done", ...)
    made_by: str = field("Phone or computer it was done from; may be empty", ...)
    undoes: int | None = field("Number of the change that it took back")
    undone_by: int | None = field("Number of the change that took it back")
    items: tuple[Told, ...] = field("What it did to each item", ())


class Compared(Model):
    """What differs between the record at two moments."""

    earlier: str = field("The one moment, in UTC", ...)
    later: str = field("The other, in UTC", ...)
    items: tuple[Told, ...] = field("What differs, item by item", ())


def walked_back(record: Record, history: History) -> Iterator[tuple[int, Record]]:
    """Yield each place in a history, the last first, with the record after it.

    Raises:
        ValueError: A change does not lead to what comes after it.
    """
    for place in range(len(history.changes) - 1, -1, -1):
        yield place, record
        before = stepped_back(record, history.changes[place].entries)
        if before is None:
            raise ValueError(f"change {place + 1} does not lead to what follows it")
        record = before
