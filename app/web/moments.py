"""A day and perhaps a time that an address names, with what is wrong with them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time

from flask import request
from sqlalchemy import Connection

from app.domain.uk_time import end_of, uk_time
from app.errors import InvalidError
from app.services.history import AsOf, as_of
from app.services.homes import OpenHome

MOST_TYPED = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class MomentBoxes:
    """Two boxes that ask for a moment: a day, and a time that may be left out.

    Attributes:
        name: What their names begin with.
        labels: What the day and the time are called.
        day: What was typed for the day.
        time: What was typed for the time.
        day_error: What is wrong with the day; empty: nothing.
        time_error: What is wrong with the time.
        at: The moment, UTC; None when none is given, or something is wrong.
    """

    name: str
    labels: tuple[str, str]
    day: str
    time: str
    day_error: str = ""
    time_error: str = ""
    at: datetime | None = None

    @property
    def wrong(self) -> bool:
        """Whether there is something to put right."""
        return bool(self.day_error or self.time_error)


def moment_boxes(name: str, labels: tuple[str, str], *, start: str = "") -> MomentBoxes:
    """Return the boxes with what the address says, and the moment that it makes.

    Args:
        name: What the names of the boxes begin with.
        labels: What the day and the time are called.
        start: The day that stands there when the address says none.
    """
    typed = request.args.get(f"{name}day", "").strip()[:MOST_TYPED]
    hour = request.args.get(f"{name}time", "").strip()[:MOST_TYPED]
    boxes = MomentBoxes(name=name, labels=labels, day=typed or start, time=hour)
    if not typed:
        missing = "Choose the day, too." if hour else ""
        return replace(boxes, day_error=missing)
    day, at = _day(typed), _time(hour)
    day_error = "" if day else "Enter a day, such as 2026-03-01."
    time_error = "" if at or not hour else "Enter a time, such as 14:30, or none."
    if day is None or time_error:
        return replace(boxes, day_error=day_error, time_error=time_error)
    return replace(boxes, at=end_of(day, at))


def looked_up(
    connection: Connection, home: OpenHome, boxes: MomentBoxes
) -> tuple[MomentBoxes, AsOf | None]:
    """Return the record as it stood at a moment, or what is wrong beside its box."""
    if boxes.at is None:
        return boxes, None
    try:
        return boxes, as_of(connection, home, boxes.at, datetime.now(UTC))
    except InvalidError as error:
        return replace(boxes, day_error=error.sentence, at=None), None


def today_in_the_uk() -> str:
    """Return the day that clocks in the United Kingdom show, as a box holds it."""
    return uk_time(datetime.now(UTC)).date().isoformat()


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _time(text: str) -> time | None:
    try:
        return datetime.strptime(text, "%H:%M").time()  # noqa: DTZ007 - a time of day
    except ValueError:
        return None
