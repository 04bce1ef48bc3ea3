"""What came back: kept, set beside the record, taken or turned down one by one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import Connection

from app.domain.edits import Entry
from app.domain.record import Record
from app.domain.replies import (
    OTHER,
    Correction,
    Reply,
    accepted,
    correction_key,
    differences,
    in_home_notes,
    key_of,
    named,
    noted,
    open_corrections,
    other_is_open,
    with_needed,
    with_paper,
)
from app.domain.told import told
from app.errors import ConflictError, NotFoundError
from app.interchange.document import from_document, to_document
from app.services.homes import OpenHome, save
from app.store import replies
from app.store.replies import KeptReply

GONE = "This has been dealt with already, or the record has changed since."


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenReply:
    """A reply beside the record as it stands.

    Attributes:
        kept: The reply as it is kept.
        reply: Who says so, and what in words.
        entries: What a returned record says otherwise, still open.
        corrections: What is said in words, still open.
        other: Whether what else was said is still open.
    """

    kept: KeptReply
    reply: Reply
    entries: tuple[Entry, ...]
    corrections: tuple[Correction, ...]
    other: bool

    @property
    def open(self) -> int:
        """How much is still open."""
        return len(self.entries) + len(self.corrections) + self.other


def bring_back(
    connection: Connection, home: OpenHome, reply: Reply, returned: Record | None
) -> int:
    """Keep what came back; return its number.  What came before is not kept twice."""
    words = reply.model_dump_json()
    document = to_document(returned) if returned else ""
    known = replies.same_reply(connection, home.key, words=words, document=document)
    return known or replies.keep_reply(
        connection, home.key, at=datetime.now(UTC), words=words, document=document
    )


def beside(record: Record, kept: KeptReply) -> OpenReply:
    """Return a reply set beside the record."""
    reply = Reply.model_validate_json(kept.words)
    entries: tuple[Entry, ...] = ()
    if kept.document:
        returned = from_document(kept.document.encode())
        entries = differences(record, returned, kept.turned_down)
    words = open_corrections(record, reply, kept.turned_down)
    other = other_is_open(record, reply, kept.turned_down)
    return OpenReply(
        kept=kept, reply=reply, entries=entries, corrections=words, other=other
    )


def open_replies(connection: Connection, home: OpenHome) -> tuple[OpenReply, ...]:
    """Return every reply of a home, the newest first."""
    found = replies.replies_of(connection, home.key)
    return tuple(beside(home.record, kept) for kept in found)


def open_reply(connection: Connection, home: OpenHome, key: int) -> OpenReply:
    """Return one reply.

    Raises:
        NotFoundError: There is no such reply.
    """
    kept = replies.find_reply(connection, home.key, key)
    if kept is None:
        raise NotFoundError("There is no such reply; perhaps it was thrown away.")
    return beside(home.record, kept)


def accept(
    connection: Connection, home: OpenHome, found: OpenReply, key: str, way: str
) -> int | None:
    """Take one difference; return the number of the change.

    Args:
        connection: An open transaction.
        home: The home as it stands.
        found: The reply.
        key: What the difference is known by.
        way: ``name`` or ``note`` for what is said in words.

    Raises:
        ConflictError: It is no longer open.
        InvalidError: The record cannot be like that.
    """
    record = with_paper(home.record, found.reply)
    entry = next((e for e in found.entries if key_of(e) == key), None)
    said = next((c for c in found.corrections if correction_key(c) == key), None)
    if entry is not None:
        every = with_needed(home.record, entry, found.entries)
        record = accepted(record, every, found.reply)
        what = told([entry], home.record)[0].name
    elif said is not None and said.ref in home.record.by_ref:
        named_ = named(record, said) if way == "name" else record
        record = named_ if named_ != record else noted(record, said, found.reply)
        what = home.record.by_ref[said.ref].title
    elif key == OTHER and found.other:
        record, what = in_home_notes(record, found.reply), "the notes of the home"
    else:
        raise ConflictError(GONE)
    sentence = f"Accepted from {found.reply.document}: {what}."
    return save(connection, home, record, sentence[:400])


def turn_down(connection: Connection, found: OpenReply, key: str) -> None:
    """Turn one difference down; the record stays as it is.

    Raises:
        ConflictError: It is no longer open.
    """
    known = {key_of(entry) for entry in found.entries}
    known |= {correction_key(each) for each in found.corrections}
    known |= {OTHER} if found.other else set()
    if key not in known:
        raise ConflictError(GONE)
    keys = (*found.kept.turned_down, key)
    replies.set_turned_down(connection, found.kept.key, keys)
