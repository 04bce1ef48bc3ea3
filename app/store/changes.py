"""The log of changes: what was done, when, and each item before and after.

A change can be undone as long as every item it touched still is as it left it.  Undoing
is a change of its own, so that nothing is ever lost.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, insert, select, update

from app.domain.edits import Entry
from app.store import tables


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One change of a home.

    Attributes:
        key: Its number in the file.
        at: When, UTC.
        sentence: What was done, such as “Added Point P12”.
        entries: Each item before and after.
        undoes: Number of the change that it took back, if any.
        made_by: Name of the phone or the computer that made it; empty: this computer,
            before it was given a name.
    """

    key: int
    at: datetime
    sentence: str
    entries: tuple[Entry, ...]
    undoes: int | None
    made_by: str


def record_change(  # noqa: PLR0913 - a row, written as a table
    connection: Connection,
    home: int,
    *,
    at: datetime,
    sentence: str,
    entries: tuple[Entry, ...],
    undoes: int | None = None,
    once: str | None = None,
    made_by: str = "",
) -> int:
    """Write a change into the log; return its number.

    Args:
        connection: An open transaction.
        home: Key of the home.
        at: Now, UTC.
        sentence: What was done.
        entries: Each item before and after.
        undoes: Number of the change that this one takes back.
        once: Key of the form that was sent, so that it counts once.
        made_by: Name of the phone or the computer that made it.
    """
    result = connection.execute(
        insert(tables.change).values(
            home_id=home,
            at=at.isoformat(timespec="seconds"),
            sentence=sentence,
            entries=json.dumps([entry.as_json() for entry in entries]),
            undoes=undoes,
            once=once,
            made_by=made_by or None,
        )
    )
    return int((result.inserted_primary_key or (0,))[0])


def change_sent_as(connection: Connection, home: int, once: str) -> Change | None:
    """Return the change that a form with this key made before."""
    change = tables.change
    this = (change.c.home_id == home) & (change.c.once == once)
    row = connection.execute(select(change).where(this)).first()
    return as_change(row) if row else None


def find_change(connection: Connection, home: int, key: int) -> Change | None:
    """Return one change of a home."""
    change = tables.change
    this = (change.c.home_id == home) & (change.c.id == key)
    row = connection.execute(select(change).where(this)).first()
    return as_change(row) if row else None


def undone_by(connection: Connection, home: int, key: int) -> int | None:
    """Return the number of the change that took this one back, if one did."""
    return undone_among(connection, home, (key,)).get(key)


def undone_among(
    connection: Connection, home: int, keys: tuple[int, ...]
) -> dict[int, int]:
    """Return, for those changes that are taken back, the number that did it.

    Taking back can itself be taken back, and that again.
    """
    takers = _takers(connection, home, keys)
    found: dict[int, int] = {}
    for key in sorted({*keys, *takers}, reverse=True):
        standing = [taker for taker in takers.get(key, ()) if taker not in found]
        if standing:
            found[key] = standing[-1]
    return {key: found[key] for key in keys if key in found}


def _takers(
    connection: Connection, home: int, keys: tuple[int, ...]
) -> dict[int, list[int]]:
    """Return what took changes back, what took that back, and so on."""
    change = tables.change
    found: dict[int, list[int]] = {}
    waiting = list(keys)
    while waiting:
        this = (change.c.home_id == home) & change.c.undoes.in_(waiting)
        # In order here: asked to sort, SQLite would read the whole log by its number.
        query = select(change.c.id, change.c.undoes).where(this)
        rows = sorted(connection.execute(query).all(), key=lambda row: row.id)
        for row in rows:
            found.setdefault(row.undoes, []).append(row.id)
        waiting = [row.id for row in rows]
    return found


def let_send_again(connection: Connection, home: int, key: int) -> None:
    """Forget which form made a change: once undone, that form may make it anew."""
    change = tables.change
    this = (change.c.home_id == home) & (change.c.id == key)
    connection.execute(update(change).where(this).values(once=None))


def latest_changes(
    connection: Connection, home: int, most: int, *, before: int | None = None
) -> tuple[Change, ...]:
    """Return the newest changes of a home, or those before one, newest first."""
    change = tables.change
    query = select(change).where(change.c.home_id == home)
    if before is not None:
        query = query.where(change.c.id < before)
    rows = connection.execute(query.order_by(change.c.id.desc()).limit(most))
    return tuple(as_change(row) for row in rows)


def as_change(row: Any) -> Change:
    """Return a row of the log as a change."""
    return Change(
        key=row.id,
        at=datetime.fromisoformat(row.at),
        sentence=row.sentence,
        entries=tuple(Entry.from_json(entry) for entry in json.loads(row.entries)),
        undoes=row.undoes,
        made_by=row.made_by or "",
    )
