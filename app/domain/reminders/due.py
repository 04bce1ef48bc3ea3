"""Each thing to do again as it stands on a day: now, later, no day known, off, done.

A day that has come is no more than that: only what a law asks for is called a duty.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from typing import Literal

from app.domain.answers import Named
from app.domain.days import in_words, later
from app.domain.failed import Failure, failed_in
from app.domain.record import Occasion, Record, Reminder
from app.domain.record._field import Model, field
from app.domain.record.choices import REMINDER_KINDS
from app.domain.reminders.plans import Plan, plans, worked_as
from app.domain.reported import put_right_since
from app.domain.to_come import without_days_to_come

SET_BY_HAND = "Set by yourself."
# Common practice, no source; makers' instructions say the like.
NOBODY_WOKEN = "Nobody may be woken: replace it or have it mended today."
State = Literal["now", "no_day", "later", "done", "off"]
HEADS: dict[State, str] = {
    "now": "Now",
    "no_day": "No day is known",
    "later": "Later",
    "done": "Done, not to come again",
    "off": "Switched off",
}


class Due(Model):
    """One thing to do again.

    ``key`` is its name in addresses and calendars: the reference of a reminder, else
    its kind, with what it is about.
    """

    key: str = field("Key", ...)
    kind: str = field("Kind", ...)
    title: str = field("What to do", ...)
    about: Named | None = field("What it is about")
    last_on: date | None = field("Last done on")
    failed_on: date | None = field("Did not work on")
    failed: str = field("What says that it did not work", "")
    put_right_since: date | None = field(
        "Its report asks for something to be put right"
    )
    next_on: date | None = field("Next on")
    every: int | None = field("Again every")
    every_unit: str = field("Days or months", "month")
    duty: bool = field("Whether a law asks for it", False)
    state: State = field("How it stands", ...)
    basis: str = field("Why, or where it stands", "")
    reminder: str = field("Reminder that sets it", "")
    says: str = field("In words", "")

    @property
    def named(self) -> str:
        """What to do, and to what."""
        return f"{self.title}: {self.about.title}" if self.about else self.title


def dues(record: Record, today: date) -> tuple[Due, ...]:
    """Return everything to do again, what is to be done now first.

    A day that is still to come counts as no day on which something was done.
    """
    sane = without_days_to_come(record, today)
    failures = {ref: f for ref, f in failed_in(sane).items() if f.button}
    found = [
        _due(sane, plan, reminder, today, _failure(plan, failures))
        for plan, reminder in _merged(sane)
    ]
    if sane is not record:
        found = [_with_what_does_not_count(due, record, today) for due in found]
    return tuple(
        sorted(
            found,
            key=lambda d: (
                list(HEADS).index(d.state),
                d.next_on or date.max,
                d.title,
                d.key,
            ),
        )
    )


def _with_what_does_not_count(due: Due, written: Record, today: date) -> Due:
    """Return it with the day, still to come, that is written down as done."""
    days = (
        day
        for plan, reminder in _merged(written)
        if _key(plan, reminder) == due.key
        for day in (plan.last_on, _failed_on(written, plan, reminder))
        if day and day > today
    )
    day = next(days, None)
    if day is None:
        return due
    said = f"{in_words(day)} is written down, a day still to come: it counts as no day."
    return due.model_copy(update={"says": f"{due.says} {said}"})


def _merged(record: Record) -> Iterator[tuple[Plan, Reminder | None]]:
    """Yield each plan with the reminder that changes it, then what somebody set."""
    left = list(record.reminders)
    for plan in plans(record):
        own = next(
            (r for r in left if (r.kind, r.about) == (plan.kind, plan.about)), None
        )
        if own is not None:
            left.remove(own)
        yield plan, own
    for reminder in left:
        last_on = _last_of(record, reminder)
        yield (
            Plan(
                kind=reminder.kind,
                about=reminder.about,
                every=None,
                basis=SET_BY_HAND,
                last_on=last_on,
                by_hand=True,
            ),
            reminder,
        )


def _failure(plan: Plan, failures: Mapping[str, Failure]) -> Failure | None:
    return failures.get(plan.about or "") if plan.kind == "rcd_button" else None


def _due(
    record: Record,
    plan: Plan,
    reminder: Reminder | None,
    today: date,
    failure: Failure | None,
) -> Due:
    if reminder is not None:
        plan = _as_set(plan, reminder)
    title = REMINDER_KINDS[plan.kind]
    about = record.by_ref.get(plan.about or "")
    failed_on = failure.day if failure else _failed_on(record, plan, reminder)
    since = put_right_since(record) if plan.kind == "inspection" else None
    bare = Due(
        key=_key(plan, reminder),
        kind=plan.kind,
        title=(reminder.name if reminder else "") or title,
        about=Named(ref=about.ref, title=about.title) if about else None,
        last_on=plan.last_on,
        failed_on=failed_on,
        failed=failure.says if failure else "",
        next_on=plan.next_on,
        every=plan.every[0] if plan.every else None,
        every_unit=plan.every[1] if plan.every else "month",
        duty=plan.duty,
        put_right_since=since,
        state=_state(plan, reminder, today, failed=bool(failure or failed_on or since)),
        basis=plan.basis,
        reminder=reminder.ref if reminder else "",
    )
    return bare.model_copy(update={"says": " ".join(_sentences(bare, today))})


def _as_set(plan: Plan, reminder: Reminder) -> Plan:
    """Return a plan with what somebody has set in place of its own."""
    every = (reminder.every, reminder.every_unit) if reminder.every else plan.every
    next_on = plan.next_on
    if reminder.every and plan.last_on:
        next_on = later(plan.last_on, reminder.every, reminder.every_unit)
    if not _is_behind(plan, reminder):
        next_on = reminder.next_on or next_on
    if plan.duty and plan.next_on and next_on:
        # A day of one's own never moves the one that the law names.
        next_on = min(next_on, plan.next_on)
    own = reminder.every and not plan.duty
    return replace(
        plan,
        every=every,
        next_on=next_on,
        basis=reminder.basis or (SET_BY_HAND if own else plan.basis),
    )


def _is_behind(plan: Plan, reminder: Reminder) -> bool:
    """Return whether it was done, as other pages tell, on the day set or after it."""
    last_on, day = plan.last_on, reminder.next_on
    again = reminder.every or plan.next_on
    return bool(again and day and last_on and day <= last_on)


def _key(plan: Plan, reminder: Reminder | None) -> str:
    if reminder is not None and plan.by_hand:
        return reminder.ref
    return f"{plan.kind}.{plan.about}" if plan.about else plan.kind


def _state(
    plan: Plan, reminder: Reminder | None, today: date, *, failed: bool
) -> State:
    if reminder is not None and reminder.state == "off":
        return "off"
    if failed:
        return "now"
    if plan.next_on is None:
        once = plan.every is None and plan.kind != "inspection"
        return "done" if once and plan.last_on else "no_day"
    return "now" if plan.next_on <= today else "later"


def _last_of(record: Record, reminder: Reminder) -> date | None:
    counts = worked_as(reminder.kind)
    done = (o.done_on for o in _times(record, reminder) if o.outcome in counts)
    return max(done, default=None)


def _times(record: Record, reminder: Reminder) -> Iterator[Occasion]:
    return (o for o in record.occasions if o.reminder == reminder.ref)


def _failed_on(record: Record, plan: Plan, reminder: Reminder | None) -> date | None:
    """Return the day on which it last did not work, if nothing has worked since."""
    failed = [
        o.done_on
        for o in record.occasions
        if o.outcome == "failed" and _is_of(o, plan, reminder)
    ]
    latest = max(failed, default=None)
    if latest and (plan.last_on is None or plan.last_on <= latest):
        return latest
    return None


def _is_of(occasion: Occasion, plan: Plan, reminder: Reminder | None) -> bool:
    if plan.by_hand:
        return reminder is not None and occasion.reminder == reminder.ref
    return (occasion.kind, occasion.about) == (plan.kind, plan.about)


def _says_failed(due: Due) -> Iterator[str]:
    if due.failed:
        yield f"{due.failed[0].upper()}{due.failed[1:]}."
    elif due.failed_on:
        how = "came to nothing" if due.kind == "inspection" else "did not work"
        yield f"On {in_words(due.failed_on)} it {how}."
    if due.kind == "alarm_test":
        yield NOBODY_WOKEN
    if due.kind == "rcd_button":
        yield "Call an electrician: until then it may guard nobody."
    if due.failed and due.failed_on is None:
        yield "Nothing later can outdo a paper without a day: give it its day."


def _sentences(due: Due, today: date) -> Iterator[str]:
    if due.failed or due.failed_on:
        yield from _says_failed(due)
        return
    if due.put_right_since:
        day = in_words(due.put_right_since)
        yield f"The report of {day} asks for something to be put right: call an"
        yield "electrician, then write down the work, or its paper."
    elif due.last_on:
        yield f"Last done on {in_words(due.last_on)}."
    if due.next_on is None:
        yield "" if due.state == "done" else "No day is known."
    elif due.duty:
        past = due.next_on < today
        was = "was to be there" if past else "is to be there"
        yield f"For a home that is let, a new report {was} by {in_words(due.next_on)}."
    elif due.kind == "inspection":
        yield f"Recommended by {in_words(due.next_on)}."
    else:
        when = "Its day was" if due.next_on < today else "Next on"
        yield f"{when} {in_words(due.next_on)}."
