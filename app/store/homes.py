"""Homes in the file: listed, loaded whole, written as the difference of two records."""

from __future__ import annotations

import secrets
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Table, delete, func, insert, select, update

from app.domain.record import SORTS, Home, Item, Record, specs
from app.store import tables

_HOME_COLUMNS = [tables.home.c[spec.name] for spec in specs(Home)]
_LISTS = {
    cls.sort: [spec.name for spec in specs(cls) if not tables.stored(spec)]
    for cls in SORTS.values()
}


@dataclass(frozen=True, slots=True, kw_only=True)
class DeletedHome:
    """A home that was deleted and can be brought back.

    Attributes:
        key: Its key.
        ref: Its reference.
        name: Its name.
        at: When it was deleted, UTC.
    """

    key: int
    ref: str
    name: str
    at: datetime


def all_homes(connection: Connection, *, archived: bool = False) -> tuple[Home, ...]:
    """Return the homes that are not deleted, by name: those put aside, or not."""
    rows = connection.execute(
        select(*_HOME_COLUMNS)
        .where(tables.home.c.deleted_at.is_(None))
        .where(tables.home.c.archived_at.is_not(None) == archived)
        .order_by(tables.home.c.name, tables.home.c.ref)
    )
    return tuple(Home.model_validate(dict(row)) for row in rows.mappings())


def deleted_homes(connection: Connection) -> tuple[DeletedHome, ...]:
    """Return the homes that were deleted and are still there, the newest first."""
    home = tables.home
    query = select(home.c.id, home.c.ref, home.c.name, home.c.deleted_at)
    gone = home.c.deleted_at
    rows = connection.execute(query.where(gone.is_not(None)).order_by(gone.desc()))
    return tuple(
        DeletedHome(
            key=row.id,
            ref=row.ref,
            name=row.name,
            at=datetime.fromisoformat(row.deleted_at),
        )
        for row in rows
    )


def set_archived(connection: Connection, key: int, at: str | None) -> None:
    """Put a home aside, or take it up again."""
    of_home = tables.home.c.id == key
    connection.execute(update(tables.home).where(of_home).values(archived_at=at))


def remove(connection: Connection, key: int) -> None:
    """Remove a home for good, with its items and its log."""
    beside = (tables.reply, tables.touch, tables.snapshot, tables.change)
    for table in (*beside, tables.link):
        connection.execute(delete(table).where(table.c.home_id == key))
    for table in (*tables.by_sort.values(), tables.item):
        connection.execute(delete(table).where(table.c.home_id == key))
    connection.execute(delete(tables.home).where(tables.home.c.id == key))


def home_id(connection: Connection, ref: str, *, deleted: bool = False) -> int | None:
    """Return the key of a home that is there, or of one that is deleted."""
    gone = tables.home.c.deleted_at
    there = gone.is_not(None) if deleted else gone.is_(None)
    query = select(tables.home.c.id).where(tables.home.c.ref == ref, there)
    return connection.execute(query).scalar()


def home_refs(connection: Connection) -> set[str]:
    """Return every reference in use for a home, of deleted ones too."""
    return set(connection.execute(select(tables.home.c.ref)).scalars())


def facts_of(connection: Connection, key: int) -> Home:
    """Return a home's own facts, without its items."""
    query = select(*_HOME_COLUMNS).where(tables.home.c.id == key)
    return Home.model_validate(dict(connection.execute(query).mappings().one()))


def stamp_of(connection: Connection, key: int) -> str | None:
    """Return what stands for the state that a home is in; None: nothing does yet."""
    query = select(tables.home.c.stamp).where(tables.home.c.id == key)
    return connection.execute(query).scalar()


def load(connection: Connection, key: int) -> Record:
    """Return a home's record, whole."""
    home = facts_of(connection, key)
    links = _links(connection, key)
    items: dict[str, Any] = {
        cls.plural: tuple(
            cls.model_validate(
                {spec.name: row[spec.name] for spec in specs(cls) if spec.name in row}
                | {name: links.get((row["ref"], name), ()) for name in _LISTS[sort]}
            )
            for row in _rows(connection, key, tables.by_sort[sort])
        )
        for sort, cls in SORTS.items()
    }
    return Record(home=home, **items)


def add(connection: Connection, record: Record, at: datetime) -> int:
    """Write a new home with all its items; return its key.

    Args:
        connection: An open transaction.
        record: The home.
        at: Since when it is recorded, UTC.
    """
    began = {"began_at": at.isoformat(timespec="seconds")}
    values = _values(record.home) | began
    result = connection.execute(insert(tables.home).values(values))
    key = int((result.inserted_primary_key or (0,))[0])
    write(connection, key, Record(home=record.home), record)
    return key


