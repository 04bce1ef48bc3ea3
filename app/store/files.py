"""The bytes of photographs and papers: kept once by their content, never changed.

A file lies at ``ab/abcd…``, named by its SHA-256; what is shown of a picture lies
beside it.  It is on the disk before a row names it: there is never a row without its
file.  A file that no row names is an orphan, and is cleared away at a start.  Files are
kept inside the transaction that writes their rows, so that whoever holds the write lock
knows that no one else is between the two.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing
from pathlib import Path

from app.store.engine import WAIT_S

DIGEST = re.compile(r"[0-9a-f]{64}")
PARTIAL = ".partial"


def digest_of(data: bytes) -> str:
    """Return the SHA-256 of a content, by which it is named."""
    return hashlib.sha256(data).hexdigest()


def path_of(folder: Path, digest: str, size: str = "") -> Path:
    """Return where a content lies, or what is shown of it in a size."""
    return folder / digest[:2] / (f"{digest}.{size}.jpg" if size else digest)


def is_here(folder: Path, digest: str) -> bool:
    """Return whether a content is here."""
    return path_of(folder, digest).is_file()


def is_sound(folder: Path, digest: str) -> bool:
    """Return whether a content is here, and is what its name says."""
    try:
        with path_of(folder, digest).open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest() == digest
    except FileNotFoundError:
        return False


def keep(folder: Path, digest: str, data: bytes) -> None:
    """Write a content where it is not, or where it is damaged; it is then on the disk.

    Raises:
        OSError: It cannot be written.
    """
    if not is_sound(folder, digest):
        write(path_of(folder, digest), data)


def write(path: Path, data: bytes) -> None:
    """Write a file whole or not at all; on return it and its name are on the disk."""
    _make_folder(path.parent)
    handle, name = tempfile.mkstemp(dir=path.parent, suffix=PARTIAL)
    partial = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        partial.replace(path)
    finally:
        partial.unlink(missing_ok=True)
    _sync(path.parent)


def digests_in(database: Path) -> frozenset[str]:
    """Return every content that a file's rows name, or its changes, to be undone."""
    if not database.is_file():
        return frozenset()
    with closing(sqlite3.connect(database, timeout=WAIT_S)) as file:
        tables = {row[0] for row in file.execute("SELECT name FROM sqlite_master")}
        found: set[str] = set()
        if "attachment" in tables:
            found |= {row[0] for row in file.execute("SELECT sha256 FROM attachment")}
        if "change" in tables:
            query = """SELECT entries FROM "change" WHERE entries LIKE '%"sha256"%'"""
            for (entries,) in file.execute(query):
                found |= set(DIGEST.findall(entries))
    return frozenset(found)


def digests_here(folder: Path) -> frozenset[str]:
    """Return every content that a folder holds."""
    names = (path.name for path in _files(folder))
    return frozenset(name for name in names if DIGEST.fullmatch(name))


def carry(source: Path, target: Path, digests: Iterable[str], *, link: bool) -> None:
    """Bring contents into another folder; those that are not in the first stay out.

    One that is sound there is never touched, and nothing damaged takes another's place.

    Args:
        source: Folder that holds them.
        target: Folder to bring them to.
        digests: Which.
        link: Whether one file may stand in both folders: it costs no room, but what
            damages one damages both.

    Raises:
        OSError: One cannot be written.
    """
    for digest in sorted(digests):
        old, new = path_of(source, digest), path_of(target, digest)
        if not old.is_file() or is_sound(target, digest):
            continue
        if new.exists() and not is_sound(source, digest):
            continue
        _make_folder(new.parent)
        if not (link and _linked(old, new)):
            write(new, old.read_bytes())


def clear_orphans(folder: Path, used: frozenset[str], before: float) -> tuple[str, ...]:
    """Remove what no row and no change names; return the contents removed.

    To be called while holding the write lock.

    Args:
        folder: The files.
        used: Contents that are named.
        before: Only what is older is removed, in seconds since 1970.
    """
    gone = set()
    for path in list(_files(folder)):
        digest = path.name.partition(".")[0]
        if digest not in used and path.stat().st_mtime < before:
            path.unlink(missing_ok=True)
            gone.add(digest)
    return tuple(sorted(d for d in gone if DIGEST.fullmatch(d)))


def _files(folder: Path) -> Iterator[Path]:
    """Yield what lies in the folders of two letters; nothing else there is ours."""
    for inner in folder.glob("[0-9a-f][0-9a-f]"):
        yield from (path for path in inner.iterdir() if path.is_file())


def _linked(old: Path, new: Path) -> bool:
    """Let a second name stand for a file, where the disk can do that."""
    partial = new.with_name(f"{new.name}{PARTIAL}")
    try:
        partial.unlink(missing_ok=True)
        os.link(old, partial)
        partial.replace(new)
    except OSError:
        partial.unlink(missing_ok=True)
        return False
    _sync(new.parent)
    return True


def _make_folder(folder: Path) -> None:
    """Make a folder for its owner only, and its name on the disk too."""
    if folder.is_dir():
        return
    _make_folder(folder.parent)
    folder.mkdir(mode=0o700, exist_ok=True)
    _sync(folder.parent)


def _sync(folder: Path) -> None:
    """See that the names in a folder are on the disk; Windows does so by itself."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def remove_folder(folder: Path) -> None:
    """Remove a copy's files."""
    shutil.rmtree(folder, ignore_errors=True)
