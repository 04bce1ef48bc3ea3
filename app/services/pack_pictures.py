"""The photographs and other files that go along in a pack."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from app.domain.record import Attachment, Record
from app.services import files

ENDINGS = {
    "image/jpeg": "jpg",
    "image/png": "png",
    "image/webp": "webp",
    "image/heic": "heic",
    "application/pdf": "pdf",
}
Gives = Callable[[Attachment], bytes | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Store:
    """Where the bytes of files come from.

    Attributes:
        shown: Gives a picture without anything that the camera wrote into it.
        original: Gives a file as it came.
    """

    shown: Gives
    original: Gives


NOWHERE = Store(shown=lambda _file: None, original=lambda _file: None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What goes along.

    Attributes:
        record: The record, its rows naming what is in the pack.
        files: Each file by its name in the pack.
        jpegs: What is shown of each picture, by the digest in its row.
    """

    record: Record
    files: dict[str, bytes] = field(default_factory=dict)
    jpegs: dict[str, bytes] = field(default_factory=dict)


def store_in(folder: Path) -> Store:
    """Return the files of a data folder."""
    return Store(
        shown=lambda file: files.shown(folder, file, "large"),
        original=lambda file: files.original(folder, file),
    )


def carried(record: Record, store: Store, *, originals: bool) -> Carried:
    """Return the files of a record as a pack holds them.

    A picture goes as it is shown, and its row then names that; as it came only where
    the originals go along.  A file that is not here is left out, its row stays.
    """
    made = Carried(record=record)
    rows = tuple(_carry(row, store, made, originals) for row in record.attachments)
    return Carried(
        record=record.having(attachments=rows), files=made.files, jpegs=made.jpegs
    )


def _carry(
    row: Attachment,
    store: Store,
    made: Carried,
    originals: bool,  # noqa: FBT001 - one of two ways, said at the call
) -> Attachment:
    shown = store.shown(row) if row.is_picture else None
    content = store.original(row) if originals or not row.is_picture else shown
    if content is None:
        return row
    if content is shown:
        row = row.model_copy(
            update={
                "sha256": hashlib.sha256(content).hexdigest(),
                "media_type": "image/jpeg",
                "size": len(content),
            }
        )
    folder = "photographs" if row.is_picture else "files"
    made.files[f"{folder}/{row.ref}.{ENDINGS[row.media_type]}"] = content
    if shown is not None:
        made.jpegs[row.sha256] = shown
    return row
