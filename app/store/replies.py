"""What came back, kept until every difference is dealt with."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, delete, insert, select, update

from app.store import tables


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptReply:
    """A reply as it is kept.

    Attributes:
        key: Its number in the file.
        at: When it came, UTC.
        words: Who says so and what in words, as JSON.
        document: The record that came back, as a document; empty for none.
        turned_down: Keys of the differences that were turned down.
    """

    key: int
    at: datetime
    words: str
    document: str
    turned_down: tuple[str, ...]


def keep_reply(
    connection: Connection, home: int, *, at: datetime, words: str, document: str
) -> int:
    """Keep a reply; return its number."""
    values = {
        "home_id": home,
        "at": at.isoformat(timespec="seconds"),
        "words": words,
        "document": document,
        "turned_down": "[]",
    }
    result = connection.execute(insert(tables.reply).values(values))
    return int((result.inserted_primary_key or (0,))[0])


def same_reply(
    connection: Connection, home: int, *, words: str, document: str
) -> int | None:
    """Return the number of a reply of a home that says just this, if one does."""
    reply = tables.reply
    this = (reply.c.home_id == home) & (reply.c.words == words)
    query = select(reply.c.id).where(this & (reply.c.document == document))
    return connection.execute(query).scalar()


def replies_of(connection: Connection, home: int) -> tuple[KeptReply, ...]:
    """Return the replies of a home, the newest first."""
    reply = tables.reply
    query = select(reply).where(reply.c.home_id == home).order_by(reply.c.id.desc())
    return tuple(_kept(row) for row in connection.execute(query))


def find_reply(connection: Connection, home: int, key: int) -> KeptReply | None:
    """Return one reply of a home."""
    reply = tables.reply
    this = (reply.c.home_id == home) & (reply.c.id == key)
    row = connection.execute(select(reply).where(this)).first()
    return _kept(row) if row else None


def set_turned_down(connection: Connection, key: int, keys: tuple[str, ...]) -> None:
    """Write which differences of a reply were turned down."""
    this = tables.reply.c.id == key
    values = {"turned_down": json.dumps(keys)}
    connection.execute(update(tables.reply).where(this).values(values))


def throw_away(connection: Connection, key: int) -> None:
    """Forget a reply."""
    connection.execute(delete(tables.reply).where(tables.reply.c.id == key))


def _kept(row: Any) -> KeptReply:
    return KeptReply(
        key=row.id,
        at=datetime.fromisoformat(row.at),
        words=row.words,
        document=row.document,
        turned_down=tuple(json.loads(row.turned_down)),
    )
