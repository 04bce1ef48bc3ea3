"""Add a photograph or a paper to things of the record; give out what is shown of it."""

from __future__ import annotations

import logging
import re
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Literal

from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from app.config import Config
from app.domain.edits import added, new_ref, replaced
from app.domain.record import SHORT, Attachment, Record
from app.errors import DatabaseError, InvalidError
from app.pictures import media_type_of, shown_of
from app.services.homes import OpenHome, save
from app.store import files
from app.store.engine import make_engine, writing

log = logging.getLogger(__name__)

# Control characters, half characters, and those that turn the writing round.
UNSEEN = re.compile(
    "[\x00-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff\ufeff]"
)
State = Literal["missing", "damaged"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """A file that was looked at and may be taken.

    Attributes:
        data: Its bytes, as they came.
        digest: Their SHA-256.
        media_type: What it is, by its content.
        file_name: What it was called, on one line and without its folders.
        jpegs: What is shown of a picture, by size; nothing for a PDF.
        taken_on: The day that the camera wrote into it, if it did.
    """

    data: bytes
    digest: str
    media_type: str
    file_name: str
    jpegs: dict[str, bytes]
    taken_on: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Attached:
    """What became of a file that was sent.

    Attributes:
        ref: Reference of its row.
        done: Number of the change; None when the record said all of it before.
        was_here: Whether the home had this very content before.
    """

    ref: str
    done: int | None
    was_here: bool


def looked_at(data: bytes, file_name: str) -> Sent:
    """Return a file as it may be taken; nothing is written yet.

    Raises:
        InvalidError: It is not taken; a sentence says why, and what to do.
    """
    media_type = media_type_of(data)
    shown = shown_of(data, media_type) if media_type.startswith("image/") else None
    return Sent(
        data=data,
        digest=files.digest_of(data),
        media_type=media_type,
        file_name=plain_name(file_name),
        jpegs=shown.jpegs if shown else {},
        taken_on=shown.taken_on if shown else None,
    )


def plain_name(file_name: str) -> str:
    """Return the name of a file as plain text: one line, no folders."""
    return one_line(re.split(r"[\\/]", file_name)[-1])


def one_line(text: str) -> str:
    """Return a text as a caption may hold it: one line, what a screen shows."""
    return " ".join(UNSEEN.sub(" ", text).split())[:SHORT].strip()


def attach(
    connection: Connection,
    start: OpenHome,
    folder: Path,
    sent: Sent,
    *,
    of: tuple[str, ...] = (),
    caption: str = "",
    added_by: str = "",
) -> Attached:
    """Add a file to things of a home, or to the home itself, as one change.

    A content that the home has already is not kept twice: its row belongs to these
    things too.

    Args:
        connection: An open transaction, which holds the write lock.
        start: The home as it stands.
        folder: Where the bytes are kept.
        sent: The file.
        of: References of the things; none: the home.
        caption: What it shows.
        added_by: Name of the phone that sent it.

    Raises:
        InvalidError: There is no such thing in this home.
        DatabaseError: The bytes cannot be written.
    """
    record = start.record
    for ref in of:
        if ref not in record.by_ref:
            raise InvalidError(f"There is no {ref} in this home. Nothing was changed.")
    known = next((a for a in record.attachments if a.sha256 == sent.digest), None)
    row = _more(known, of, caption) if known else _row(record, sent, of, caption)
    if known is None:
        row = row.model_copy(update={"added_by": added_by})
    # The bytes first: a row must not be there without them.
    keep(folder, sent)
    new = replaced(record, row.ref, row) if known else added(record, row)
    done = save(connection, start, new, _sentence(record, row, sent, known))
    return Attached(ref=row.ref, done=done, was_here=known is not None)


def keep(folder: Path, sent: Sent) -> None:
    """Write a file, and what is shown of it; both are then on the disk.

    Raises:
        DatabaseError: They cannot be written.
    """
    try:
        files.keep(folder, sent.digest, sent.data)
        for size, jpeg in sent.jpegs.items():
            path = files.path_of(folder, sent.digest, size)
            if not path.is_file():
                files.write(path, jpeg)
    except OSError as error:
        reason = error.strerror or error
        raise DatabaseError(
            f"The file could not be written to {folder}: {reason}. Nothing was changed."
        ) from error


def shown(folder: Path, attachment: Attachment, size: str) -> bytes | None:
    """Return what is shown of a picture, made anew where it is not there.

    None: it is no picture, its file is not here, or it cannot be read.
    """
    if not attachment.is_picture:
        return None
    path = files.path_of(folder, attachment.sha256, size)
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return _made_anew(folder, attachment).get(size)


def is_here(folder: Path, attachment: Attachment) -> bool:
    """Return whether the bytes of a file are here."""
    return files.is_here(folder, attachment.sha256)


def original(folder: Path, attachment: Attachment) -> bytes | None:
    """Return a file as it came; None when it is not here."""
    try:
        return files.path_of(folder, attachment.sha256).read_bytes()
    except FileNotFoundError:
        return None


def unsound(
    folder: Path, attachments: Iterable[Attachment]
) -> Iterator[tuple[Attachment, State]]:
    """Yield each file that is not here, or is not what its row says."""
    for attachment in attachments:
        if not files.is_here(folder, attachment.sha256):
            yield attachment, "missing"
        elif not files.is_sound(folder, attachment.sha256):
            yield attachment, "damaged"


def not_here(config: Config) -> int:
    """Return how many contents the record names that are not here."""
    named = files.digests_in(config.database)
    return sum(not files.is_here(config.files, digest) for digest in named)


def clear_orphans(config: Config, before: datetime) -> tuple[str, ...]:
    """Remove files from before a moment that no row and no change names.

    What a change names is kept, since undoing it brings the row back.  When another
    program is writing for long, nothing is removed this time.
    """
    if not config.files.is_dir():
        return ()
    try:
        with writing(make_engine(config.database)):
            named = files.digests_in(config.database)
            gone = files.clear_orphans(config.files, named, before.timestamp())
    except (OperationalError, OSError) as error:
        log.warning("files that nothing names were not cleared: %s", error)
        return ()
    if gone:
        log.info("files that nothing names were cleared: %d", len(gone))
    return gone


def _made_anew(folder: Path, attachment: Attachment) -> dict[str, bytes]:
    data = original(folder, attachment)
    if data is None:
        return {}
    try:
        jpegs = shown_of(data, attachment.media_type).jpegs
    except InvalidError as error:
        log.warning("%s cannot be shown: %s", attachment.ref, error.sentence)
        return {}
    for size, jpeg in jpegs.items():
        # On a full disk it is shown all the same.
        with suppress(OSError):
            files.write(files.path_of(folder, attachment.sha256, size), jpeg)
    return jpegs


def _row(record: Record, sent: Sent, of: tuple[str, ...], caption: str) -> Attachment:
    return Attachment(
        ref=new_ref(record, Attachment),
        of=of,
        sha256=sent.digest,
        media_type=sent.media_type,
        size=len(sent.data),
        file_name=sent.file_name,
        caption=caption,
        taken_on=sent.taken_on,
        added_at=f"{datetime.now(UTC):%Y-%m-%dT%H:%M:%SZ}",
    )


def _more(known: Attachment, of: tuple[str, ...], caption: str) -> Attachment:
    belongs = tuple(dict.fromkeys((*known.of, *of)))
    update = {"of": belongs, "caption": known.caption or caption}
    return known.model_copy(update=update)


def _sentence(
    record: Record, row: Attachment, sent: Sent, known: Attachment | None
) -> str:
    what = "photograph" if sent.jpegs else "file"
    titles = [item.title for ref in row.of if (item := record.by_ref.get(ref))]
    whose = f" to {', '.join(titles)}" if titles else ""
    if known is not None:
        return (
            f"The {what} {row.title} ({row.ref}) now belongs{whose or ' to the home'}."
        )
    return f"Added {what} {row.title} ({row.ref}){whose}."
