"""The phones that may use this record over the home network, each with its pass.

Only the hash of a pass is kept: whoever reads the file cannot act as a phone.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, delete, insert, select, update

from app.store import tables


@dataclass(frozen=True, slots=True, kw_only=True)
class Phone:
    """A paired phone.

    Attributes:
        key: Its number in the file.
        name: What its owner called it; no two have the same.
        paired_at: Since when it is paired, UTC.
        seen_at: When it last asked for something, UTC, to within some minutes.
    """

    key: int
    name: str
    paired_at: datetime
    seen_at: datetime


def all_phones(connection: Connection) -> tuple[Phone, ...]:
    """Return the paired phones, in the order they came."""
    rows = connection.execute(select(tables.phone).order_by(tables.phone.c.id))
    return tuple(_phone(row) for row in rows)


def phone_with(connection: Connection, token_hash: str) -> Phone | None:
    """Return the phone whose pass has this hash."""
    this = tables.phone.c.token_hash == token_hash
    row = connection.execute(select(tables.phone).where(this)).first()
    return _phone(row) if row else None


def add_phone(
    connection: Connection, *, name: str, token_hash: str, at: datetime
) -> None:
    """Write a phone that was just paired."""
    when = at.isoformat(timespec="seconds")
    connection.execute(
        insert(tables.phone).values(
            name=name, token_hash=token_hash, paired_at=when, seen_at=when
        )
    )


def set_seen(connection: Connection, key: int, at: datetime) -> None:
    """Write when a phone was last seen."""
    this = tables.phone.c.id == key
    when = at.isoformat(timespec="seconds")
    connection.execute(update(tables.phone).where(this).values(seen_at=when))


def remove_phone(connection: Connection, key: int) -> bool:
    """Forget a phone and its pass; return whether there was one."""
    this = tables.phone.c.id == key
    return connection.execute(delete(tables.phone).where(this)).rowcount > 0


def remove_all_phones(connection: Connection) -> None:
    """Forget every phone."""
    connection.execute(delete(tables.phone))


def _phone(row: Any) -> Phone:
    return Phone(
        key=row.id,
        name=row.name,
        paired_at=datetime.fromisoformat(row.paired_at),
        seen_at=datetime.fromisoformat(row.seen_at),
    )
