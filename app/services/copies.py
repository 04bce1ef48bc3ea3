"""Copies of the record: made on each day of use, looked through, kept apart too."""

from __future__ import annotations

import hashlib
import logging
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryFile

from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from app.config import Config, files_beside
from app.errors import AppError, DatabaseError, InvalidError
from app.store import files, homes, settings
from app.store.backup import back_up
from app.store.copies import ASKED, DAILY, Copy, copies_in, last_good
from app.store.engine import make_engine, reading
from app.store.migrate import head_revision, revision_of

log = logging.getLogger(__name__)

LOOK_AGAIN_S = 3600
TRY_AGAIN_S = 600
LONGEST_PATH = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Places:
    """Where the copies of a data folder are.

    Attributes:
        own: The folder in the data folder.
        chosen: The folder that the person chose; None: none.
        apart: The folder in that one which holds the copies of this data folder.
    """

    own: Path
    chosen: Path | None
    apart: Path | None

    @property
    def every(self) -> tuple[Path, ...]:
        """The folders to look in."""
        return (self.own, self.apart) if self.apart else (self.own,)


def places_of(config: Config, connection: Connection) -> Places:
    """Return where the copies are."""
    return _places(config, settings.copies_folder(connection))


def make(config: Config, places: Places) -> None:
    """Make a copy now, in each of the places; one that fails stops no other.

    Raises:
        DatabaseError: One could not be made, or is not as it should be.
    """
    now = datetime.now(UTC)
    said = [_tried(config, places, folder, ASKED, now) for folder in places.every]
    if troubles := [sentence for sentence in said if sentence]:
        raise DatabaseError(" ".join(troubles))


def chosen_folder(config: Config, text: str) -> Path | None:
    """Return a folder that copies may go to as well; None for an empty text.

    Raises:
        InvalidError: Nothing can be kept there; a sentence says why.
    """
    if not text:
        return None
    path = Path(text)
    if "\x00" in text or len(text) > LONGEST_PATH or not path.is_absolute():
        raise InvalidError(
            "Give the whole path of the folder, from the top, such as /media/stick."
        )
    data = config.data.resolve()
    if not path.is_dir():
        raise InvalidError(not_there(path))
    if data == path.resolve() or data in path.resolve().parents:
        raise InvalidError(
            "That is inside the data folder, where copies are kept already. "
            "Choose one on another disk."
        )
    try:
        with TemporaryFile(dir=path) as probe:
            probe.write(b"can be written")
    except OSError as error:
        reason = error.strerror or error
        raise InvalidError(f"Nothing can be written to {path}: {reason}.") from error
    return path


def not_there(folder: Path) -> str:
    """Say that a folder is not there now."""
    return f"The folder {folder} is not there now. If it is on a stick, put that in."


def good_copies(places: Places) -> Iterator[tuple[Path, Copy | None]]:
    """Yield each of the places with the newest good copy in it."""
    for folder in places.every:
        yield folder, last_good(copies_in(folder))


class Keeper:
    """Makes the copy of the day while the program is used, apart from any request.

    Attributes:
        troubles: Why the last try was not what it should be, a sentence each.
    """

    def __init__(self, config: Config) -> None:
        self.troubles: tuple[str, ...] = ()
        self._config = config
        self._next = 0.0
        self._under_way = threading.Lock()

    def look(self) -> None:
        """Begin a copy if one is due; returns at once."""
        if time.monotonic() < self._next or not self._under_way.acquire(blocking=False):
            return
        threading.Thread(target=self._run, name="copies", daemon=True).start()

    def finish(self, longest_s: float) -> None:
        """Wait for a copy that is under way, but not for ever."""
        if self._under_way.acquire(timeout=longest_s):
            self._under_way.release()

    def _run(self) -> None:
        try:
            tried = made_when_due(self._config, datetime.now(UTC))
            self.troubles = self.troubles if tried is None else tried
        except (AppError, OSError, OperationalError) as error:
            log.warning("no copy was made: %s", error)
            self.troubles = (f"No copy could be made: {error}",)
        finally:
            wait = TRY_AGAIN_S if self.troubles else LOOK_AGAIN_S
            self._next = time.monotonic() + wait
            self._under_way.release()


def made_when_due(config: Config, now: datetime) -> tuple[str, ...] | None:
    """Make the copy of the day wherever it is due; return what was in the way.

    None: it is due nowhere.  It is due where the file was written since the newest good
    copy, and that one is not of today.  A copy of tomorrow says nothing.
    """
    with reading(make_engine(config.database)) as connection:
        if not homes.home_refs(connection):
            return None
        places = places_of(config, connection)
    due = [f for f, newest in good_copies(places) if _is_due(config, newest, now)]
    said = [_tried(config, places, folder, DAILY, now) for folder in due]
    return tuple(sentence for sentence in said if sentence) if due else None


def _tried(
    config: Config, places: Places, folder: Path, note: str, now: datetime
) -> str:
    """Make a copy in a folder; return what was in the way, if anything."""
    if folder == places.apart and places.chosen and not places.chosen.is_dir():
        return not_there(places.chosen)
    try:
        _made(config, folder, note, now)
    except DatabaseError as error:
        log.warning("no copy was made in %s: %s", folder, error)
        return error.sentence
    return ""


def _is_due(config: Config, newest: Copy | None, now: datetime) -> bool:
    if newest is None or newest.made_at > now:
        return True
    written = datetime.fromtimestamp(config.database.stat().st_mtime, UTC)
    same_day = newest.made_at.astimezone().date() == now.astimezone().date()
    return written >= newest.made_at and not same_day


def _made(config: Config, folder: Path, note: str, now: datetime) -> Path:
    """Make a copy and look through it; one that is not sound does not stay."""
    own = folder == config.backups
    before = last_good(copies_in(folder))
    copy = back_up(
        config.database,
        folder,
        note=note,
        at=now,
        link=own,
        # What a copy there has already takes no room a second time.
        same_as=None if own or before is None else files_beside(before.path),
    )
    _look_through(copy)
    lacking = sorted(
        digest
        for digest in files.digests_in(copy)
        if not files.is_sound(files_beside(copy), digest)
    )
    if lacking:
        raise DatabaseError(
            f"A copy was made, {copy}, but photographs or papers that it names are not "
            f"there or damaged: {len(lacking)}. “ways files --check” says which."
        )
    log.info("copied to %s", copy)
    return copy


def _look_through(copy: Path) -> None:
    """Open every home of a copy; the copy is removed if one does not open."""
    try:
        if revision_of(copy) != head_revision():
            raise DatabaseError(f"{copy} has another shape than it should.")
        with reading(make_engine(copy)) as connection:
            for archived in (False, True):
                for home in homes.all_homes(connection, archived=archived):
                    key = homes.home_id(connection, home.ref)
                    homes.load(connection, key or 0)
    except (AppError, ValueError) as error:
        copy.unlink()
        files.remove_folder(files_beside(copy))
        raise DatabaseError(f"The copy does not open: {error}.") from error


def _places(config: Config, chosen: str) -> Places:
    folder = Path(chosen) if chosen else None
    mark = hashlib.sha256(str(config.data.resolve()).encode()).hexdigest()[:8]
    apart = folder / f"ways-copies-{mark}" if folder else None
    return Places(own=config.backups, chosen=folder, apart=apart)
