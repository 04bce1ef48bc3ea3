"""The past of a home: its record at a moment, what was done, and all of that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import NoReturn

from sqlalchemy import Connection

from app.domain.edits import entries_between, stepped_back
from app.domain.history import (
    Compared,
    Happened,
    History,
    PastChange,
    walked_back,
)
from app.domain.record import Record
from app.domain.told import former_refs, told
from app.domain.uk_time import uk_time
from app.domain.words import day
from app.errors import ConflictError, InvalidError, NotFoundError
from app.services.homes import OpenHome
from app.store import changes, homes
from app.store import history as log
from app.store.changes import Change, undone_among

ELSEWHERE = "another computer"
NO_END = 2**31
# A second before it there still is one.
EARLIEST = datetime(1970, 1, 1, tzinfo=UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class AsOf:
    """A record as it stood.

    Attributes:
        record: The record.
        at: The moment, UTC.
        until: Number of the first change that came after; None: it still stands so.
    """

    record: Record
    at: datetime
    until: int | None


def when(at: datetime) -> str:
    """Return a moment as it is said: day and time in the United Kingdom."""
    local = uk_time(at)
    return f"{day(local)}, {local:%H:%M}"


def as_of(connection: Connection, home: OpenHome, at: datetime, now: datetime) -> AsOf:
    """Return the record as it stood at a moment.

    Args:
        connection: A connection.
        home: The home as it stands.
        at: The moment, UTC.
        now: The present, UTC.

    Raises:
        InvalidError: It lies before the record began, or is still to come.
        ConflictError: The log does not lead back so far.
    """
    began = homes.began_at(connection, home.key)
    if at < began:
        _refuse(f"The record of this home begins on {when(began)}.")
    if at > now and uk_time(at).date() > uk_time(now).date():
        _refuse("That day is still to come.")
    until = log.first_after(connection, home.key, at)
    if until is None:
        return AsOf(record=home.record, at=at, until=None)
    return AsOf(record=before(connection, home, until), at=at, until=until)


def before(connection: Connection, home: OpenHome, number: int) -> Record:
    """Return the record as it stood before a change.

    Raises:
        ConflictError: The log does not lead back so far.
    """
    whole = log.whole_from(connection, home.key, number)
    record, last = whole or (home.record, None)
    for change in log.changes_from(connection, home.key, number, last):
        back = stepped_back(record, change.entries)
        if back is None:
            raise ConflictError(
                f"The log leads back to {when(change.at)} only: change {change.key}, "
                f"“{change.sentence}”, does not fit what follows it."
            )
        record = back
    return record


def compare(earlier: AsOf, later: AsOf) -> Compared:
    """Return what differs between the record at two moments."""
    entries = entries_between(earlier.record, later.record)
    return Compared(
        earlier=moment(earlier.at),
        later=moment(later.at),
        items=told(entries, later.record, earlier.record),
    )


def happened(
    connection: Connection, home: OpenHome, found: Iterable[Change]
) -> tuple[Happened, ...]:
    """Return changes told: what each did to each item, and whether it stands."""
    shown = tuple(found)
    undone = undone_among(connection, home.key, tuple(each.key for each in shown))
    return tuple(
        Happened(
            number=each.key,
            at=moment(each.at),
            sentence=each.sentence,
            made_by=each.made_by,
            undoes=each.undoes,
            undone_by=undone.get(each.key),
            items=told(each.entries, home.record),
        )
        for each in shown
    )


def changes_of(
    connection: Connection,
    home: OpenHome,
    ref: str,
    most: int,
    number: int | None = None,
) -> tuple[tuple[Change, ...], str]:
    """Return the newest changes of one item, and what its reference was before them.

    Args:
        connection: A connection.
        home: The home.
        ref: Reference of the item.
        most: How many at the most.
        number: Only those before this change.
    """
    found: list[Change] = []
    while len(found) < most:
        more = log.find_changes(
            connection, home.key, most - len(found), before=number, ref=ref
        )
        former = None
        for change in more:
            found.append(change)
            former = former_refs(change.entries).get(ref)
            if former is not None:
                ref, number = former, change.key
                break
        if former is None:
            break
    return tuple(found), ref


def known_ref(connection: Connection, home: OpenHome, ref: str) -> str:
    """Return a reference, of something that is there or once was.

    Raises:
        NotFoundError: Nothing ever had it.
    """
    if ref in home.record.by_ref or log.find_changes(connection, home.key, 1, ref=ref):
        return ref
    name = home.record.home.ref
    raise NotFoundError(f"There is no “{ref}” in {name}, and never was.")


def changes_since(
    connection: Connection, home: OpenHome, since: datetime | None, ref: str = ""
) -> tuple[Change, ...]:
    """Return the changes that count as made since a moment, newest first.

    Args:
        connection: A connection.
        home: The home.
        since: The moment, UTC; None: all changes.
        ref: Only those of the item of this reference.
    """
    first: int | None = 0
    if since is not None:
        just_before = max(since, EARLIEST) - timedelta(seconds=1)
        first = log.first_after(connection, home.key, just_before)
    if first is None:
        return ()
    if not ref:
        return tuple(log.changes_from(connection, home.key, first))
    own, _ = changes_of(connection, home, ref, NO_END)
    return tuple(change for change in own if change.key >= first)


def whole_history(connection: Connection, home: OpenHome) -> History:
    """Return all that was done to a home, to take along."""
    own = tuple(log.changes_from(connection, home.key))[::-1]
    place = {change.key: n for n, change in enumerate(own, 1)}
    return History(
        began=homes.began_at(connection, home.key),
        changes=tuple(
            PastChange(
                at=change.at,
                sentence=change.sentence,
                made_by=change.made_by,
                undoes=place.get(change.undoes or 0),
                entries=change.entries,
            )
            for change in own
        ),
    )


def bring_history(
    connection: Connection, key: int, record: Record, history: History
) -> None:
    """Write the history of a home that was just added.

    Args:
        connection: An open transaction.
        key: Key of the home.
        record: The record that the history leads to.
        history: What was done to it elsewhere.
    """
    homes.set_began(connection, key, history.began)
    keys: list[int] = []
    for past in history.changes:
        number = changes.record_change(
            connection,
            key,
            at=past.at,
            sentence=past.sentence,
            entries=past.entries,
            undoes=keys[past.undoes - 1] if past.undoes else None,
            made_by=past.made_by or ELSEWHERE,
        )
        log.note_touched(connection, key, number, past.sentence, past.entries)
        keys.append(number)
    for place, then in walked_back(record, history):
        if (place + 1) % log.SNAPSHOT_EVERY == 0:
            log.keep_whole(connection, key, keys[place], then)


def moment(at: datetime) -> str:
    """Return a moment as documents write it: UTC, to the second."""
    return f"{at.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"


def _refuse(sentence: str) -> NoReturn:
    raise InvalidError(sentence)
