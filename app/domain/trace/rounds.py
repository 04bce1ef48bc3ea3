"""Rounds in the record: begun, marked and ended, as pure changes of it."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.edits import added, new_ref, replaced
from app.domain.record import Reading, Record, Round


def begun(record: Record, values: dict[str, object]) -> tuple[Record, Round]:
    """Return the record with a round more, and that round.

    Args:
        record: The record.
        values: Fields of the round, but its reference.
    """
    made = Round.model_validate({"ref": new_ref(record, Round), **values})
    return added(record, made), made


def marked(record: Record, values: dict[str, object]) -> tuple[Record, Reading]:
    """Return the record with a reading more; earlier ones of the same point stay."""
    made = Reading.model_validate({"ref": new_ref(record, Reading), **values})
    return added(record, made), made


def with_readings(record: Record, values: Iterable[dict[str, object]]) -> Record:
    """Return the record with many readings more."""
    readings = list(record.readings)
    taken: set[str] = set()
    for each in values:
        ref = new_ref(record, Reading, taken)
        taken.add(ref)
        readings.append(Reading.model_validate({"ref": ref, **each}))
    return record.having(readings=tuple(readings))


def at_stage(record: Record, each: Round, stage: str) -> Record:
    """Return the record with a round at another stage."""
    changed = Round.model_validate({**each.model_dump(), "stage": stage})
    return replaced(record, each.ref, changed)
