"""Several homes: what each needs next, copying, putting aside, deleting for good."""

from __future__ import annotations

import logging
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from app.config import Config
from app.domain.faults import faults
from app.domain.progress import Progress, progress
from app.domain.record import Home, Record, Work
from app.domain.remarks import RANKS
from app.domain.remarks._kind import Rank
from app.domain.reminders import Due, dues
from app.errors import DatabaseError, NotFoundError
from app.services.homes import OpenHome, add_home
from app.services.remarks import remarks_of
from app.store import homes
from app.store.backup import back_up
from app.store.engine import make_engine, reading, writing

log = logging.getLogger(__name__)

KEPT_DAYS = 30
WORST: tuple[Rank, ...] = ("call", "electrician")


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What one home needs.

    Attributes:
        home: The home.
        next: The one thing most worth doing next.
        worst: How many kinds of remark there are of each of the two first ranks.
        dues: Everything to do again.
        untold: Planned work of which somebody is still to be told.
    """

    home: Home
    next: Progress
    worst: Mapping[str, int]
    dues: tuple[Due, ...]
    untold: tuple[Work, ...]

    @property
    def waiting(self) -> tuple[Due, ...]:
        """What waits to be done."""
        return tuple(due for due in self.dues if due.state == "now")

    @property
    def inspection(self) -> Due:
        """The next inspection."""
        return next(due for due in self.dues if due.kind == "inspection")


class Standings:
    """What homes need, worked out again only after a change or on another day."""

    def __init__(self) -> None:
        self._known: dict[int, tuple[tuple[object, ...], Standing]] = {}

    def of(self, connection: Connection, key: int, today: date) -> Standing:
        """Return what a home needs."""
        mark = (homes.stamp_of(connection, key), today)
        known = self._known.get(key)
        if known is None or known[0] != mark:
            record = homes.load(connection, key)
            self._known[key] = known = (mark, standing_of(record, today))
        return known[1]


def standing_of(record: Record, today: date) -> Standing:
    """Return what a home needs, from its record."""
    kinds = {
        remark.code: remark.rank
        for remark in remarks_of(record, today)
        if remark.outcome == "remark" and remark.aside != "set"
    }
    ranks = list(kinds.values())
    found = dues(record, today)
    return Standing(
        home=record.home,
        next=progress(record, faults(record, today), found),
        worst={RANKS[rank]: ranks.count(rank) for rank in WORST if rank in ranks},
        dues=found,
        untold=tuple(
            work
            for work in record.works
            if work.state == "planned" and work.told == "no"
        ),
    )


def copy_home(connection: Connection, start: OpenHome, ref: str, name: str) -> str:
    """Write a copy of a home under a reference and a name of its own.

    Its log of changes begins anew.

    Raises:
        InvalidError: The reference is taken.
    """
    home = start.record.home.model_copy(update={"ref": ref, "name": name})
    add_home(connection, start.record.having(home=home))
    return ref


def archive(connection: Connection, ref: str) -> None:
    """Put a home aside: it is no longer among those that are looked after.

    Raises:
        NotFoundError: There is no such home.
    """
    key = homes.home_id(connection, ref)
    if key is None:
        raise NotFoundError(f"There is no home “{ref}” here.")
    homes.set_archived(connection, key, f"{datetime.now(UTC):%Y-%m-%dT%H:%M:%S+00:00}")
    log.info("home put aside: %s", ref)


def take_up(connection: Connection, ref: str) -> None:
    """Take a home up again that was put aside.

    Raises:
        NotFoundError: There is no such home.
    """
    key = homes.home_id(connection, ref)
    if key is None:
        raise NotFoundError(f"There is no home “{ref}” here.")
    homes.set_archived(connection, key, None)
    log.info("home taken up: %s", ref)


def gone_after(deleted_at: datetime) -> datetime:
    """Return when a deleted home is gone for good, if nobody brings it back."""
    return deleted_at + timedelta(days=KEPT_DAYS)


def clear_deleted(config: Config, now: datetime) -> tuple[str, ...]:
    """Remove for good what was deleted long ago; return the references.

    The file is copied first; when another program is writing for long, or the copy
    cannot be made, nothing is removed this time.
    """
    with reading(make_engine(config.database)) as connection:
        if not _long_gone(connection, now):
            return ()
    try:
        back_up(config.database, config.backups, note="before-removal", at=now)
        with writing(make_engine(config.database)) as connection:
            # Looked at again: one may have been brought back meanwhile, and even
            # deleted anew, for another thirty days.
            gone = _long_gone(connection, now)
            for home in gone:
                homes.remove(connection, home.key)
    except (DatabaseError, OperationalError) as error:
        log.warning("homes deleted long ago were not removed: %s", error)
        return ()
    log.info("homes removed for good: %s", ", ".join(home.ref for home in gone))
    return tuple(home.ref for home in gone)


def _long_gone(connection: Connection, now: datetime) -> tuple[homes.DeletedHome, ...]:
    found = homes.deleted_homes(connection)
    return tuple(home for home in found if gone_after(home.at) <= now)
