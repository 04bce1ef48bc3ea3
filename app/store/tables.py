"""The tables, made from the classes of the record: one a sort, one column a field.

An item's key is its home and its reference, so that a row is the item as it stands.
`item` holds every reference of a home once and in order, and each column that refers to
an item points there; what it points to must be there when the transaction ends.
"""

from __future__ import annotations

import json
from datetime import date
from decimal import Decimal
from typing import Any

from pydantic import BaseModel
from sqlalchemy import (
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    PrimaryKeyConstraint,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
)

from app.domain.labels.sheet import LabelSheet
from app.domain.record import SORTS, FieldSpec, Home, Item, specs

metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)


class ExactDecimal(TypeDecorator[Decimal]):
    """A decimal as text: SQLite would keep it as a binary fraction."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Decimal | None, _dialect: Any) -> str | None:
        """Write the digits."""
        return None if value is None else str(value)

    def process_result_value(self, value: Any, _dialect: Any) -> Decimal | None:
        """Read the digits."""
        return None if value is None else Decimal(value)


class Day(TypeDecorator[date]):
    """A day as text, 2026-03-01."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: date | None, _dialect: Any) -> str | None:
        """Write the day."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: Any, _dialect: Any) -> date | None:
        """Read the day."""
        return None if value is None else date.fromisoformat(value)


class Codes(TypeDecorator[tuple[str, ...]]):
    """Several codes as a JSON list."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: tuple[str, ...] | None, _d: Any) -> str | None:
        """Write the list."""
        return None if value is None else json.dumps(value)

    def process_result_value(self, value: Any, _d: Any) -> tuple[str, ...] | None:
        """Read the list."""
        return None if value is None else tuple(json.loads(value))


COLUMN_TYPES: dict[str, Any] = {
    "text": Text,
    "long": Text,
    "int": Integer,
    "decimal": ExactDecimal,
    "date": Day,
    "moment": Text,
    "choice": Text,
    "choices": Codes,
    "ref": Text,
}
AT_COMMIT: dict[str, Any] = {"deferrable": True, "initially": "DEFERRED"}


def stored(spec: FieldSpec) -> bool:
    """Return whether a field is a column; lists of references are links instead."""
    return spec.type != "refs"


def _columns(model: type[BaseModel]) -> list[Column[Any]]:
    return [
        Column(spec.name, COLUMN_TYPES[spec.type](), nullable=spec.optional)
        for spec in specs(model)
        if stored(spec)
    ]


def _sort_table(model: type[Item]) -> Table:
    references = [
        ForeignKeyConstraint(
            ["home_id", spec.name], ["item.home_id", "item.ref"], **AT_COMMIT
        )
        for spec in specs(model)
        if spec.type == "ref"
    ]
    return Table(
        model.sort,
        metadata,
        Column("home_id", Integer, nullable=False),
        *_columns(model),
        PrimaryKeyConstraint("home_id", "ref"),
        ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            ondelete="CASCADE",
            **AT_COMMIT,
        ),
        *references,
    )


home = Table(
    "home",
    metadata,
    Column("id", Integer, primary_key=True),
    *_columns(Home),
    Column("deleted_at", Text),
    Column("archived_at", Text),
    Column("began_at", Text, nullable=False),
    # New with every write of the home or of what belongs to it.
    Column("stamp", Text),
    UniqueConstraint("ref"),
)
item = Table(
    "item",
    metadata,
    Column("home_id", ForeignKey("home.id", ondelete="CASCADE"), nullable=False),
    Column("ref", Text, nullable=False),
    Column("sort", Text, nullable=False),
    Column("position", Integer, nullable=False),
    PrimaryKeyConstraint("home_id", "ref"),
)
by_sort = {sort: _sort_table(model) for sort, model in SORTS.items()}
link = Table(
    "link",
    metadata,
    Column("home_id", Integer, nullable=False),
    Column("owner", Text, nullable=False),
    Column("field", Text, nullable=False),
    Column("position", Integer, nullable=False),
    Column("target", Text, nullable=False),
    PrimaryKeyConstraint("home_id", "owner", "field", "position"),
    ForeignKeyConstraint(
        ["home_id", "owner"],
        ["item.home_id", "item.ref"],
        ondelete="CASCADE",
        **AT_COMMIT,
    ),
    ForeignKeyConstraint(
        ["home_id", "target"], ["item.home_id", "item.ref"], **AT_COMMIT
    ),
)
change = Table(
    "change",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("home_id", ForeignKey("home.id", ondelete="CASCADE"), nullable=False),
    Column("at", Text, nullable=False),
    Column("sentence", Text, nullable=False),
    Column("entries", Text, nullable=False),
    Column("undoes", Integer),
    Column("once", Text),
    Column("made_by", Text),
    UniqueConstraint("home_id", "once"),
    Index("ix_change_home_id", "home_id"),
    Index("ix_change_home_id_at", "home_id", "at"),
    Index("ix_change_home_id_undoes", "home_id", "undoes"),
)
# Which items a change touched, each with the words that it is found by.
touch = Table(
    "touch",
    metadata,
    Column("home_id", Integer, nullable=False),
    Column("sort", Text, nullable=False),
    Column("ref", Text, nullable=False),
    Column("change_id", ForeignKey("change.id", ondelete="CASCADE"), nullable=False),
    Column("words", Text, nullable=False),
    PrimaryKeyConstraint("home_id", "sort", "ref", "change_id"),
    Index("ix_touch_change_id", "change_id"),
    # Kept in the order of its key, so that a search through it is one reading.
    sqlite_with_rowid=False,
)
# The record whole, as it stood after a change: where going back may begin.
snapshot = Table(
    "snapshot",
    metadata,
    Column("change_id", ForeignKey("change.id", ondelete="CASCADE"), primary_key=True),
    Column("home_id", Integer, nullable=False),
    Column("record", LargeBinary, nullable=False),
    Index("ix_snapshot_home_id", "home_id", "change_id"),
)
# What came back from somebody who read a record, until it is dealt with.
reply = Table(
    "reply",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("home_id", ForeignKey("home.id", ondelete="CASCADE"), nullable=False),
    Column("at", Text, nullable=False),
    Column("words", Text, nullable=False),
    Column("document", Text, nullable=False),
    Column("turned_down", Text, nullable=False),
    Index("ix_reply_home_id", "home_id"),
)
# What is set for the whole file, by its name.
setting = Table(
    "setting",
    metadata,
    Column("name", Text, primary_key=True),
    Column("value", Text, nullable=False),
)
# The label sheets that a person has added; they belong to no home.
label_sheet = Table(
    "label_sheet",
    metadata,
    Column("id", Integer, primary_key=True),
    *_columns(LabelSheet),
)
# The phones that may use the record; they belong to no home.
phone = Table(
    "phone",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("name", Text, nullable=False),
    Column("token_hash", Text, nullable=False),
    Column("paired_at", Text, nullable=False),
    Column("seen_at", Text, nullable=False),
    UniqueConstraint("token_hash"),
)
# What the columns of a spreadsheet were said to hold; they belong to no home.
column_match = Table(
    "column_match",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("kind", Text, nullable=False),
    Column("headings", Text, nullable=False),
    Column("columns", Text, nullable=False),
    UniqueConstraint("kind", "headings"),
)
