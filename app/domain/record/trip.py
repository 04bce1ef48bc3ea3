"""A time when something tripped, as it was gone through."""

from __future__ import annotations

from typing import Annotated, ClassVar

from app.domain.record import choices
from app.domain.record._field import (
    LongText,
    Moment,
    OneOf,
    Ref,
    RefTo,
    ShortText,
    field,
)
from app.domain.record.items import Item


class Trip(Item):
    """What moved, when, what was tried, and how it ended."""

    sort: ClassVar[str] = "trip"
    plural: ClassVar[str] = "trips"
    noun: ClassVar[str] = "Trip"
    prefix: ClassVar[str] = "J"

    happened_at: Moment | None = field(
        "When", hint="UTC, as 2026-03-01T14:05:00Z.", come=True
    )
    moved: Annotated[str, OneOf(choices.MOVED)] = field("What moved", "unknown")
    device: Annotated[Ref, RefTo(("device", "intake"))] | None = field("Which one")
    found: tuple[Annotated[Ref, RefTo(("point", "circuit"))], ...] = field(
        "What it came from", (), hint="As far as it was found."
    )
    outcome: Annotated[str, OneOf(choices.TRIP_OUTCOMES)] = field(
        "How it ended", "unknown"
    )
    told_by: ShortText = field("By whom", "", private="names")
    trail: ShortText = field("Answers on the way", "", hint="Kept by the pages.")
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """What moved, with its day."""
        day = f", {self.happened_at[:10]}" if self.happened_at else ""
        return f"Tripped: {choices.MOVED[self.moved]}{day}"
