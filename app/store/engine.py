"""Connections to the one file, with transactions that hold what they promise.

Python's sqlite3 begins a transaction only at the first change, so that two that read
before they write end in "database is locked".  Here BEGIN is ours: readers begin
deferred, writers take the write lock at once.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import NullPool

WAIT_S = 10


def begin_private(path: Path) -> None:
    """Make an empty file for its owner only, if it is not there: a record is private.

    What SQLite keeps beside a file takes over who may read it.

    Raises:
        OSError: It cannot be made.
    """
    os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))


def make_engine(
    path: Path, *, foreign_keys: bool = True, create: bool = False
) -> Engine:
    """Return an engine on a file; nothing is opened yet.

    Args:
        path: The file.
        foreign_keys: Whether SQLite sees to them.
        create: Whether a file that is not there is made: one that was taken away while
            the program runs must not become an empty record.
    """
    address = f"{path.absolute().as_uri()}?mode={'rwc' if create else 'rw'}"

    def connect() -> sqlite3.Connection:
        if create:
            # SQLite says it in its own words when this cannot be.
            with suppress(OSError):
                begin_private(path)
        return sqlite3.connect(address, uri=True, check_same_thread=False)

    # What is written is private, and no error may carry it into the log.
    engine = create_engine(
        "sqlite://", creator=connect, poolclass=NullPool, hide_parameters=True
    )

    @event.listens_for(engine, "connect")
    def _on_connect(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in (
            f"foreign_keys = {'ON' if foreign_keys else 'OFF'}",
            f"busy_timeout = {int(WAIT_S * 1000)}",
            "synchronous = FULL",
        ):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _on_begin(connection: Connection) -> None:
        mode = connection.get_execution_options().get("sqlite_begin", "DEFERRED")
        connection.exec_driver_sql(f"BEGIN {mode}")

    return engine


@contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """Give a connection that sees one state of the file throughout."""
    with engine.connect() as connection:
        yield connection


@contextmanager
def writing(engine: Engine, *, made_by: str = "") -> Iterator[Connection]:
    """Give a connection that commits at the end of the block, or not at all.

    Args:
        engine: The file.
        made_by: From which phone, for the log of changes; empty on this machine.
    """
    writer = engine.execution_options(sqlite_begin="IMMEDIATE", made_by=made_by)
    with writer.begin() as connection:
        yield connection
