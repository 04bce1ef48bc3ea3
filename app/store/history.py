"""Going back: what a change touched, where a moment lies, what to begin from.

The log is in the order of its numbers.  A clock may be set back, so that a later change
bears an earlier time; it counts as made no earlier than those before it.  So a moment
lies before the first change, by number, that bears a later time.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from datetime import datetime

from sqlalchemy import Connection, func, insert, or_, select

from app.domain.edits import Entry, record_from_json
from app.domain.record import Record, specs
from app.store import tables
from app.store.changes import Change, as_change

# Going back reads so many changes at the most, and a save writes the record whole once
# in so many: small enough for a page, rare enough not to outgrow the log.
SNAPSHOT_EVERY = 100


def note_touched(
    connection: Connection,
    home: int,
    key: int,
    sentence: str,
    entries: tuple[Entry, ...],
) -> None:
    """Note which items a change touched, and the words that it is found by."""
    found: dict[tuple[str, str], list[str]] = {}
    for entry in entries:
        for item in filter(None, (entry.before, entry.after)):
            words = found.setdefault((entry.sort, item.ref), [sentence])
            words += [item.ref, item.title, *_labels(entry)]
    rows = [
        {
            "home_id": home,
            "sort": sort,
            "ref": ref,
            "change_id": key,
            "words": " ".join(dict.fromkeys(words)).casefold(),
        }
        for (sort, ref), words in found.items()
    ]
    connection.execute(insert(tables.touch), rows)


def keep_whole_when_due(
    connection: Connection, home: int, key: int, record: Record
) -> None:
    """Write the record whole, once in so many changes.

    Args:
        connection: An open transaction.
        home: Key of the home.
        key: Number of the change that was just made.
        record: The record after it.
    """
    change, snapshot = tables.change, tables.snapshot
    newest = select(func.max(snapshot.c.change_id)).where(snapshot.c.home_id == home)
    last = connection.execute(newest).scalar() or 0
    since = select(func.count()).where(change.c.home_id == home, change.c.id > last)
    if (connection.execute(since).scalar() or 0) >= SNAPSHOT_EVERY:
        keep_whole(connection, home, key, record)


def keep_whole(connection: Connection, home: int, key: int, record: Record) -> None:
    """Write the record whole, as it stood after a change."""
    packed = zlib.compress(record.model_dump_json().encode())
    values = {"change_id": key, "home_id": home, "record": packed}
    connection.execute(insert(tables.snapshot).values(values))


def whole_from(
    connection: Connection, home: int, key: int
) -> tuple[Record, int] | None:
    """Return the record after a change, or after the next that it was written at.

    The number of that change comes with it; None when it was not written since.
    """
    snapshot = tables.snapshot
    this = (snapshot.c.home_id == home) & (snapshot.c.change_id >= key)
    query = select(snapshot).where(this).order_by(snapshot.c.change_id).limit(1)
    row = connection.execute(query).first()
    if row is None:
        return None
    return record_from_json(zlib.decompress(row.record).decode()), row.change_id


def first_after(connection: Connection, home: int, at: datetime) -> int | None:
    """Return the number of the first change that counts as made after a moment."""
    change = tables.change
    moment = at.isoformat(timespec="seconds")
    this = (change.c.home_id == home) & (change.c.at > moment)
    return connection.execute(select(func.min(change.c.id)).where(this)).scalar()


def changes_from(
    connection: Connection, home: int, first: int = 0, last: int | None = None
) -> Iterator[Change]:
    """Yield the changes from one to another, the newest first, as they are read."""
    change = tables.change
    query = select(change).where(change.c.home_id == home, change.c.id >= first)
    if last is not None:
        query = query.where(change.c.id <= last)
    for row in connection.execute(query.order_by(change.c.id.desc())):
        yield as_change(row)


def find_changes(
    connection: Connection,
    home: int,
    most: int,
    *,
    before: int | None = None,
    sort: str = "",
    text: str = "",
    ref: str = "",
) -> tuple[Change, ...]:
    """Return the newest changes that are asked for, newest first.

    Args:
        connection: A connection.
        home: Key of the home.
        most: How many at the most.
        before: Only those before this number.
        sort: Only those that touched an item of this sort, or the home.
        text: Only those in whose sentence, or in the names, references and changed
            fields of what they touched, each of these words stands.
        ref: Only those that touched the item of this reference.
    """
    change, touch = tables.change, tables.touch
    query = select(change).where(change.c.home_id == home)
    if before is not None:
        query = query.where(change.c.id < before)
    touched = select(touch.c.change_id).where(touch.c.home_id == home)
    if sort:
        query = query.where(change.c.id.in_(touched.where(touch.c.sort == sort)))
    if ref:
        own = touched.where(touch.c.ref == ref, touch.c.sort != "home")
        query = query.where(change.c.id.in_(own))
    for word in text.casefold().split():
        named = touched.where(touch.c.words.contains(word, autoescape=True))
        query = query.where(change.c.id.in_(named))
    rows = connection.execute(query.order_by(change.c.id.desc()).limit(most))
    return tuple(as_change(row) for row in rows)


def touching_after(
    connection: Connection, home: int, key: int, refs: frozenset[str]
) -> tuple[tuple[int, str, int | None], ...]:
    """Return the later changes that touched items: number, sentence, what they undo.

    Newest first; the home is named by the empty reference.
    """
    change, touch = tables.change, tables.touch
    named = or_(
        touch.c.ref.in_(refs) & (touch.c.sort != "home"),
        (touch.c.sort == "home") & ("" in refs),
    )
    touched = select(touch.c.change_id).where(
        touch.c.home_id == home, touch.c.change_id > key, named
    )
    query = select(change.c.id, change.c.sentence, change.c.undoes)
    rows = connection.execute(
        query.where(change.c.id.in_(touched)).order_by(change.c.id.desc())
    )
    return tuple((row.id, row.sentence, row.undoes) for row in rows)


def _labels(entry: Entry) -> list[str]:
    """Return the labels of the fields in which an item was changed."""
    before, after = entry.before, entry.after
    if before is None or after is None:
        return [(after or before).noun] if (after or before) else []  # type: ignore[union-attr]
    return [
        spec.label
        for spec in specs(type(after))
        if getattr(before, spec.name) != getattr(after, spec.name)
    ]
