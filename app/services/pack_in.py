"""A pack coming in: checked against its manifest, whole or not at all."""

from __future__ import annotations

import hashlib
import io
import lzma
import zipfile
import zlib
from dataclasses import dataclass
from typing import NoReturn

from app.domain.record import Record
from app.errors import InvalidError, Problem
from app.interchange.document import Document, document_from
from app.services.files import Sent, looked_at
from app.services.pack import MANIFEST

MOST_FILES, MOST_BYTES = 5000, 2**30
# Text may shrink to a hundredth; what shrinks to less is made to fill a disk.
MOST_RATIO = 200
RECORD = "record.json"
KEPT = ("photographs/", "files/")
# What the library raises on a file that was damaged on the way.
BROKEN = (
    zipfile.BadZipFile,
    NotImplementedError,
    RuntimeError,
    EOFError,
    OSError,
    ValueError,
    lzma.LZMAError,
    zlib.error,
)
START = b"PK\x03\x04"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unpacked:
    """What a pack holds: the document, and each file that a row names."""

    document: Document
    files: tuple[Sent, ...]


def is_pack(data: bytes) -> bool:
    """Return whether something is a zip file, going by its first bytes."""
    return data.startswith(START)


def unpacked(data: bytes) -> Unpacked:
    """Return what a pack holds.

    Raises:
        InvalidError: It is damaged, too large, or not as its manifest says; its
            problems say which file.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            contents = _contents(archive)
    except InvalidError:
        raise
    except BROKEN as error:
        _refuse("This is no whole zip file", Problem("the file", str(error)))
    _check(contents)
    document = document_from(contents[RECORD])
    return Unpacked(document=document, files=_files(document.record, contents))


def _contents(archive: zipfile.ZipFile) -> dict[str, bytes]:
    entries = [entry for entry in archive.infolist() if not entry.is_dir()]
    whole = sum(entry.file_size for entry in entries)
    small = sum(entry.compress_size for entry in entries)
    if len(entries) > MOST_FILES or whole > MOST_BYTES or whole > MOST_RATIO * small:
        files = "1 file" if len(entries) == 1 else f"{len(entries)} files"
        reason = f"Unpacked it would hold {max(whole // 10**6, 1)} MB in {files}."
        _refuse("This pack is larger than any", Problem("the file", reason))
    found = {}
    for entry in entries:
        _, slash, name = entry.filename.partition("/")
        parts = name.split("/")
        if not slash or not name or {"", ".", ".."} & set(parts) or "\\" in name:
            problem = Problem(entry.filename[:200], "No pack has such a name.")
            _refuse("This is no pack of this program", problem)
        found[name] = archive.read(entry)
    return found


def _check(contents: dict[str, bytes]) -> None:
    if MANIFEST not in contents or RECORD not in contents:
        name = RECORD if MANIFEST in contents else MANIFEST
        _refuse("This is no pack of this program", Problem(name, "It is not there."))
    lines = contents.pop(MANIFEST).decode("utf-8", "replace").splitlines()
    said = {name: digest for digest, _, name in (li.partition("  ") for li in lines)}
    found = {n: hashlib.sha256(c).hexdigest() for n, c in contents.items()}
    problems = [
        Problem(name, "It is not as the manifest says.")
        for name in sorted({*said, *found})
        if said.get(name) != found.get(name)
    ]
    if problems:
        _refuse("Something in this pack was changed or is missing", *problems)


def _files(record: Record, contents: dict[str, bytes]) -> tuple[Sent, ...]:
    named = {row.sha256: row for row in record.attachments}
    found = []
    for name, content in contents.items():
        if not name.startswith(KEPT):
            continue
        row = named.get(hashlib.sha256(content).hexdigest())
        if row is None:
            _refuse("No row names this file", Problem(name, "It belongs to nothing."))
        found.append(looked_at(content, row.file_name))
    return tuple(found)


def _refuse(what: str, *problems: Problem) -> NoReturn:
    raise InvalidError(f"{what}. Nothing was changed.", problems)
