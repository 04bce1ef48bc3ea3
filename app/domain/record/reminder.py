"""What is to be done again and again, and each time that it was done."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.record import choices
from app.domain.record._field import LongText, OneOf, Ref, RefTo, ShortText, field
from app.domain.record.items import Item

REMINDED = ("room", "source", "intake", "board", "device", "circuit", "point", "work")


class Reminder(Item):
    """A reminder that somebody has set, with its next day."""

    sort: ClassVar[str] = "reminder"
    plural: ClassVar[str] = "reminders"
    noun: ClassVar[str] = "Reminder"
    prefix: ClassVar[str] = "E"
    cannot_lose: ClassVar[tuple[str, ...]] = ("about",)

    name: ShortText = field("What to do", "")
    kind: Annotated[str, OneOf(choices.REMINDER_KINDS)] = field("What it is", "own")
    about: Annotated[Ref, RefTo(REMINDED)] | None = field(
        "What it is about", hint="Left open: the home.", blank=True
    )
    next_on: date | None = field("Next on")
    every: int | None = field(
        "Again every", low=1, high=600, hint="Left open: just once.", blank=True
    )
    every_unit: Annotated[str, OneOf(choices.TIME_UNITS)] = field(
        "Days or months", "month"
    )
    state: Annotated[str, OneOf(choices.REMINDER_STATES)] = field("State", "on")
    basis: ShortText = field("Why, or where it stands", "")
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """What to do, else what it is."""
        return self.name or choices.REMINDER_KINDS[self.kind]


class Occasion(Item):
    """One time that something was done: a button pressed, an alarm tested."""

    sort: ClassVar[str] = "occasion"
    plural: ClassVar[str] = "occasions"
    noun: ClassVar[str] = "Time it was done"
    prefix: ClassVar[str] = "O"
    by_form: ClassVar[bool] = False
    cannot_lose: ClassVar[tuple[str, ...]] = ("about", "reminder")

    kind: Annotated[str, OneOf(choices.REMINDER_KINDS)] = field("What was done", "own")
    about: Annotated[Ref, RefTo(REMINDED)] | None = field(
        "What it is about", blank=True
    )
    reminder: Annotated[Ref, RefTo(("reminder",))] | None = field(
        "Reminder", blank=True
    )
    done_on: date = field("Done on", ..., come=True)
    outcome: Annotated[str, OneOf(choices.OUTCOMES)] = field("How it went", "unknown")
    done_by: ShortText = field("By whom", "", private="names")
    note: LongText = field("Note", "")
