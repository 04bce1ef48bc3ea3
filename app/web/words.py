"""Values of the record in words, for a page: the unit after, the unknown named."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

from app.domain.record import FieldSpec, Home, Item, Record, specs

NOTHING_WRITTEN = "Nothing is written there"


def in_words(spec: FieldSpec, value: Any, record: Record) -> str | None:
    """Return a field's value in words; None for what is not known."""
    if value is None or value == "unknown":
        return None
    if spec.type == "choice":
        return spec.choices[value]
    if spec.type == "choices":
        return ", ".join(spec.choices[code] for code in value) or "Nothing noted"
    if spec.type in ("ref", "refs"):
        refs = value if isinstance(value, tuple) else (value,)
        return ", ".join(_title(record, ref) for ref in refs) or None
    return _plain(spec, value)


def rows_of(
    item: Item, record: Record, *, skip: tuple[str, ...] = (), known_only: bool = False
) -> tuple[tuple[str, str | None], ...]:
    """Return an item's fields as label and words, in the order they are declared."""
    shown = (spec for spec in specs(type(item)) if spec.name not in skip)
    rows = ((s, in_words(s, getattr(item, s.name), record)) for s in shown)
    return tuple(
        (spec.label, words)
        for spec, words in rows
        if not known_only or (words is not None and words != "Nothing noted")
    )


def quantity(value: Decimal | int | None, unit: str) -> str:
    """Return a number with its unit, or that it is not known."""
    return f"{value} {unit}".strip() if value is not None else "not known"


def day(value: date) -> str:
    """Return a day as it is written in the United Kingdom."""
    return f"{value.day} {value:%B %Y}"


def _plain(spec: FieldSpec, value: Any) -> str | None:
    if isinstance(value, date):
        return day(value)
    if value == "":
        return NOTHING_WRITTEN if spec.optional else None
    return f"{value} {spec.unit}".strip()


def _title(record: Record, ref: str) -> str:
    item: Item | None = record.by_ref.get(ref)
    return f"{item.title} ({ref})" if item and not isinstance(item, Home) else ref
