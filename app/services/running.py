"""Whether the program serves a data folder now.

A lock of SQLite says so, on a file of its own: it goes by itself with the program,
however that ends.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager

from app.config import Config
from app.errors import DatabaseError
from app.store.engine import begin_private

NAME = "serving"


@contextmanager
def running(config: Config) -> Iterator[None]:
    """Say that the program serves these data; several may.

    Raises:
        DatabaseError: A copy is being put in the file's place.
    """
    with _mark(config, "BEGIN", "An older copy is being put in the place of the file."):
        yield


@contextmanager
def not_running(config: Config) -> Iterator[None]:
    """Keep the program from serving these data for a while.

    Raises:
        DatabaseError: It does serve them.
    """
    said = "The program is running on these data. End it first: Ctrl+C where it runs."
    with _mark(config, "BEGIN EXCLUSIVE", said):
        yield


@contextmanager
def _mark(config: Config, begin: str, refused: str) -> Iterator[None]:
    path = config.data / NAME
    try:
        config.data.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not path.exists():
            begin_private(path)
        connection = sqlite3.connect(path, timeout=0, isolation_level=None)
    except OSError as error:
        raise DatabaseError(
            f"The folder {config.data} cannot be written to: {error.strerror}. "
            "Nothing was changed."
        ) from error
    with closing(connection) as lock:
        try:
            lock.execute(begin)
            lock.execute("SELECT count(*) FROM sqlite_master").fetchone()
        except sqlite3.OperationalError as error:
            raise DatabaseError(f"{refused} Nothing was changed.") from error
        yield
