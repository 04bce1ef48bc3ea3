"""Open a home, change it, take a change back, bring one in, put one away."""

from __future__ import annotations

import hashlib
import logging
from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import Connection

from app.domain.edits import Entry, entries_between
from app.domain.links import broken_links
from app.domain.record import Item, Record
from app.errors import ConflictError, InvalidError, NotFoundError, Problem
from app.services.undoing import InTheWayError, taken_back
from app.services.worked import Worked, memory
from app.store import changes, history, homes, settings

log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenHome:
    """A home as it stands in the file at one moment.

    Attributes:
        key: Its key.
        worked: Its record, and what follows from it.
    """

    key: int
    worked: Worked

    @property
    def record(self) -> Record:
        """The home with all that belongs to it."""
        return self.worked.record


def open_home(connection: Connection, ref: str) -> OpenHome:
    """Return a home with its record.

    Raises:
        NotFoundError: There is no home of this reference.
    """
    key = homes.home_id(connection, ref)
    if key is None:
        raise NotFoundError(f"There is no home “{ref}” here.")
    stamp = homes.stamp_of(connection, key)
    worked = memory.get(stamp, lambda: homes.load(connection, key))
    return OpenHome(key=key, worked=worked)


def add_home(connection: Connection, record: Record) -> int:
    """Write a new home; return its key.

    Raises:
        InvalidError: Its reference is taken.
    """
    ref = record.home.ref
    if ref in homes.home_refs(connection):
        reason = f"There is a home “{ref}” already, or there was. Choose another one."
        raise InvalidError(
            f"{reason} Nothing was changed.", (Problem("home.ref", reason),)
        )
    log.info("home added: %s", ref)
    return homes.add(connection, record, datetime.now(UTC))


def free_home_ref(connection: Connection, wanted: str) -> str:
    """Return a reference for a home that is not taken, made from one wanted."""
    taken = homes.home_refs(connection)
    if wanted not in taken:
        return wanted
    number = 2
    while f"{wanted[:28]}-{number}" in taken:
        number += 1
    return f"{wanted[:28]}-{number}"


def save(
    connection: Connection,
    at_start: OpenHome,
    new: Record,
    sentence: str,
    *,
    once: str | None = None,
) -> int | None:
    """Write a changed record, log the change, and return its number.

    A form that is sent twice, for its answer was lost, counts once.  Nothing changed:
    nothing is written, and None is returned.

    Raises:
        InvalidError: The home has taken a reference that another home has.
    """
    key, old = at_start.key, at_start.record
    sent = changes.change_sent_as(connection, key, once) if once else None
    if sent is not None:
        return sent.key
    entries = entries_between(old, new)
    if not entries:
        return None
    problems = broken_links(new)
    if problems:
        raise InvalidError("The record cannot be like that.", problems)
    if _ref_taken(connection, old, new):
        raise InvalidError(f"There is a home “{new.home.ref}” already, or there was.")
    homes.write(connection, key, old, new)
    return _log(connection, key, new, sentence, entries, once=once)


def undo(connection: Connection, at_start: OpenHome, number: int) -> Record:
    """Take a change back and return the record as it then is.

    Raises:
        NotFoundError: The home has no such change.
        ConflictError: It is undone already.
        InTheWayError: Something that it touched changed since, or is needed.
    """
    key, record = at_start.key, at_start.record
    change = changes.find_change(connection, key, number)
    if change is None:
        raise NotFoundError("There is no such change to undo.")
    if changes.undone_by(connection, key, number):
        raise ConflictError("This has been undone already.")
    back = taken_back(connection, key, record, change)
    if _ref_taken(connection, record, back):
        raise InTheWayError(
            "This cannot be undone: another home has the former reference now.", ()
        )
    homes.write(connection, key, record, back)
    changes.let_send_again(connection, key, number)
    sentence = f"Undone: {change.sentence}"
    entries = entries_between(record, back)
    _log(connection, key, back, sentence, entries, undoes=number)
    return back


def note_ref(connection: Connection, key: int, old: Record, new: Record) -> None:
    """Log that a home whose history was brought in has another reference here."""
    entries = entries_between(old, new)
    if entries:
        sentence = f"Taken in as {new.home.ref}; it was {old.home.ref}."
        _log(connection, key, new, sentence, entries)


def put_away(connection: Connection, at_start: OpenHome, at: datetime) -> None:
    """Delete a home; it can be brought back."""
    homes.set_deleted(connection, at_start.key, at.isoformat(timespec="seconds"))
    log.info("home deleted: %s", at_start.record.home.ref)


def bring_back(connection: Connection, ref: str) -> None:
    """Bring a deleted home back.

    Raises:
        NotFoundError: There was no such home.
    """
    key = homes.home_id(connection, ref, deleted=True)
    if key is None:
        raise NotFoundError(f"There is no deleted home “{ref}”.")
    homes.set_deleted(connection, key, None)
    log.info("home brought back: %s", ref)


def digest(items: Item | tuple[Item, ...]) -> str:
    """Return a short mark of how items stand, to tell whether they changed since."""
    values = items if isinstance(items, tuple) else (items,)
    text = "\n".join(value.model_dump_json() for value in values)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _ref_taken(connection: Connection, old: Record, new: Record) -> bool:
    """Return whether a home would take the reference that another home has or had."""
    changed = old.home.ref != new.home.ref
    return changed and new.home.ref in homes.home_refs(connection)


def _log(
    connection: Connection,
    key: int,
    new: Record,
    sentence: str,
    entries: tuple[Entry, ...],
    *,
    undoes: int | None = None,
    once: str | None = None,
) -> int:
    refs = [item.ref for e in entries if (item := e.after or e.before)]
    log.info("home %d changed: %s", key, ", ".join(refs))
    phone = connection.get_execution_options().get("made_by")
    number = changes.record_change(
        connection,
        key,
        at=datetime.now(UTC),
        sentence=sentence,
        entries=entries,
        undoes=undoes,
        once=once,
        made_by=phone or settings.computer_name(connection),
    )
    history.note_touched(connection, key, number, sentence, entries)
    history.keep_whole_when_due(connection, key, number, new)
    return number
