"""What a form may not write down as a reminder; a record that has it is read."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Record, Reminder

# What has no test button, whatever it is; a board or a home has several, perhaps.
NO_BUTTON = ("room", "source", "circuit", "work")


def wrong_with(record: Record, reminder: Reminder) -> Iterator[tuple[str, str]]:
    """Yield the field and the sentence of what makes no sense."""
    if reminder.kind == "own" and not reminder.name:
        yield "name", "Enter what to do."
    about = record.by_ref.get(reminder.about or "")
    if reminder.kind == "rcd_button" and about and about.sort in NO_BUTTON:
        yield (
            "about",
            f"A {about.noun.lower()} has no test button. Choose the RCD that has it.",
        )
