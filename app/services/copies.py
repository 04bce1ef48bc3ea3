"""Copies of the record: made on each day of use, looked through, kept apart too."""

from __future__ import annotations

import hashlib
import logging
import sqlite3
import stat
import threading
import time
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryFile

from sqlalchemy import Connection
from sqlalchemy.exc import SQLAlchemyError

from app.config import Config, files_beside
from app.errors import AppError, DatabaseError, InvalidError
from app.services.key import secret_key
from app.store import homes, settings
from app.store.backup import copy_to, make_folder
from app.store.copies import (
    ASKED,
    DAILY,
    LACKING,
    copies_in,
    day_of,
    last_good,
    path_for,
    tidy,
)
from app.store.engine import make_engine, reading
from app.store.migrate import head_revision, revision_of

log = logging.getLogger(__name__)

LOOK_AGAIN_S = 60
TRY_AGAIN_S = 600
LONGEST_PATH = 1000
# Within a day, so that what is mapped in one long day is not in the first copy only.
AGAIN_AFTER = timedelta(hours=4)
# A disk that fails, a file that is damaged, a stick that is pulled out meanwhile.
FAILURES = (AppError, OSError, sqlite3.Error, SQLAlchemyError)


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
    chosen = settings.copies_folder(connection)
    if not chosen:
        return Places(own=config.backups, chosen=None, apart=None)
    # By the key, which no other data folder has, so that two may share a stick.
    key = config.secret_key or secret_key(config.data)
    mark = hashlib.sha256(b"copies" + key).hexdigest()[:8]
    apart = Path(chosen) / f"ways-copies-{mark}"
    return Places(own=config.backups, chosen=Path(chosen), apart=apart)


def choose(config: Config, connection: Connection, text: str) -> None:
    """Let copies go to a folder as well from now on; to none, for an empty text.

    Raises:
        InvalidError: Nothing can be kept there; a sentence says why.
    """
    folder = chosen_folder(config, text)
    settings.set_copies_folder(connection, str(folder or ""))
    apart = places_of(config, connection).apart
    if apart is not None:
        try:
            apart.mkdir(mode=0o700, exist_ok=True)
        except OSError as error:
            raise InvalidError(_unwritable(apart, error)) from error


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
    try:
        if not path.is_dir():
            raise InvalidError(
                f"The folder {path} is not there now. If it is on a stick, put that in."
            )
        if data in (path.resolve(), *path.resolve().parents):
            raise InvalidError(
                "That is inside the data folder, where copies are kept already. "
                "Choose one on another disk."
            )
        with TemporaryFile(dir=path) as probe:
            probe.write(b"can be written")
    except OSError as error:
        raise InvalidError(_unwritable(path, error)) from error
    return path


def is_there(places: Places, folder: Path) -> bool:
    """Return whether a place of the copies can be had now.

    The folder apart was made when it was chosen: where a stick is not in, the place
    that it is seen at may be there, and empty.
    """
    return folder != places.apart or _device_of(folder) is not None


def is_on_the_same_disk(places: Places) -> bool:
    """Return whether the chosen folder goes with the disk that holds the record."""
    device = places.apart and _device_of(places.apart)
    return device is not None and device == _device_of(places.own.parent)


def _device_of(folder: Path) -> int | None:
    """Return the disk of a folder; None: there is none, or it cannot be looked at."""
    try:
        found = folder.stat()
    except OSError:
        return None
    return found.st_dev if stat.S_ISDIR(found.st_mode) else None


def not_there(places: Places) -> str:
    """Say that the chosen folder is not there now."""
    return (
        f"The folder {places.chosen} is not there now, or no longer holds its copies. "
        "If it is on a stick, put that in; else save the folder again."
    )


def _unwritable(path: Path, error: OSError) -> str:
    return f"Nothing can be written to {path}: {error.strerror or error}."


