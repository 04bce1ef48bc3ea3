"""Bring the file to this version's shape: a copy first, then every step or none."""

from __future__ import annotations

import logging
import re
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Connection, text
from sqlalchemy.exc import IntegrityError, SQLAlchemyError

from app.errors import DatabaseError, DatabaseTooNewError
from app.paths import resource_dir
from app.store.backup import back_up, make_folder
from app.store.engine import WAIT_S, make_engine

log = logging.getLogger(__name__)

REVISION = re.compile(r'^revision = "(\w+)"', re.MULTILINE)
DOWN_REVISION = re.compile(r'^down_revision = (?:"(\w+)"|None)', re.MULTILINE)


def upgrade(database: Path, backups: Path | None) -> Path | None:
    """Bring a file up to date; return the copy made before, if one was needed.

    Args:
        database: The file.
        backups: Where that copy goes; None for a file that is itself a copy.

    Raises:
        DatabaseTooNewError: A newer version of this program made the file.
        DatabaseError: It is no database of this program, it is damaged, or a step
            failed; it is then as it was.
    """
    here, head = revision_of(database), head_revision()
    if here == head:
        return None
    make_folder(database.parent)
    copy = None
    if here is not None and backups is not None:
        note = f"before-upgrade-{here}"
        copy = back_up(database, backups, note=note, at=datetime.now(UTC))
    engine = make_engine(database, foreign_keys=False, create=True)
    try:
        with engine.execution_options(sqlite_begin="IMMEDIATE").begin() as connection:
            _run(connection)
    except SQLAlchemyError as error:
        raise DatabaseError(_failed(database, copy, error)) from error
    log.info("database upgraded from %s to %s", here, head)
    return copy


def revision_of(database: Path) -> str | None:
    """Return the shape that a file has; None for one that is not there or is empty.

    Raises:
        DatabaseTooNewError: Its shape is not known here.
        DatabaseError: It is no database of this program, or it is damaged.
    """
    if not database.exists() or (database.is_file() and not database.stat().st_size):
        return None
    try:
        row = _version_row(database)
    except sqlite3.Error as error:
        raise DatabaseError(
            f"{database} is not a record of this program, or it is damaged ({error}). "
            "Nothing was changed. A copy that is whole is brought back by: "
            "ways restore FILE."
        ) from error
    if row is None or row[0] not in revisions():
        raise DatabaseTooNewError(
            f"{database} was made by a newer version of this program. "
            "Use that version, or restore an older copy. Nothing was changed."
        )
    return str(row[0])


def _version_row(database: Path) -> tuple[str] | None:
    """Read the shape's name, and look for damage; a file that is not there stays so.

    Opened for writing too: what a crash left half done is rolled back on opening, and
    a connection that may only read cannot do that.
    """
    uri = f"{database.resolve().as_uri()}?mode=rw"
    with closing(sqlite3.connect(uri, uri=True, timeout=WAIT_S)) as file:
        row: tuple[str] | None
        row = file.execute("SELECT version_num FROM alembic_version").fetchone()
        found = file.execute("PRAGMA quick_check(1)").fetchone()[0]
    if found != "ok":
        raise sqlite3.DatabaseError(found)
    return row


def _failed(database: Path, copy: Path | None, error: SQLAlchemyError) -> str:
    reason = getattr(error, "orig", None) or error
    kept = f" A copy made before is {copy}." if copy else ""
    return f"{database} could not be upgraded: {reason}. Nothing was changed.{kept}"


def head_revision() -> str:
    """Return the shape that this version works with."""
    before = revisions()
    return next(iter(before.keys() - set(before.values())))


def revisions() -> dict[str, str | None]:
    """Return every shape, with the one that it was made from.

    Read from the steps as text: at nearly every start there is none to take, and what
    takes them is slow to load.
    """
    found = {}
    for step in (resource_dir("migrations") / "versions").glob("*.py"):
        text = step.read_text("utf-8")
        own, before = REVISION.search(text), DOWN_REVISION.search(text)
        if own and before:
            found[own[1]] = before[1]
    return found


def _run(connection: Connection) -> None:
    """Take every step that is left."""
    from alembic import command  # noqa: PLC0415 - see `revisions`
    from alembic.config import Config  # noqa: PLC0415

    config = Config()
    config.set_main_option("script_location", str(resource_dir("migrations")))
    config.set_main_option("path_separator", "os")
    config.attributes["connection"] = connection
    command.upgrade(config, "head")
    if connection.execute(text("PRAGMA foreign_key_check")).first():
        raise IntegrityError(
            None, None, ValueError("something in it names what is not there")
        )