def began_at(connection: Connection, key: int) -> datetime:
    """Return since when a home is recorded, UTC."""
    query = select(tables.home.c.began_at).where(tables.home.c.id == key)
    return datetime.fromisoformat(connection.execute(query).scalar_one())


def set_began(connection: Connection, key: int, at: datetime) -> None:
    """Write since when a home is recorded, where that was longer ago."""
    values = {"began_at": at.isoformat(timespec="seconds")}
    of_home = tables.home.c.id == key
    connection.execute(update(tables.home).where(of_home).values(values))


def write(connection: Connection, key: int, old: Record, new: Record) -> None:
    """Write what differs between two records of a home."""
    values = _values(new.home) if old.home != new.home else {}
    stamped = values | {"stamp": secrets.token_hex(16)}
    connection.execute(
        update(tables.home).where(tables.home.c.id == key).values(stamped)
    )
    gone = set(old.by_ref) - set(new.by_ref)
    for cls in SORTS.values():
        _write_sort(connection, key, cls, old, new)
    _remove(connection, key, gone)


def set_deleted(connection: Connection, key: int, at: str | None) -> None:
    """Hide a home, or bring it back."""
    of_home = tables.home.c.id == key
    connection.execute(update(tables.home).where(of_home).values(deleted_at=at))


def _rows(connection: Connection, key: int, table: Table) -> Iterable[Any]:
    place = tables.item
    query = (
        select(table)
        .join(
            place, (place.c.home_id == table.c.home_id) & (place.c.ref == table.c.ref)
        )
        .where(table.c.home_id == key)
        .order_by(place.c.position)
    )
    return connection.execute(query).mappings()


def _links(connection: Connection, key: int) -> dict[tuple[str, str], tuple[str, ...]]:
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    query = select(tables.link).where(tables.link.c.home_id == key)
    for row in connection.execute(query.order_by(tables.link.c.position)):
        place = (row.owner, row.field)
        found[place] = (*found.get(place, ()), row.target)
    return found


def _write_sort(
    connection: Connection, key: int, cls: type[Item], old: Record, new: Record
) -> None:
    before = {item.ref: item for item in old.of(cls)}
    after = {item.ref: item for item in new.of(cls)}
    added = [item for ref, item in after.items() if ref not in before]
    changed = [i for ref, i in after.items() if ref in before and before[ref] != i]
    table = tables.by_sort[cls.sort]
    if added:
        _add_places(connection, key, added)
        connection.execute(
            insert(table), [_values(i) | {"home_id": key} for i in added]
        )
    for item in changed:
        this = (table.c.home_id == key) & (table.c.ref == item.ref)
        connection.execute(update(table).where(this).values(_values(item)))
    _write_links(connection, key, cls, changed, added)
    at_the_end = [*(ref for ref in before if ref in after), *(i.ref for i in added)]
    if list(after) != at_the_end:
        _write_order(connection, key, list(after))


def _add_places(connection: Connection, key: int, added: list[Item]) -> None:
    """Give new items their places, behind all that are there."""
    item = tables.item
    query = select(func.max(item.c.position)).where(item.c.home_id == key)
    first = (connection.execute(query).scalar() or 0) + 1
    rows = [
        {"home_id": key, "ref": i.ref, "sort": i.sort, "position": first + n}
        for n, i in enumerate(added)
    ]
    connection.execute(insert(item), rows)


def _write_links(
    connection: Connection,
    key: int,
    cls: type[Item],
    changed: list[Item],
    added: list[Item],
) -> None:
    names = _LISTS[cls.sort]
    if not names:
        return
    link = tables.link
    for item in changed:
        this = (link.c.home_id == key) & (link.c.owner == item.ref)
        connection.execute(delete(link).where(this))
    rows = [
        {
            "home_id": key,
            "owner": item.ref,
            "field": name,
            "position": position,
            "target": target,
        }
        for item in (*changed, *added)
        for name in names
        for position, target in enumerate(getattr(item, name))
    ]
    if rows:
        connection.execute(insert(link), rows)


def _write_order(connection: Connection, key: int, refs: list[str]) -> None:
    rows = [(position, key, ref) for position, ref in enumerate(refs)]
    if rows:
        connection.exec_driver_sql(
            "UPDATE item SET position = ? WHERE home_id = ? AND ref = ?", rows
        )


def _remove(connection: Connection, key: int, refs: set[str]) -> None:
    item = tables.item
    for ref in refs:
        this = (item.c.home_id == key) & (item.c.ref == ref)
        connection.execute(delete(item).where(this))


def _values(item: Item) -> dict[str, Any]:
    return {
        s.name: getattr(item, s.name) for s in specs(type(item)) if tables.stored(s)
    }
