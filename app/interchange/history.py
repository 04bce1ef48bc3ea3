"""The history within a document: each change with what differs, checked on the way in.

A change names an item as it was and as it became; of one that stayed, only the fields
that differ.  Reading goes back from the record, so that what does not lead to it is
found at once, with its place.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Annotated, Any

from pydantic import Field, ValidationError

from app.domain.edits import Entry, stepped_back
from app.domain.history import History, PastChange
from app.domain.record import SORTS, Home, Item, Record
from app.domain.record._field import LongText, Model, Moment, Ref, ShortText, field
from app.errors import Problem
from app.interchange.refusal import problem_of, refuse

MOST_CHANGES = 100_000
HOME = "home"
KEYS = ("began", "history")
NOT_LEADING = "It does not lead to what comes after it."


class EntryInFile(Model):
    """One item before and after; of one that stayed, only the fields that differ."""

    sort: Annotated[str, Field(pattern=f"^({'|'.join((HOME, *SORTS))})$")] = field(
        "Sort of the item, or home", ...
    )
    before: dict[str, Any] | None = field("As it was; null: it is new")
    after: dict[str, Any] | None = field("As it became; null: it is gone")
    follows_before: Ref | None = field("Which it followed in its list, as it was")
    follows_after: Ref | None = field("The same, as it became")


class ChangeInFile(Model):
    """One change."""

    at: Moment = field("When, in UTC", ...)
    sentence: LongText = field("What was done", ...)
    made_by: ShortText = field("Phone or computer it was done from", "")
    undoes: Annotated[int, Field(ge=1)] | None = field(
        "Place in this list, from 1, of the change that it took back"
    )
    entries: Annotated[tuple[EntryInFile, ...], Field(min_length=1)] = field(
        "What it did to each item", ...
    )


class HistoryInFile(Model):
    """All that was done to a home, the oldest first."""

    began: Moment = field("Since when the home is recorded, in UTC", ...)
    history: Annotated[tuple[ChangeInFile, ...], Field(max_length=MOST_CHANGES)] = (
        field("What was done to it, the oldest first", ())
    )


def history_values(history: History) -> dict[str, Any]:
    """Return a history as values that JSON can hold: ``began`` and ``history``."""
    return {
        "began": _moment(history.began),
        "history": [_change(change) for change in history.changes],
    }


def history_from(values: dict[str, Any], record: Record) -> History:
    """Return the history that a document holds.

    Args:
        values: What stands under ``began`` and ``history``.
        record: The record of the same document, which the history leads to.

    Raises:
        InvalidError: It is none, or does not lead to the record.
    """
    try:
        found = HistoryInFile.model_validate_json(json.dumps(values))
    except ValidationError as error:
        refuse([problem_of(e) for e in error.errors(include_url=False)])
    changes = list(_read_back(found, record))
    return History(began=_read(found.began), changes=tuple(reversed(changes)))


def _read_back(found: HistoryInFile, record: Record) -> Iterator[PastChange]:
    """Yield the changes as they are read, the newest first."""
    for place in range(len(found.history) - 1, -1, -1):
        change, where = found.history[place], f"history[{place}]"
        if change.undoes is not None and change.undoes > place:
            refuse([Problem(f"{where}.undoes", "It must be the place of one before.")])
        entries = tuple(
            _entry(entry, record, f"{where}.entries[{n}]")
            for n, entry in enumerate(change.entries)
        )
        before = stepped_back(record, entries)
        if before is None:
            refuse([Problem(where, NOT_LEADING)])
        record = before
        yield PastChange(
            at=_read(change.at),
            sentence=change.sentence,
            made_by=change.made_by,
            undoes=change.undoes,
            entries=entries,
        )


def _entry(entry: EntryInFile, record: Record, where: str) -> Entry:
    cls = Home if entry.sort == HOME else SORTS[entry.sort]
    after = entry.after and _as_it_stands(cls, entry.after, record, f"{where}.after")
    before = None
    if entry.before is not None:
        own = after.model_dump(mode="json") if after else {}
        before = _item(cls, own | entry.before, f"{where}.before")
    if before is None and after is None:
        refuse([Problem(where, "It names no item, neither before nor after.")])
    if before and after and before.ref != after.ref and entry.sort != HOME:
        refuse([Problem(f"{where}.before.ref", f"It must be {after.ref}.")])
    return Entry(
        sort=entry.sort,
        before=before,
        after=after or None,
        follows_before=entry.follows_before,
        follows_after=entry.follows_after,
    )


def _as_it_stands(
    cls: type[Item], values: dict[str, Any], record: Record, where: str
) -> Item:
    """Return the item that a change left behind, if it is as the change says."""
    ref = values.get("ref")
    items = (record.home,) if cls is Home else record.of(cls)
    item = next((each for each in items if each.ref == ref), None)
    if item is None:
        noun = cls.noun.lower()
        refuse([Problem(where, f"{NOT_LEADING} There is no {noun} “{ref}” then.")])
    stands = item.model_dump(mode="json")
    for name, value in values.items():
        if name not in stands or stands[name] != value:
            reason = f"{NOT_LEADING} {ref} holds something else then."
            refuse([Problem(f"{where}.{name}", reason)])
    return item


def _item(cls: type[Item], values: dict[str, Any], where: str) -> Item:
    try:
        return cls.model_validate_json(json.dumps(values))
    except ValidationError as error:
        refuse([problem_of(e, where) for e in error.errors(include_url=False)])


def _change(change: PastChange) -> dict[str, Any]:
    said = {"made_by": change.made_by, "undoes": change.undoes}
    return {
        "at": _moment(change.at),
        "sentence": change.sentence,
        **{name: value for name, value in said.items() if value},
        "entries": [_entry_values(entry) for entry in change.entries],
    }


def _entry_values(entry: Entry) -> dict[str, Any]:
    before = entry.before and entry.before.model_dump(mode="json")
    after = entry.after and entry.after.model_dump(mode="json")
    if before and after:
        differ = {n for n in after if n == "ref" or before[n] != after[n]}
        before = {name: value for name, value in before.items() if name in differ}
        after = {name: value for name, value in after.items() if name in differ}
    follows = {
        "follows_before": entry.follows_before,
        "follows_after": entry.follows_after,
    }
    return {
        "sort": entry.sort,
        "before": before,
        "after": after,
        **{name: ref for name, ref in follows.items() if ref},
    }


def _moment(at: datetime) -> str:
    return f"{at.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"


def _read(moment: str) -> datetime:
    return datetime.fromisoformat(moment)
