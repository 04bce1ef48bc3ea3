"""What is recorded as hot, broken, wet, leaking or loose: left alone, and called about.

Common practice, no source: what looks like that is not switched, opened or used.
"""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Board, IntakeItem, Item, Point, Record
from app.domain.record.choices import CONDITIONS

BAD = frozenset({"hot", "damaged", "wet", "leaking", "loose"})


def bad_ones(items: Iterable[Item]) -> tuple[Item, ...]:
    """Return those of some things whose condition stands in the record as bad."""
    return tuple(i for i in items if getattr(i, "condition", "unknown") in BAD)


def recorded_bad(record: Record) -> tuple[Item, ...]:
    """Return all in a home that is recorded so, from the street inwards.

    Of the intake only what carries the supply: a broken earth rod lays nothing live
    open, and has a remark of its own.
    """
    intake = (i for i in record.intake if INTAKE_KINDS[i.kind].carries_supply)
    return bad_ones((*intake, *record.boards, *record.points))


def seen_as(item: Item) -> str:
    """Return what is seen of a thing's condition, as the end of a sentence."""
    if isinstance(item, Board | IntakeItem | Point):
        said = CONDITIONS[item.condition]
        return f"{said[0].lower()}{said[1:]}"
    return ""
