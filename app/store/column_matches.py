"""What the columns of a spreadsheet were said to hold: for the next with its headings.

They belong to no home, since the same person keeps several homes the same way.
"""

from __future__ import annotations

import hashlib
import json

from sqlalchemy import Connection, delete, insert, select

from app.store.tables import column_match

MOST_KEPT = 50


def remembered(
    connection: Connection, kind: str, headings: str
) -> tuple[str, ...] | None:
    """Return what the columns of these headings were said to hold; None if never."""
    this = (column_match.c.kind == kind) & (column_match.c.headings == _mark(headings))
    text = connection.execute(select(column_match.c.columns).where(this)).scalar()
    return None if text is None else tuple(json.loads(text))


def remember(
    connection: Connection, kind: str, headings: str, columns: tuple[str, ...]
) -> None:
    """Remember what the columns hold, in the place of what they were said to before."""
    table = column_match
    this = (table.c.kind == kind) & (table.c.headings == _mark(headings))
    connection.execute(delete(table).where(this))
    values = {"kind": kind, "headings": _mark(headings), "columns": json.dumps(columns)}
    connection.execute(insert(table).values(values))
    newest = select(table.c.id).order_by(table.c.id.desc()).limit(MOST_KEPT)
    connection.execute(delete(table).where(table.c.id.not_in(newest)))


def _mark(headings: str) -> str:
    """Return a mark of the headings: the words themselves need not be kept."""
    return hashlib.sha256(headings.encode()).hexdigest()
