"""The copies in a folder: what each is, by its name, and which are needed no longer."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path

from app.config import DATABASE, files_beside
from app.store import files

DAILY, ASKED, DAMAGED, BEFORE = "daily", "asked", "damaged", "before-"
NAME = re.compile(r"ways-(\d{8}T\d{12})-([a-z0-9-]+)\.sqlite3")
MADE_AT = "%Y%m%dT%H%M%S%f"
# Common practice, no source: a week by days, a month by weeks, half a year by months.
KEPT_PERIODS: tuple[tuple[int, Callable[[date], Hashable]], ...] = (
    (7, lambda day: day),
    (4, lambda day: day.isocalendar()[:2]),
    (6, lambda day: (day.year, day.month)),
)
KEPT_BEFORE = 10
LEFT_OVER_S = 3600


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Copy:
    """A copy of the file.

    Attributes:
        made_at: When, UTC.
        note: Why: ``daily``, ``asked``, ``before-…`` or, moved aside, ``damaged``.
        path: Where it is.
    """

    made_at: datetime
    note: str
    path: Path

    @property
    def is_good(self) -> bool:
        """Whether it was found whole when it was made."""
        return self.note != DAMAGED


def path_for(folder: Path, note: str, at: datetime) -> Path:
    """Return the path of a copy that is made now, UTC."""
    stem = DATABASE.partition(".")[0]
    return folder / f"{stem}-{at:{MADE_AT}}-{note}.sqlite3"


def copies_in(folder: Path) -> tuple[Copy, ...]:
    """Return the copies in a folder, the newest first; none where it is not there."""
    try:
        found = [_copy(path) for path in folder.iterdir()]
    except OSError:
        return ()
    return tuple(sorted((copy for copy in found if copy), reverse=True))


def last_good(copies: Iterable[Copy]) -> Copy | None:
    """Return the newest copy that was found whole."""
    return max((copy for copy in copies if copy.is_good), default=None)


def unneeded(copies: Iterable[Copy]) -> frozenset[Copy]:
    """Return those that newer ones stand for.

    Of the daily ones the newest of each of the last 7 days, 4 weeks and 6 months that
    have one are kept; of those made before something, the newest 10.  What was asked
    for stays, and what is damaged.
    """
    newest_first = sorted(copies, reverse=True)
    daily = [copy for copy in newest_first if copy.note == DAILY]
    before = [copy for copy in newest_first if copy.note.startswith(BEFORE)]
    kept: set[Copy] = set()
    for most, period in KEPT_PERIODS:
        newest: dict[Hashable, Copy] = {}
        for copy in daily:
            newest.setdefault(period(copy.made_at.date()), copy)
        kept |= set(list(newest.values())[:most])
    return frozenset({*daily, *before[KEPT_BEFORE:]} - kept)


def tidy(folder: Path) -> None:
    """Remove the copies that are needed no longer, and what an end half-way left.

    Raises:
        OSError: One cannot be removed.
    """
    for copy in unneeded(copies_in(folder)):
        copy.path.unlink(missing_ok=True)
        files.remove_folder(files_beside(copy.path))
    old = time.time() - LEFT_OVER_S
    for path in folder.glob("ways-*"):
        if _is_left_over(path) and path.stat().st_mtime < old:
            files.remove_folder(path) if path.is_dir() else path.unlink()


def _copy(path: Path) -> Copy | None:
    named = NAME.fullmatch(path.name)
    if named is None or not path.is_file():
        return None
    made_at = datetime.strptime(named[1], MADE_AT).replace(tzinfo=UTC)
    return Copy(made_at=made_at, note=named[2], path=path)


def _is_left_over(path: Path) -> bool:
    """A copy under way has no name of its own; its files have no copy beside them."""
    if path.name.endswith(f".sqlite3{files.PARTIAL}"):
        return True
    copy = path.with_suffix(".sqlite3")
    return path.suffix == ".files" and path.is_dir() and not copy.exists()
