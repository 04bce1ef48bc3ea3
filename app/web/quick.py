"""The quick way in: twenty like things in one table, sent as one change.

A table has a row for each item that is there and some empty ones.  Some columns are
fields of the item; others stand for something beside it, such as the circuit that a
way feeds.  A row that someone else changed meanwhile is shown as both have it.
"""

from __future__ import annotations

import hashlib
import re
import secrets
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from flask import request
from flask_wtf import FlaskForm
from pydantic import ValidationError
from sqlalchemy import Connection
from wtforms import HiddenField

from app.domain.edits import added, new_ref, replaced
from app.domain.record import Item, Record, specs
from app.errors import InvalidError
from app.services.homes import OpenHome, digest, save
from app.web.fields import NOTHING, field_for
from app.web.forms import sent_once
from app.web.words import in_words

EMPTY_ROWS = 6
MOST_SHOWN = 100
NEW = "new~"
KEY = re.compile(rf"{NEW}[0-9]{{1,4}}|[A-Za-z0-9][A-Za-z0-9._-]{{0,31}}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A column for something beside the item.

    Attributes:
        name: Its name in the form.
        label: Its heading.
        make: Returns its unbound form field for a record.
        read: Returns what it holds for an item, by the record.
        write: Returns the record with what was entered for an item, where that is
            not what it read; InvalidError says why it cannot be.
        start: What an empty row begins with.
    """

    name: str
    label: str
    make: Callable[[Record], Any]
    read: Callable[[Record, Any], str]
    write: Callable[[Record, Any, str], Record]
    start: str = NOTHING


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of a table: a field of the item by its name, or something beside it.

    Attributes:
        of: Name of the field, or what stands beside.
        width: ``narrow``, ``choice``, ``wide``, or nothing.
    """

    of: str | Beside
    width: str = ""

    @property
    def name(self) -> str:
        """Its name in the form."""
        return self.of if isinstance(self.of, str) else self.of.name


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """What a table is of.

    Attributes:
        cls: Class of its items.
        columns: Its columns.
        own: Values that every new item gets, such as its board.
        first: Name of the column that says what a row is.
    """

    cls: type[Item]
    columns: tuple[Column, ...]
    first: str
    own: dict[str, Any] = field(default_factory=dict)


@dataclass(slots=True, kw_only=True)
class Row:
    """One row.

    Attributes:
        key: Reference of its item, or of an empty row.
        name: What it is called.
        form: Its bound form.
        item: Its item as it stands, if there is one.
        stored: For a stale row: what stands in the record now, label and words.
    """

    key: str
    name: str
    form: Any
    item: Item | None = None
    stored: tuple[tuple[str, str | None], ...] = ()

    @property
    def wrong(self) -> bool:
        """Whether something in it is to be put right."""
        return bool(self.form.errors)


@dataclass(slots=True, kw_only=True)
class Table:
    """A table with its rows, as shown or as sent.

    Attributes:
        layout: What it is of.
        rows: Its rows.
        once: Key by which a form that is sent twice counts once.
        refused: Sentences about no single field.
        left_out: How many further items it does not show.
    """

    layout: Layout
    rows: list[Row]
    once: str
    refused: tuple[str, ...] = ()
    left_out: int = 0

    @property
    def heads(self) -> list[tuple[str, str]]:
        """Heading and width of each column."""
        names = {s.name: s for s in specs(self.layout.cls)}
        return [
            (_head(names[c.of]) if isinstance(c.of, str) else c.of.label, c.width)
            for c in self.layout.columns
        ]

    @property
    def problems(self) -> list[tuple[str, str]]:
        """Each field to be put right: its id, and the sentence."""
        return [("", sentence) for sentence in self.refused] + [
            (f.id, f"{row.name}, {f.label.text}: {sentence}")
            for row in self.rows
            for f in row.form
            for sentence in f.errors
        ]

    @property
    def stale(self) -> bool:
        """Whether a row was changed by someone else meanwhile."""
        return any(row.stored for row in self.rows)


def shown(layout: Layout, record: Record, items: Sequence[Any]) -> Table:
    """Return a table of items as they stand, with empty rows after them."""
    form_class = _form_class(layout, record)
    rows = [_row(form_class, layout, record, item) for item in items[:MOST_SHOWN]]
    rows += [_empty(form_class, layout, n) for n in range(1, EMPTY_ROWS + 1)]
    left_out = max(len(items) - MOST_SHOWN, 0)
    once = secrets.token_hex(8)
    return Table(layout=layout, rows=rows, once=once, left_out=left_out)


def sent(layout: Layout, record: Record) -> Table:
    """Return a table as it was sent."""
    form_class = _form_class(layout, record)
    keys = [k.removesuffix("-mark") for k in request.form if k.endswith("-mark")]
    rows = []
    for key in filter(KEY.fullmatch, keys):
        item = record.by_ref.get(key)
        known = item if isinstance(item, layout.cls) else None
        form = form_class(prefix=f"{key}-")
        rows.append(Row(key=key, name=_name(known, key), form=form, item=known))
    return Table(layout=layout, rows=rows, once=request.form.get("once", ""))


def carried_out(table: Table, record: Record) -> Record | None:
    """Return the record with everything that was sent; None when a row is refused."""
    layout = table.layout
    empty = _empty(_form_class(layout, record), layout, 0)
    table.rows = [row for row in table.rows if not _left_alone(layout, row, empty)]
    table.refused = tuple(_gone(layout, row) for row in table.rows if _is_gone(row))
    good = [not table.refused, *(_checked(layout, r, record) for r in table.rows)]
    if not all(good):
        return None
    return _with_rows(table, record)


def saved(
    connection: Connection, start: OpenHome, table: Table, sentence: str
) -> int | None:
    """Save a table that was sent, as one change.

    Returns:
        The number of the change; 0 when nothing had changed; None when something is to
        be put right or was changed meanwhile, which the table then says.
    """
    record = carried_out(table, start.record)
    if record is None:
        return None
    try:
        return save(connection, start, record, sentence, once=sent_once()) or 0
    except InvalidError as error:
        table.refused = tuple(problem.reason for problem in error.problems)
        return None


def with_empty_rows(table: Table, record: Record) -> Table:
    """Return a table that was sent, with empty rows after what was typed."""
    form_class = _form_class(table.layout, record)
    used = [int(r.key.removeprefix(NEW)) for r in table.rows if r.key.startswith(NEW)]
    first = max(used, default=0) + 1
    more = range(first, first + EMPTY_ROWS)
    table.rows += [_empty(form_class, table.layout, n) for n in more]
    return table


def _head(spec: Any) -> str:
    return f"{spec.label}, {spec.unit}" if spec.unit else str(spec.label)


def _form_class(layout: Layout, record: Record) -> type[FlaskForm]:
    by_name = {s.name: s for s in specs(layout.cls)}
    fields: dict[str, Any] = {"mark": HiddenField()}
    for column in layout.columns:
        if isinstance(column.of, str):
            plain = replace(by_name[column.of], hint="")
            fields[column.name] = field_for(plain, record)
        else:
            fields[column.name] = column.of.make(record)
    fields["Meta"] = type("Meta", (), {"csrf": False})
    return type("RowForm", (FlaskForm,), fields)


def _row(form_class: Any, layout: Layout, record: Record, item: Item) -> Row:
    values = {
        c.name: getattr(item, c.of)
        if isinstance(c.of, str)
        else c.of.read(record, item)
        for c in layout.columns
    }
    mark = {"mark": _mark(layout, record, item)}
    form = form_class(None, prefix=f"{item.ref}-", data=values | mark)
    return Row(key=item.ref, name=_name(item, item.ref), form=form, item=item)


def _empty(form_class: Any, layout: Layout, number: int) -> Row:
    starts = {c.name: c.of.start for c in layout.columns if isinstance(c.of, Beside)}
    key = f"{NEW}{number}"
    form = form_class(None, prefix=f"{key}-", data={**starts, "mark": ""})
    return Row(key=key, name=_name(None, key), form=form)


def _name(item: Item | None, key: str) -> str:
    return item.ref if item else f"New {key.removeprefix(NEW)}"


def _mark(layout: Layout, record: Record, item: Item) -> str:
    """Return a short mark of how a row stands, with what is beside its item."""
    beside = [
        c.of.read(record, item) for c in layout.columns if isinstance(c.of, Beside)
    ]
    text = "\n".join((digest(item), *beside))
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _left_alone(layout: Layout, row: Row, empty: Row) -> bool:
    """A new row that stands as it was given is left alone; so is one cleared."""
    if row.item is not None:
        return False
    if _is_gone(row):
        return not row.form[layout.first].data
    names = [column.name for column in layout.columns]
    return all(_untouched(row.form[name], empty.form[name]) for name in names)


def _untouched(field: Any, empty: Any) -> bool:
    typed = str(field.raw_data[0]).strip() if field.raw_data else NOTHING
    return typed in (NOTHING, str(empty.data))


def _is_gone(row: Row) -> bool:
    return row.item is None and not row.key.startswith(NEW)


def _gone(layout: Layout, row: Row) -> str:
    label = row.form[layout.first].label.text
    return (
        f"{row.key} was deleted meanwhile. To leave it so, clear "
        f"“{label}” in its row; to have it again, enter it in a new row."
    )


def _checked(layout: Layout, row: Row, record: Record) -> bool:
    if not row.form.validate():
        return False
    try:
        item = _item(layout, row, row.key)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        name = str(first["loc"][0])
        target = row.form[name] if name in row.form else row.form[layout.first]
        target.errors = [first["msg"].removeprefix("Value error, ")]
        return False
    return not _stale(layout, row, item, record)


def _stale(layout: Layout, row: Row, typed: Item, record: Record) -> bool:
    """Say what now stands in a row changed meanwhile, to take it next time."""
    if row.item is None:
        return False
    mark = _mark(layout, record, row.item)
    if row.form.mark.data == mark:
        return False
    row.stored = tuple(_differing(layout, row, typed, record))
    row.form.mark.raw_data = [mark]
    row.form.mark.data = mark
    return bool(row.stored)


def _differing(
    layout: Layout, row: Row, typed: Item, record: Record
) -> Iterator[tuple[str, str | None]]:
    """Yield what stands in the record where a row has something else."""
    by_name = {s.name: s for s in specs(layout.cls)}
    for column in layout.columns:
        if isinstance(column.of, str):
            spec, now = by_name[column.of], getattr(row.item, column.of)
            if now != getattr(typed, column.of):
                yield spec.label, in_words(spec, now, record)
        else:
            box, now = row.form[column.name], column.of.read(record, row.item)
            if now != (box.data or NOTHING):
                words = {c[0]: c[1] for c in getattr(box, "iter_choices", tuple)()}
                yield column.of.label, words.get(now, now) or None


def _item(layout: Layout, row: Row, ref: str) -> Item:
    before = row.item
    kept = (
        {s.name: getattr(before, s.name) for s in specs(layout.cls)}
        if before
        else {**layout.own, "ref": ref.replace("~", "")}
    )
    columns = [c.of for c in layout.columns if isinstance(c.of, str)]
    return layout.cls.model_validate(kept | {n: row.form[n].value() for n in columns})


def _with_rows(table: Table, start: Record) -> Record | None:
    """Return the record with every row; None when one asks for what cannot be."""
    record = start
    try:
        for row in table.rows:
            record = _with_row(table.layout, start, record, row)
    except InvalidError as error:
        table.refused = (error.sentence,)
        return None
    return record


def _with_row(layout: Layout, start: Record, record: Record, row: Row) -> Record:
    if row.item is None:
        item = _item(layout, row, new_ref(record, layout.cls))
        record = added(record, item)
    else:
        item = _item(layout, row, row.item.ref)
        record = replaced(record, item.ref, item)
    for column in layout.columns:
        if isinstance(column.of, Beside):
            typed = row.form[column.name].data or NOTHING
            if row.item is None or typed != column.of.read(start, row.item):
                record = column.of.write(record, item, typed)
    return record
