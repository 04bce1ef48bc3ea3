"""Values of the record in words, for a page: the unit after, the unknown named."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import Any

from app.domain.record import FieldSpec, Home, Item, Record, specs
from app.domain.uk_time import uk_time
from app.domain.words import NOTHING_WRITTEN, day, value_in_words

__all__ = [
    "NOTHING_WRITTEN",
    "Facts",
    "day",
    "facts_of",
    "file_size",
    "how_many",
    "in_words",
    "minute",
    "quantity",
    "with_board",
    "within",
]

# Sorts that are not counted by an s at the end of their noun.
NOUNS = {
    "work": ("piece of work", "pieces of work"),
    "intake": ("item of the intake", "items of the intake"),
    "round": ("round of switching off", "rounds of switching off"),
    "aside": ("remark set aside", "remarks set aside"),
    "result": ("row of test results", "rows of test results"),
    "occasion": ("time that something was done", "times that something was done"),
    "trip": ("time that something tripped", "times that something tripped"),
}


def minute(at: datetime) -> str:
    """Return a moment as 3 March 2026, 14:05, by clocks in the United Kingdom."""
    local = uk_time(at)
    return f"{day(local.date())}, {local:%H:%M}"


def how_many(number: int, cls: type[Item]) -> str:
    """Return a number of things of a sort in words: 1 paper, 38 readings."""
    noun = cls.noun.lower()
    one, many = NOUNS.get(cls.sort, (noun, f"{noun}s"))
    return f"{number} {one if number == 1 else many}"


def file_size(size: int) -> str:
    """Return a count of bytes in words."""
    return f"{size / 1e6:.1f} MB" if size >= 100_000 else f"{max(size // 1000, 1)} kB"


def in_words(spec: FieldSpec, value: Any, record: Record) -> str | None:
    """Return a field's value in words; None for what is not known."""
    return value_in_words(spec, value, lambda ref: _title(record, ref))


def with_board(record: Record, ref: str) -> str:
    """Return a thing's title; a way's after its board, where there are several."""
    item = record.by_ref.get(ref)
    if item is None:
        return ref
    board = record.by_ref.get(getattr(item, "board", ""))
    if board is None or len(record.boards) == 1:
        return item.title
    return f"{board.title}: {item.title}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What is recorded of an item, and the names of what is not.

    Attributes:
        known: Label and words of each field that says something.
        not_known: Label of each field that nobody knows.
        empty: Label of each field that was left empty, such as a note.
    """

    known: tuple[tuple[str, str], ...]
    not_known: tuple[str, ...]
    empty: tuple[str, ...]


def facts_of(item: Item, record: Record, *, skip: tuple[str, ...] = ()) -> Facts:
    """Return an item's fields in words, in the order they are declared."""
    shown = [spec for spec in specs(type(item)) if spec.name not in skip]
    words = [(s, in_words(s, getattr(item, s.name), record)) for s in shown]
    open_ones = [spec for spec, text in words if not text]
    return Facts(
        known=tuple((spec.label, text) for spec, text in words if text),
        not_known=tuple(within(s.label) for s in open_ones if _can_be_known(s)),
        empty=tuple(within(s.label) for s in open_ones if not _can_be_known(s)),
    )


def within(label: str) -> str:
    """Return a label as it stands within a sentence: RCD and Ze keep their letters."""
    ordinary = len(label) > 1 and label[1].islower() and label[:2] != "Ze"
    return label[0].lower() + label[1:] if ordinary else label


def _can_be_known(spec: FieldSpec) -> bool:
    """A note or a name may stay empty; a rating that is empty is not known."""
    text = spec.type in ("text", "long", "choices")
    return not spec.blank and (spec.optional or not text)


def quantity(value: Decimal | int | None, unit: str) -> str:
    """Return a number with its unit, or that it is not known."""
    return f"{value} {unit}".strip() if value is not None else "not known"


def _title(record: Record, ref: str) -> str:
    item: Item | None = record.by_ref.get(ref)
    return f"{item.title} ({ref})" if item and not isinstance(item, Home) else ref
