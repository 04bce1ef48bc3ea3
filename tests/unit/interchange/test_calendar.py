"""The file for a calendar: its days are those of the reminders.

How often is RFC 5545, 3.3.10, read here by python-dateutil, which is no part of the
program.
"""

from __future__ import annotations

from datetime import UTC, date, datetime
from itertools import islice

import pytest
from dateutil.rrule import rrulestr
from icalendar import Calendar

from app.domain.days import later
from app.domain.record import Reminder
from app.domain.reminders import dues
from app.interchange.calendar import reminders_calendar
from tests.builders import home

STAMP = datetime(2026, 11, 25, tzinfo=UTC)


@pytest.mark.parametrize(
    ("start", "every", "unit"),
    [
        (date(2027, 1, 31), 1, "month"),
        (date(2027, 1, 30), 1, "month"),
        (date(2027, 1, 29), 3, "month"),
        (date(2026, 8, 31), 6, "month"),
        (date(2027, 1, 28), 1, "month"),
        (date(2028, 2, 29), 1, "year"),
        (date(2028, 2, 29), 5, "year"),
        (date(2027, 1, 31), 1, "year"),
        (date(2027, 1, 31), 2, "week"),
        (date(2027, 1, 31), 10, "day"),
    ],
)
def test_its_days_are_those_of_the_reminder(start: date, every: int, unit: str) -> None:
    own = Reminder(ref="E1", name="Look", next_on=start, every=every, every_unit=unit)
    record = home().having(reminders=(own,))
    made = reminders_calendar(record.home, dues(record, STAMP.date()), STAMP)
    (event,) = Calendar.from_ical(made).walk("VEVENT")
    rule = event["rrule"].to_ical()
    assert isinstance(rule, bytes)
    first = datetime(start.year, start.month, start.day)  # noqa: DTZ001 a bare day
    days = [day.date() for day in islice(rrulestr(rule.decode(), dtstart=first), 30)]
    assert days == [later(start, n * every, unit) for n in range(30)]
