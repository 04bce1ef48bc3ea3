"""What the record itself asks to be done again, before anybody sets a day."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from app.domain.buttons import last_pressed, months_of, rcds_of
from app.domain.days import later
from app.domain.inspection import inspection_of
from app.domain.record import Point, Record
from app.domain.record.choices import REPORTED

# What is pressed, to see whether it works.
PRESSED = ("rcd_button", "alarm_test")
ALARMS = ("smoke_alarm", "heat_alarm")
TEST_BASIS = (
    "Once a month: common practice, no source. What its maker says goes before; many "
    "say once a week."
)
REPLACE_BASIS = (
    "Ten years after it was put in: common practice, no source. The day printed on the "
    "alarm goes before."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Something to do again.

    Attributes:
        kind: Code of `REMINDER_KINDS`.
        about: Reference of what it is about; None for the home.
        every: Number and unit of days, weeks, months, years; None for just once.
        basis: Where that stands.
        last_on: When the record says that it was last done.
        next_on: The day of the next time.
        duty: Whether a law asks for it.
        by_hand: Whether somebody has set it, and the record does not ask for it.
    """

    kind: str
    about: str | None
    every: tuple[int, str] | None
    basis: str
    last_on: date | None = None
    next_on: date | None = None
    duty: bool = False
    by_hand: bool = False


def plans(record: Record) -> tuple[Plan, ...]:
    """Return what the record asks for."""
    return (*_inspection(record), *_buttons(record), *_alarms(record))


def _inspection(record: Record) -> Iterator[Plan]:
    found = inspection_of(record)
    yield Plan(
        kind="inspection",
        about=None,
        every=None,
        basis=found.basis,
        last_on=found.last_on,
        next_on=found.by,
        duty=found.duty,
    )


def _buttons(record: Record) -> Iterator[Plan]:
    for rcd in rcds_of(record):
        months, basis = months_of(rcd)
        last_on = last_pressed(record, rcd)
        yield Plan(
            kind="rcd_button",
            about=rcd.ref,
            every=(months, "month"),
            basis=basis,
            last_on=last_on,
            next_on=last_on and later(last_on, months, "month"),
        )


def _alarms(record: Record) -> Iterator[Plan]:
    alarms = [point for point in record.points if point.kind in ALARMS]
    if not alarms:
        return
    tested = _last(record, "alarm_test", None)
    yield Plan(
        kind="alarm_test",
        about=None,
        every=(1, "month"),
        basis=TEST_BASIS,
        last_on=tested,
        next_on=tested and later(tested, 1, "month"),
    )
    yield from (_replacement(record, alarm) for alarm in alarms)


def _replacement(record: Record, alarm: Point) -> Plan:
    replaced = _last(record, "alarm_replace", alarm.ref)
    return Plan(
        kind="alarm_replace",
        about=alarm.ref,
        every=(10, "year"),
        basis=REPLACE_BASIS,
        last_on=replaced,
        next_on=replaced and later(replaced, 10, "year"),
    )


def worked_as(kind: str) -> tuple[str, ...]:
    """Return how a thing may have gone to count as done: what is pressed must work.

    A report was made whatever it asks for.
    """
    done = ("worked", "done", "unknown")
    if kind in PRESSED:
        return ("worked",)
    return (*done, *REPORTED) if kind == "inspection" else done


def _last(record: Record, kind: str, about: str | None) -> date | None:
    days = (
        o.done_on
        for o in record.occasions
        if (o.kind, o.about) == (kind, about) and o.outcome in worked_as(kind)
    )
    return max(days, default=None)
