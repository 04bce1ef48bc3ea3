"""Days: some months later, and as they are written in the United Kingdom."""

from __future__ import annotations

from calendar import monthrange
from datetime import date, timedelta

DAYS = {"day": 1, "week": 7}
MONTHS = {"month": 1, "year": 12}


def later(start: date, number: int, unit: str) -> date:
    """Return a day some days, weeks, months or years later.

    A month that is too short ends on its last day; nothing is later than the last day
    that there is.
    """
    if unit in DAYS:
        left = (date.max - start).days
        return start + timedelta(days=min(number * DAYS[unit], left))
    months = start.year * 12 + start.month - 1 + number * MONTHS[unit]
    year, month = divmod(months, 12)
    if year > date.max.year:
        return date.max
    return date(year, month + 1, min(start.day, monthrange(year, month + 1)[1]))


def in_words(day: date) -> str:
    """Return a day as 3 March 2026."""
    return f"{day.day} {day:%B} {day.year}"