class Keeper:
    """Makes the copies of the day while the program is used, apart from any request.

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
        if time.monotonic() >= self._next:
            self._begin(AGAIN_AFTER, wait_s=0)

    def finish(self, longest_s: float) -> None:
        """Make the last copy, of all that was changed; wait, but not for ever."""
        until = time.monotonic() + longest_s
        self._begin(timedelta(0), wait_s=longest_s)
        self.settled(until - time.monotonic())

    def settled(self, longest_s: float) -> bool:
        """Wait for a copy that is under way; return whether it has ended."""
        ended = self._under_way.acquire(timeout=max(longest_s, 0))
        if ended:
            self._under_way.release()
        return ended

    def settle(self) -> None:
        """Let go of what was in the way: copies were just made, or go elsewhere."""
        self.troubles = ()
        self._next = 0.0

    def _begin(self, after: timedelta, *, wait_s: float) -> None:
        if self._under_way.acquire(timeout=wait_s):
            thread = threading.Thread(target=self._run, args=(after,), daemon=True)
            thread.start()

    def _run(self, after: timedelta) -> None:
        wait = LOOK_AGAIN_S
        try:
            tried = made_when_due(self._config, datetime.now(UTC), after)
            if tried is not None:
                self.troubles = tried
                wait = TRY_AGAIN_S
        except Exception as error:  # whatever it is, somebody must hear of it
            log.exception("no copy was made")
            self.troubles = (f"No copy could be made: {error}",)
            wait = TRY_AGAIN_S
        finally:
            self._next = time.monotonic() + wait
            self._under_way.release()


def made_when_due(
    config: Config, now: datetime, after: timedelta = AGAIN_AFTER
) -> tuple[str, ...] | None:
    """Make a copy wherever one is due; return what was in the way.

    None: it is due nowhere.  It is due where the file was written since the newest
    copy, and that one is of another day, or so old.  Of a day only the newest stays. A
    copy of a day to come says nothing.
    """
    with reading(make_engine(config.database)) as connection:
        if not homes.home_refs(connection):
            return None
        places = places_of(config, connection)
    due = [folder for folder in places.every if _is_due(config, folder, now, after)]
    said = [_tried(config, places, folder, DAILY, now) for folder in due]
    return tuple(sentence for sentence in said if sentence) if due else None


def _tried(
    config: Config, places: Places, folder: Path, note: str, now: datetime
) -> str:
    """Make a copy in a folder; return what was in the way, if anything."""
    try:
        if not is_there(places, folder):
            return not_there(places)
        copy, lacks = make_in(config, folder, note, now)
        return said_to_lack(copy, lacks) if lacks else ""
    except FAILURES as error:
        log.warning("no copy was made in %s: %s", folder, error)
        said = error.sentence if isinstance(error, AppError) else str(error)
        return f"No copy could be made in {folder}: {said}"


def _is_due(config: Config, folder: Path, now: datetime, after: timedelta) -> bool:
    tried = [c for c in copies_in(folder) if c.note in (DAILY, ASKED, LACKING)]
    newest = max((c.made_at for c in tried if c.made_at <= now), default=None)
    if newest is None:
        return True
    written = datetime.fromtimestamp(config.database.stat().st_mtime, UTC)
    is_old = now - newest >= after or day_of(newest) != day_of(now)
    return written >= newest and is_old


def make_in(config: Config, folder: Path, note: str, now: datetime) -> tuple[Path, int]:
    """Make a copy in a folder, and look through it; return it, and what it lacks.

    It has its name only then, and that of no good copy if it lacks photographs or
    papers.  Only a good one lets others go.

    Raises:
        DatabaseError: There is none, for one does not open or cannot be written.
    """
    make_folder(folder)
    own, before = folder == config.backups, last_good(copies_in(folder), now)
    good, lacking = (path_for(folder, each, now) for each in (note, LACKING))
    lacks = copy_to(
        config.database,
        good,
        link=own,
        # What a copy there has already takes no room a second time.
        same_as=None if own or before is None else files_beside(before.path),
        look=look_through,
        lacking=lacking,
    )
    if not lacks:
        tidy(folder, now)
    log.info("copied to %s", lacking if lacks else good)
    return lacking if lacks else good, lacks


def said_to_lack(copy: Path, lacks: int) -> str:
    """Say what a copy lacks."""
    return (
        f"The copy made in {copy.parent} lacks photographs or papers that it names, "
        f"not there or damaged: {lacks}. “ways files --check” says which."
    )


def look_through(copy: Path) -> None:
    """Read every home of a copy.

    Raises:
        DatabaseError: One does not open.
    """
    if revision_of(copy) != head_revision():
        raise DatabaseError(f"{copy} has another shape than it should.")
    try:
        with reading(make_engine(copy)) as connection:
            for archived in (False, True):
                for home in homes.all_homes(connection, archived=archived):
                    key = homes.home_id(connection, home.ref)
                    homes.load(connection, key or 0)
    except (ValueError, ArithmeticError) as error:
        raise DatabaseError(f"The copy does not open: {error}.") from error
