"""Copies of the file: made by SQLite itself, checked, then given their name.

The photographs and papers that it names go along, into a folder beside the copy.

A file that is open is never copied or replaced as a file: its journal would be left
behind, and be taken for the journal of what stands there next.
"""

from __future__ import annotations

import os
import shutil
import sqlite3
import time
from collections.abc import Callable
from contextlib import closing
from datetime import datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from app.config import files_beside
from app.errors import DatabaseError
from app.store import copies, files
from app.store.engine import WAIT_S, begin_private

MOST_TRIES = 5
BESIDE = ("-journal", "-wal", "-shm")


class DamagedError(DatabaseError):
    """The file is not whole, or is no SQLite file."""


def back_up(
    database: Path, folder: Path, *, note: str, at: datetime, link: bool = True
) -> Path:
    """Copy a database into a folder as it is; return the copy's path.

    It is no good copy: nothing but SQLite has looked through it.  No other copy goes.

    Args:
        database: File to copy; it may be in use.
        folder: Where copies are kept.
        note: Why it is made, for its name.
        at: Now, UTC.
        link: Whether its files may be the very ones of the data folder.

    Raises:
        DatabaseError: There is no sound file to copy, or it cannot be written.
    """
    make_folder(folder)
    copy = copies.path_for(folder, note, at)
    copy_to(database, copy, link=link)
    return copy


def make_folder(folder: Path) -> None:
    """Make a folder, for its owner only: a record is private.

    Raises:
        DatabaseError: It cannot be made.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DatabaseError(f"The folder {folder} cannot be made: {error}.") from error


def copy_to(
    database: Path,
    target: Path,
    *,
    link: bool = False,
    same_as: Path | None = None,
    look: Callable[[Path], None] | None = None,
    lacking: Path | None = None,
) -> int:
    """Copy a database to a path that it takes only when whole, and looked through.

    Args:
        database: File to copy; it may be in use.
        target: Where to; the files that it names go into the folder beside that.
        link: Whether a file may stand in both folders, so that it costs no room.
        same_as: A folder whose files may stand in the new one too.
        look: Looks through the copy before it has its name, and raises.
        lacking: The path that it takes if photographs or papers are not there, or not
            whole; else it takes the same.

    Returns:
        How many of them it lacks.

    Raises:
        DatabaseError: There is no sound file to copy, or it cannot be written.
    """
    _must_be_there(database)
    if target.exists():
        raise DatabaseError(f"{target} is there already; it was left as it is.")
    partial = target.with_name(f"{target.name}{files.PARTIAL}")
    beside, was_there = files_beside(target), files_beside(target).exists()
    partial.unlink(missing_ok=True)
    try:
        (_pour if link else _pour_apart)(database, partial)
        check(partial)
        if look:
            look(partial)
        lacks = _brought(database, partial, beside, same_as, link=link)
        final = lacking if lacks and lacking else target
        if final != target and beside.exists():
            # First, so that a copy never has its name without its files.
            beside = beside.replace(files_beside(final))
        partial.replace(final)
    except (sqlite3.Error, OSError) as error:
        raise DatabaseError(
            f"{database} could not be copied to {target}: {error}."
        ) from error
    finally:
        if partial.exists() and not was_there:
            # Or each try would leave as much behind as had room.
            files.remove_folder(beside)
        partial.unlink(missing_ok=True)
    return lacks


def _brought(
    database: Path, copy: Path, beside: Path, same_as: Path | None, *, link: bool
) -> int:
    """Bring the files that a copy names beside it; return how many are not sound."""
    named = files.digests_in(copy)
    if same_as:
        sound = [digest for digest in named if files.is_sound(same_as, digest)]
        files.carry(same_as, beside, sound, link=True)
    files.carry(files_beside(database), beside, named, link=link)
    return sum(not files.is_sound(beside, digest) for digest in named)


def check(database: Path) -> None:
    """Look through a file for damage, and for what names what is not there.

    Raises:
        DamagedError: It is damaged, or is no SQLite file.
        DatabaseError: It cannot be read now.
    """
    _must_be_there(database)
    try:
        with closing(sqlite3.connect(database, timeout=WAIT_S)) as file:
            found = file.execute("PRAGMA integrity_check(1)").fetchone()[0]
            dangling = file.execute("PRAGMA foreign_key_check").fetchone()
    except sqlite3.OperationalError as error:
        raise DatabaseError(f"{database} cannot be read: {error}.") from error
    except sqlite3.DatabaseError as error:
        raise DamagedError(f"{database} is damaged: {error}.") from error
    if found != "ok" or dangling:
        raise DamagedError(f"{database} is damaged: its own check fails.")


def put_back(
    copy: Path,
    database: Path,
    folder: Path,
    *,
    at: datetime,
    prepare: Callable[[Path], None] | None = None,
) -> Path | None:
    """Let a copy take the place of the present file; return where that one now is.

    All that the copy holds is brought beside the present file, looked through and made
    ready before that one is touched.  Then the present file is copied; if it is damaged
    it is moved aside as it is.

    Args:
        copy: The file to go back to.
        database: The present file; it may not be there.  Who changes it meanwhile may
            find that change in neither file, so that nobody should.
        folder: Where copies are kept.
        at: Now, UTC.
        prepare: Brings what is to take the place up to date, before it does.

    Raises:
        DatabaseError: The copy cannot be read, or the present file cannot be written;
            the present file is then as it was.
    """
    _must_be_there(copy)
    if database.exists() and database.samefile(copy):
        raise DatabaseError(f"{copy} is the present file itself. Nothing was changed.")
    ready = database.with_name(f"{database.name}{files.PARTIAL}")
    try:
        _make_ready(copy, ready, database)
        if prepare:
            prepare(ready)
        kept = _set_aside(database, folder, at) if database.exists() else None
        _pour_or_leave(ready, database, kept)
    finally:
        ready.unlink(missing_ok=True)
    try:
        # A start meanwhile took for orphans what no row named yet.
        _bring_files(copy, database)
    except OSError as error:
        raise DatabaseError(
            f"{database} is now as {copy} was, but photographs or papers could not be "
            f"brought: {error}. “ways files --check” says which."
        ) from error
    return kept


def _make_ready(copy: Path, ready: Path, database: Path) -> None:
    """Bring what a copy holds beside the present file, and look through it."""
    ready.unlink(missing_ok=True)
    try:
        _pour(copy, ready)
        check(ready)
        _bring_files(copy, database)
    except (sqlite3.Error, OSError) as error:
        raise DatabaseError(
            f"{copy} could not be brought beside {database}: {error}. "
            "Nothing was changed."
        ) from error


def _pour_or_leave(ready: Path, database: Path, kept: Path | None) -> None:
    """Fill the present file, as one transaction; where that fails, it is as it was."""
    was_there = database.exists()
    try:
        _pour(ready, database)
    except (sqlite3.Error, OSError) as error:
        if not was_there:
            database.unlink(missing_ok=True)
            if kept is not None:
                _move(kept, database)
        raise DatabaseError(
            f"{database} could not be written: {error}. Nothing was changed."
        ) from error


def _set_aside(database: Path, folder: Path, at: datetime) -> Path:
    """Keep the present file as it is now, and not as it was a moment ago."""
    try:
        check(database)
    except DamagedError:
        make_folder(folder)
        moved = copies.path_for(folder, copies.DAMAGED, at)
        own = files_beside(database)
        files.carry(own, files_beside(moved), files.digests_here(own), link=True)
        _move(database, moved)
        return moved
    for _ in range(MOST_TRIES):
        changes = _changes_of(database)
        kept = back_up(database, folder, note=f"{copies.BEFORE}restore", at=at)
        if _changes_of(database) == changes:
            return kept
        at += timedelta(microseconds=1)
    raise DatabaseError(
        f"{database} is being changed. End what changes it. Nothing was changed here."
    )


def _changes_of(database: Path) -> bytes:
    """Return SQLite's own count of the changes of a file (file format, 1.3.7)."""
    with database.open("rb") as file:
        return file.read(28)[24:]


