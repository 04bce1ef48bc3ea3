"""Reminders as plain text, for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.reminders import HEADS, Due


def reminders_text(dues: Iterable[Due]) -> str:
    """Return what is to be done again, under the heading of its state."""
    return "\n".join(_lines(tuple(dues)))


def _lines(dues: tuple[Due, ...]) -> Iterator[str]:
    for state, head in HEADS.items():
        found = [due for due in dues if due.state == state]
        if found:
            yield f"{head}:"
        for due in found:
            yield f"  {due.named}. {due.says}".rstrip()
