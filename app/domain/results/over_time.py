"""The results of one thing, the newest first."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from app.domain.record import Record, Result


def results_of(record: Record, ref: str | None) -> tuple[Result, ...]:
    """Return what was measured at a thing; None: the supply of the home."""
    return newest_first(r for r in record.results if r.about == ref)


def newest_first(results: Iterable[Result]) -> tuple[Result, ...]:
    """Return results by their day, those without one last."""
    return tuple(sorted(results, key=lambda r: r.tested_on or date.min, reverse=True))


def latest(record: Record, ref: str, name: str) -> Result | None:
    """Return the newest result that holds a field, such as ``zs_ohm``."""
    own = results_of(record, ref)
    return next((r for r in own if getattr(r, name) is not None), None)
