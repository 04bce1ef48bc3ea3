"""Reminders as an iCalendar file (RFC 5545), written by a library."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any

from icalendar import Alarm, Calendar, Event

from app.domain.record import Home
from app.domain.reminders import Due

PRODUCT = "-//Ways and Points//Reminders//EN"
FREQUENCY = {"day": "DAILY", "week": "WEEKLY", "month": "MONTHLY", "year": "YEARLY"}
SHORTEST_MONTH, FEBRUARY = 28, 2
NINE = timedelta(hours=9)


def reminders_calendar(home: Home, dues: Iterable[Due], stamp: datetime) -> bytes:
    """Return a calendar with an all-day event for each thing that has a day.

    Args:
        home: The home that they are of.
        dues: Things to do again; those without a day, done or off are left out.
        stamp: When it is made, UTC.
    """
    return _calendar(f"{home.name}: reminders", [(home, dues)], stamp)


def homes_calendar(
    homes: Iterable[tuple[Home, Iterable[Due]]], stamp: datetime
) -> bytes:
    """Return one calendar for several homes, each with its things to do again."""
    return _calendar("Reminders of all homes", homes, stamp)


def _calendar(
    name: str, homes: Iterable[tuple[Home, Iterable[Due]]], stamp: datetime
) -> bytes:
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", name)
    for home, dues in homes:
        for due in dues:
            if due.state in ("now", "later") and due.next_on:
                calendar.add_component(_event(home, due, stamp))
    return bytes(calendar.to_ical())


def _event(home: Home, due: Due, stamp: datetime) -> Event:
    event = Event()
    event.add("uid", f"{due.key}.{home.ref}@ways-and-points.invalid")
    event.add("dtstamp", stamp)
    event.add("dtstart", due.next_on)
    event.add("summary", f"{due.named} ({home.name})")
    event.add("description", f"{due.says} {due.basis}".strip())
    if due.every:
        event.add("rrule", _rule(due.next_on, due.every, due.every_unit))
    event.add_component(_alarm(due))
    return event


def _rule(start: date | None, every: int, unit: str) -> dict[str, Any]:
    """Return how something comes again; a month without its day has it on the last.

    RFC 5545, 3.3.10: a day that a month does not have is left out otherwise.
    """
    rule: dict[str, Any] = {"freq": FREQUENCY[unit], "interval": every}
    if start is None or start.day <= SHORTEST_MONTH:
        return rule
    days = {
        "bymonthday": list(range(SHORTEST_MONTH, start.day + 1)),
        "bysetpos": -1,
    }
    if unit == "month":
        return rule | days
    if unit == "year" and start.month == FEBRUARY:
        return rule | {"bymonth": FEBRUARY} | days
    return rule


def _alarm(due: Due) -> Alarm:
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", due.named)
    alarm.add("trigger", NINE)
    return alarm
