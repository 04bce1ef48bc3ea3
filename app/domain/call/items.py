"""Whom to call for each item of the intake, by whose it is."""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.call.signs import Who
from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Record
from app.domain.record.choices import OWNERS

# Whoever it is when whose it is, is not known: both ask each other.
BY_OWNER: dict[str, tuple[Who, ...]] = {
    "network": ("network",),
    "meter_operator": ("supplier",),
    "consumer": ("electrician",),
    "landlord": ("landlord",),
    "shared": ("landlord", "network"),
    "unknown": ("network", "supplier"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Whose:
    """An item, or a kind of it, with whose it is and whom to call.

    Attributes:
        ref: Reference of the item; empty for a kind.
        title: What it is.
        owner: Whose it is, in words.
        who: Whom to call.
    """

    ref: str
    title: str
    owner: str
    who: tuple[Who, ...]


def whose_of(record: Record) -> tuple[Whose, ...]:
    """Return the items of the intake; where none is recorded, what is usual."""
    if record.intake:
        items = ((i.ref, i.title, i.owner) for i in record.intake)
        return tuple(_whose(*each, usually=False) for each in items)
    kinds = ((k.label, k.usual_owner) for k in INTAKE_KINDS.values())
    return tuple(_whose("", *each, usually=True) for each in kinds)


def _whose(ref: str, title: str, owner: str, *, usually: bool) -> Whose:
    words = OWNERS[owner]
    known = usually and owner != "unknown"
    said = f"Usually {words[0].lower()}{words[1:]}" if known else words
    return Whose(ref=ref, title=title, owner=said, who=BY_OWNER[owner])
