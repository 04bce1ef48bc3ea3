"""Write down that something was done, and when it is next."""

from __future__ import annotations

from datetime import date

from app.domain.days import later
from app.domain.edits import added, new_ref, replaced
from app.domain.record import Device, Occasion, Record, Reminder
from app.domain.reminders.due import Due
from app.domain.reminders.plans import worked_as


def done(
    record: Record,
    due: Due,
    on: date,
    outcome: str,
    note: str = "",
    again_by: date | None = None,
) -> Record:
    """Return the record with one time more that something was done.

    A button that worked is written on its RCD as well, and an inspection in the home,
    if it is the latest; a reminder with a day of its own moves on, or has none any more
    when it was for just once.

    Args:
        record: The record.
        due: What was done.
        on: The day.
        outcome: How it went, a code of ``OUTCOMES``.
        note: What was noticed.
        again_by: The day that the report of an inspection names for the next.
    """
    record = added(
        record,
        Occasion(
            ref=new_ref(record, Occasion),
            kind=due.kind,
            about=due.about.ref if due.about else None,
            reminder=due.reminder or None,
            done_on=on,
            outcome=outcome,
            note=note,
        ),
    )
    if outcome not in worked_as(due.kind):
        return record
    record = _pressed(_inspected(record, due, on, again_by), due, on)
    return _moved_on(record, due, on)


def _inspected(record: Record, due: Due, on: date, again_by: date | None) -> Record:
    if due.kind != "inspection" or (due.last_on and on < due.last_on):
        return record
    said = {"inspected_on": on, "inspect_again_by": again_by}
    return record.having(home=record.home.model_copy(update=said))


def _pressed(record: Record, due: Due, on: date) -> Record:
    rcd = record.find(Device, due.about.ref if due.about else None)
    if due.kind != "rcd_button" or rcd is None:
        return record
    latest = max(on, rcd.button_pressed_on or on)
    return replaced(
        record, rcd.ref, rcd.model_copy(update={"button_pressed_on": latest})
    )


def _moved_on(record: Record, due: Due, on: date) -> Record:
    reminder = record.find(Reminder, due.reminder)
    if reminder is None or reminder.next_on is None:
        return record
    if due.last_on and on < due.last_on:
        # An older time, written down later, moves nothing.
        return record
    next_on = later(on, due.every, due.every_unit) if due.every else None
    return replaced(
        record, reminder.ref, reminder.model_copy(update={"next_on": next_on})
    )
