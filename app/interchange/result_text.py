"""Test results as plain text, for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.record import Record, Result
from app.domain.results.beside import source_of
from app.domain.results.sheet import COLUMNS, shown


def results_text(record: Record, results: Iterable[Result]) -> str:
    """Return each result: what was tested, by whom and when, and each figure."""
    return "\n".join(_lines(record, results)) or "No test result is copied yet."


def _lines(record: Record, results: Iterable[Result]) -> Iterator[str]:
    for result in results:
        item = record.by_ref.get(result.about or "")
        name = f"{item.title} ({item.ref})" if item else "The supply"
        yield f"{name}: {source_of(record, result)}"
        for column in COLUMNS:
            text = shown(result, column)
            if column.choices:
                text = column.choices[text] if text != "unknown" else ""
            if text:
                yield f"  {column.head}: {text} {column.unit}".rstrip()
