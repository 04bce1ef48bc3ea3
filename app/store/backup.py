"""Copies of the file: made by SQLite itself, checked, then given their name.

The photographs and papers that it names go along, into a folder beside the copy.

A file that is open is never copied or replaced as a file: its journal would be left
behind, and be taken for the journal of what stands there next.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

from app.config import files_beside
from app.errors import DatabaseError
from app.store import copies, files
from app.store.engine import begin_private

WAIT_S = 10
BESIDE = ("-journal", "-wal", "-shm")


class DamagedError(DatabaseError):
    """The file is not whole, or is no SQLite file."""


def back_up(
    database: Path,
    folder: Path,
    *,
    note: str,
    at: datetime,
    link: bool = True,
    same_as: Path | None = None,
) -> Path:
    """Copy a database into a folder and return the copy's path; no other copy goes.

    Args:
        database: File to copy; it may be in use.
        folder: Where copies are kept.
        note: Why it is made, for its name.
        at: Now, UTC.
        link: Whether its files may be the very ones of the data folder.
        same_as: The files of a former copy there, to stand in this one too.

    Raises:
        DatabaseError: There is no sound file to copy, or it cannot be written.
    """
    copy = copies.path_for(folder, note, at)
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DatabaseError(f"The folder {folder} cannot be made: {error}.") from error
    copy_to(database, copy, link=link, same_as=same_as)
    return copy


def copy_to(
    database: Path, target: Path, *, link: bool = False, same_as: Path | None = None
) -> None:
    """Copy a database to a path that it takes only when whole.

    Args:
        database: File to copy; it may be in use.
        target: Where to; the files that it names go into the folder beside that.
        link: Whether a file may stand in both folders, so that it costs no room.
        same_as: A folder whose files may stand in the new one too.

    Raises:
        DatabaseError: There is no sound file to copy, or it cannot be written.
    """
    _must_be_there(database)
    if target.exists():
        raise DatabaseError(f"{target} is there already; it was left as it is.")
    partial = target.with_name(f"{target.name}{files.PARTIAL}")
    was_there = files_beside(target).exists()
    partial.unlink(missing_ok=True)
    try:
        _pour(database, partial)
        check(partial)
        named = files.digests_in(partial)
        if same_as:
            sound = [digest for digest in named if files.is_sound(same_as, digest)]
            files.carry(same_as, files_beside(target), sound, link=True)
        files.carry(files_beside(database), files_beside(target), named, link=link)
        partial.replace(target)
    except (sqlite3.Error, OSError) as error:
        raise DatabaseError(
            f"{database} could not be copied to {target}: {error}."
        ) from error
    finally:
        partial.unlink(missing_ok=True)
        if not target.exists() and not was_there:
            # Or each try would leave as much behind as had room.
            files.remove_folder(files_beside(target))


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


def put_back(copy: Path, database: Path, folder: Path, *, at: datetime) -> Path | None:
    """Let a copy take the place of the present file; return where that one now is.

    All that the copy holds is brought beside the present file and looked through before
    that one is touched.  Then the present file is copied; if it is damaged it is moved
    aside as it is.

    Args:
        copy: The file to go back to.
        database: The present file; it may be in use, or not be there.
        folder: Where copies are kept.
        at: Now, UTC.

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
    try:
        check(database)
    except DamagedError:
        folder.mkdir(parents=True, exist_ok=True)
        moved = copies.path_for(folder, copies.DAMAGED, at)
        own = files_beside(database)
        files.carry(own, files_beside(moved), files.digests_here(own), link=True)
        _move(database, moved)
        return moved
    return back_up(database, folder, note=f"{copies.BEFORE}restore", at=at)


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
            full.backup(empty)


def _must_be_there(database: Path) -> None:
    if not database.is_file():
        raise DatabaseError(f"There is no file {database}.")
