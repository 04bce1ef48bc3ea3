"""Values of the record in words: the unit after, the unknown left to whoever asks."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Any

from app.domain.record import FieldSpec

NOTHING_WRITTEN = "Nothing is written there"


def value_in_words(
    spec: FieldSpec, value: Any, name_of: Callable[[str], str]
) -> str | None:
    """Return a field's value in words; None for what is not known.

    Args:
        spec: The field.
        value: What it holds.
        name_of: What to call the thing of a reference.
    """
    if value is None or (spec.type == "choice" and value == "unknown"):
        return None
    if spec.type == "choice":
        return spec.choices[value]
    if spec.type == "choices":
        return ", ".join(spec.choices[code] for code in value) or None
    if spec.type in ("ref", "refs"):
        refs = value if isinstance(value, tuple) else (value,)
        return ", ".join(name_of(ref) for ref in refs) or None
    return _plain(spec, value)


def day(value: date) -> str:
    """Return a day as it is written in the United Kingdom."""
    return f"{value.day} {value:%B %Y}"


def _plain(spec: FieldSpec, value: Any) -> str | None:
    if isinstance(value, date):
        return day(value)
    if value == "":
        return NOTHING_WRITTEN if spec.optional else None
    return f"{value} {spec.unit}".strip()
