"""What a thing is called where a sentence has to tell it from all others."""

from __future__ import annotations

from app.domain.record import Control, Item, Record, Tie

# How a tie joins its point to what it is tied to.
JOINED = {"feeds": "fed by", "neutral": "its neutral to", "present": "beside"}


def called(record: Record, item: Item) -> str:
    """Return what a thing is called: a tie and a control by what they join."""
    if isinstance(item, Tie):
        joined = JOINED[item.role]
        return f"{_title(record, item.point)}, {joined} {_title(record, item.tied_to)}"
    if isinstance(item, Control):
        switch = _title(record, item.controller)
        return f"{switch}, switching {_title(record, item.controlled)}"
    return item.title


def in_a_sentence(record: Record, item: Item) -> str:
    """Return what a thing is called, and its reference."""
    return f"{called(record, item)} ({item.ref})"


def _title(record: Record, ref: str) -> str:
    found = record.by_ref.get(ref)
    return found.title if found else ref
