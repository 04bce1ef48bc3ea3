"""Bring the file to this version's shape: a copy first, then every step or none."""

from __future__ import annotations

import logging
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from alembic import command
from alembic.config import Config as AlembicConfig
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text
from sqlalchemy.exc import IntegrityError, SQLAlchemyError

from app.errors import DatabaseError, DatabaseTooNewError
from app.paths import resource_dir
from app.store.backup import WAIT_S, back_up
from app.store.engine import make_engine

log = logging.getLogger(__name__)


def upgrade(database: Path, backups: Path) -> Path | None:
    """Bring a file up to date; return the copy made before, if one was needed.

    Raises:
        DatabaseTooNewError: A newer version of this program made the file.
        DatabaseError: It is no database of this program, it is damaged, or a step
            failed; it is then as it was.
    """
    here, head = revision_of(database), head_revision()
    if here == head:
        return None
    _make_folder(database.parent)
    copy = None
    if here is not None:
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
            "Nothing was changed. To go back to a copy: ways restore FILE."
        ) from error
    known = {script.revision for script in _scripts().walk_revisions()}
    if row is None or row[0] not in known:
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


def _make_folder(folder: Path) -> None:
    """Make the data folder, for its owner only: a record is private."""
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DatabaseError(f"The folder {folder} cannot be made: {error}.") from error


def _failed(database: Path, copy: Path | None, error: SQLAlchemyError) -> str:
    reason = getattr(error, "orig", None) or error
    kept = f" A copy made before is {copy}." if copy else ""
    return f"{database} could not be upgraded: {reason}. Nothing was changed.{kept}"


def head_revision() -> str:
    """Return the shape that this version works with."""
    return _scripts().get_current_head() or ""


def _scripts() -> ScriptDirectory:
    return ScriptDirectory.from_config(_config())


def _config() -> AlembicConfig:
    config = AlembicConfig()
    config.set_main_option("script_location", str(resource_dir("migrations")))
    config.set_main_option("path_separator", "os")
    return config


def _run(connection: Connection) -> None:
    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, "head")
    if connection.execute(text("PRAGMA foreign_key_check")).first():
        raise IntegrityError(
            None, None, ValueError("something in it names what is not there")
        )
