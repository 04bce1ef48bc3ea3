"""The copies in a folder: what each is, by its name, and which are needed no longer."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path

from app.config import DATABASE, files_beside
from app.domain.uk_time import uk_time
from app.store import files

DAILY, ASKED, BEFORE = "daily", "asked", "before-"
# No good copy: one that lacks photographs or papers, and what was damaged.
LACKING, DAMAGED = "lacking", "damaged"
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
        note: Why: ``daily`` or ``asked``, both looked through; ``before-…``;
            ``lacking`` or ``damaged``.
        path: Where it is.
    """

    made_at: datetime
    note: str
    path: Path

    @property
    def is_good(self) -> bool:
        """Whether it was opened when it was made, and found whole with its files."""
        return self.note in (DAILY, ASKED)


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


def last_good(copies: Iterable[Copy], now: datetime) -> Copy | None:
    """Return the newest copy that was found whole; none from a clock that was wrong."""
    found = (copy for copy in copies if copy.is_good and copy.made_at <= now)
    return max(found, default=None)


def day_of(at: datetime) -> date:
    """Return the day of a moment, as a copy of the day has it."""
    return uk_time(at).date()


def unneeded(copies: Iterable[Copy], now: datetime) -> frozenset[Copy]:
    """Return those that newer ones stand for.

    Of the daily ones the newest of each of the last 7 days, 4 weeks and 6 months that
    have one are kept; of those made before something, the newest 10; of those that lack
    something, the newest.  What was asked for stays, what is damaged, and what is of a
    day to come: a clock was wrong.
    """
    newest_first = sorted((c for c in copies if c.made_at <= now), reverse=True)
    daily = [copy for copy in newest_first if copy.note == DAILY]
    before = [copy for copy in newest_first if copy.note.startswith(BEFORE)]
    lacking = [copy for copy in newest_first if copy.note == LACKING]
    kept: set[Copy] = set()
    for most, period in KEPT_PERIODS:
        newest: dict[Hashable, Copy] = {}
        for copy in daily:
            newest.setdefault(period(day_of(copy.made_at)), copy)
        kept |= set(list(newest.values())[:most])
    return frozenset({*daily, *before[KEPT_BEFORE:], *lacking[1:]} - kept)


def tidy(folder: Path, now: datetime) -> None:
    """Remove the copies that are needed no longer, and what an end half-way left.

    To be called once a new copy was looked through, and at no other time: what is made
    before something must not take away what one is about to go back to.

    Raises:
        OSError: One cannot be removed.
    """
    for copy in unneeded(copies_in(folder), now):
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
    try:
        made_at = datetime.strptime(named[1], MADE_AT).replace(tzinfo=UTC)
    except ValueError:
        # Somebody's own file that is called much the same.
        return None
    return Copy(made_at=made_at, note=named[2], path=path)


def _is_left_over(path: Path) -> bool:
    """A copy under way has no name of its own; its files have no copy beside them."""
    if path.suffix == files.PARTIAL:
        return bool(NAME.fullmatch(path.stem))
    copy = path.with_suffix(".sqlite3")
    ours = path.suffix == ".files" and NAME.fullmatch(copy.name)
    return bool(ours) and path.is_dir() and not copy.exists()
