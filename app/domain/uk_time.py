"""The time of day in the United Kingdom, from UTC and back.

Summer time, an hour ahead, begins and ends at 01:00 GMT on the last Sunday of March and
of October: Summer Time Act 1972 as amended by the Summer Time Order 2002 (SI 2002/262);
from memory.  It is worked out here because not every system has a list of time zones.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta, timezone

GMT = timezone(timedelta(0), "GMT")
BST = timezone(timedelta(hours=1), "BST")
BEGINS_IN, ENDS_IN = 3, 10


def uk_time(at: datetime) -> datetime:
    """Return a moment as clocks in the United Kingdom show it.

    Args:
        at: The moment; with no zone of its own it is taken as UTC.
    """
    moment = at.replace(tzinfo=at.tzinfo or UTC)
    return moment.astimezone(BST if _is_summer(moment) else GMT)


def utc_of(local: datetime) -> datetime:
    """Return the moment, in UTC, at which clocks in the United Kingdom show a time.

    Of an hour that comes twice it is the later one.
    """
    moment = local.replace(tzinfo=UTC)
    return moment - timedelta(hours=1) if _is_summer(moment) else moment


def end_of(day: date, at: time | None = None) -> datetime:
    """Return the last second of a day, or of a minute of it, in UTC."""
    if at is None:
        return utc_of(datetime.combine(day, time(23, 59, 59)))
    return utc_of(datetime.combine(day, at.replace(second=59)))


def start_of(day: date) -> datetime:
    """Return the first second of a day, in UTC."""
    return utc_of(datetime.combine(day, time()))


def moment_named(text: str) -> datetime:
    """Return the last second of what is named: 2026-03-01, or 2026-03-01T14:30.

    Raises:
        ValueError: It is neither, or lies beyond what a calendar has.
    """
    try:
        named, _, hour = text.partition("T")
        return end_of(date.fromisoformat(named), _minute(hour) if hour else None)
    except OverflowError as error:
        raise ValueError(text) from error


def _minute(text: str) -> time:
    return datetime.strptime(text, "%H:%M").time()  # noqa: DTZ007 - a time of day


def _is_summer(moment: datetime) -> bool:
    begins, ends = (_last_sunday(moment.year, month) for month in (BEGINS_IN, ENDS_IN))
    return begins <= moment < ends


def _last_sunday(year: int, month: int) -> datetime:
    """Return 01:00 GMT on the last Sunday of a month of 31 days."""
    last = datetime(year, month, 31, 1, tzinfo=UTC)
    return last - timedelta(days=(last.weekday() + 1) % 7)
