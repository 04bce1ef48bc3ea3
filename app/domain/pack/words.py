"""How a pack names things: always with the reference that stands on the label."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from app.domain.circuits._working import plain
from app.domain.days import in_words
from app.domain.record import Device, Point, Record

OPEN = "not known"


def item_name(record: Record, ref: str | None) -> str:
    """Return what a thing is called, with its reference; a way with its board."""
    item = record.by_ref.get(ref or "")
    if item is None:
        return OPEN
    if isinstance(item, Device):
        board = record.by_ref.get(item.board)
        where = f"{board.title}, " if board else ""
        return f"{where}{item.title} ({item.ref})"
    return f"{item.title} ({item.ref})"


def point_name(record: Record, ref: str) -> str:
    """Return what a point is called, with its room and its reference."""
    point = record.find(Point, ref)
    room = record.by_ref.get(point.room or "") if point else None
    where = f"{room.title}: " if room else ""
    return f"{where}{item_name(record, ref)}"


def names(record: Record, refs: tuple[str, ...]) -> str:
    """Return what several things are called."""
    return "; ".join(item_name(record, ref) for ref in refs)


def number(value: Decimal | int | None, unit: str = "") -> str:
    """Return a number with its unit, or nothing."""
    return "" if value is None else f"{plain(Decimal(value))} {unit}".strip()


def day(value: date | None) -> str:
    """Return a day in words, or nothing."""
    return in_words(value) if value else ""


def known(text: str) -> str:
    """Return a text, or that it is not known."""
    return text or OPEN
