"""What the program was told at its start."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from platformdirs import user_data_path

DATABASE = "ways.sqlite3"
FILES = "files"


@dataclass(frozen=True, slots=True, kw_only=True)
class Config:
    """Settings of one run.

    Attributes:
        data: Folder that holds the database, the key, the log and the copies.
        port: Port on this machine; 0 lets the system choose.
        demo: Whether this is the demo home, on a temporary copy.
        secret_key: Key of forms and cookies; made and kept in the folder.
        shared_at: This machine's addresses on the home network that are opened to
            paired phones; none unless asked for.
    """

    data: Path
    port: int = 5025
    demo: bool = False
    secret_key: bytes = b""
    shared_at: tuple[str, ...] = ()

    @property
    def database(self) -> Path:
        """The database file."""
        return self.data / DATABASE

    @property
    def shared_urls(self) -> tuple[str, ...]:
        """What a phone opens; true once the port is known."""
        return tuple(f"http://{address}:{self.port}/" for address in self.shared_at)

    @property
    def waiting(self) -> Path:
        """Folder of the files that are chosen and not taken in yet."""
        return self.data / "waiting"

    @property
    def backups(self) -> Path:
        """Folder of the copies."""
        return self.data / "copies"

    @property
    def files(self) -> Path:
        """Folder of the photographs and other files."""
        return files_beside(self.database)


def files_beside(database: Path) -> Path:
    """Return the folder of the files that a database, or a copy of one, names.

    In a data folder that is ``files``; a copy ``home.sqlite3`` has ``home.files``.
    """
    if database.name == DATABASE:
        return database.with_name(FILES)
    return database.with_suffix(f".{FILES}")


def data_folder(chosen: Path | None) -> Path:
    """Return the folder for the data: chosen, from the environment, or usual."""
    named = os.environ.get("WAYS_DATA")
    if chosen is not None:
        return chosen
    return Path(named) if named else usual_data_folder()


def usual_data_folder() -> Path:
    """Return the folder where this system keeps a program's data."""
    return user_data_path("ways-and-points", appauthor=False)