def _move(database: Path, to: Path) -> None:
    """Move a file with what SQLite left beside it."""
    for end in ("", *BESIDE):
        part = database.with_name(database.name + end)
        if part.exists():
            part.replace(to.with_name(to.name + end))


def _bring_files(copy: Path, database: Path) -> None:
    named = files.digests_in(copy)
    files.carry(files_beside(copy), files_beside(database), named, link=True)


def _pour(source: Path, target: Path) -> None:
    """Write all that one file holds into another, as one transaction.

    A source that is not there is never made: an empty file would be poured out.
    """
    address = f"{source.absolute().as_uri()}?mode=rw"
    with closing(sqlite3.connect(address, uri=True, timeout=WAIT_S)) as full:
        full.execute("SELECT count(*) FROM sqlite_master")
        begin_private(target)
        with closing(sqlite3.connect(target, timeout=WAIT_S)) as empty:
            full.backup(empty, progress=_for_so_long())


def _pour_apart(source: Path, target: Path) -> None:
    """Pour onto another disk, which may be slow: nobody can save while one pours."""
    with TemporaryDirectory(prefix="ways-copy-") as folder:
        near = Path(folder) / source.name
        _pour(source, near)
        begin_private(target)
        with near.open("rb") as full, target.open("wb") as empty:
            shutil.copyfileobj(full, empty)
            empty.flush()
            os.fsync(empty.fileno())


def _for_so_long() -> Callable[[int, int, int], None]:
    """Return what ends a pouring that others hold up: by itself it waits for ever."""
    until = time.monotonic() + WAIT_S

    def look(status: int, _left: int, _of: int) -> None:
        held_up = status in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
        if held_up and time.monotonic() > until:
            raise sqlite3.OperationalError("database is locked")

    return look


def _must_be_there(database: Path) -> None:
    if not database.is_file():
        raise DatabaseError(f"There is no file {database}.")
