"""Rounds of switching off, and what was seen at each point in them."""

from __future__ import annotations

from collections.abc import Mapping
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


class Round(Item):
    """A walk with some devices off; with none off it is a first look.

    Only what was switched by hand stands in ``off``: a device, an RCD or a main switch.
    What hangs below it follows from the record.
    """

    sort: ClassVar[str] = "round"
    plural: ClassVar[str] = "rounds"
    noun: ClassVar[str] = "Round"
    prefix: ClassVar[str] = "N"
    by_form: ClassVar[bool] = False
    cannot_lose: ClassVar[tuple[str, ...]] = ("off",)

    off: tuple[Annotated[Ref, RefTo(("device",))], ...] = field("Switched off", ())
    asked: tuple[Annotated[Ref, RefTo(("point",))], ...] = field(
        "Points to look at", (), hint="Left open: all of them."
    )
    when: Annotated[str, OneOf(choices.DAY_OR_NIGHT)] = field("By day or night", "day")
    manner: Annotated[str, OneOf(choices.MANNERS)] = field("How it was chosen", "hand")
    stage: Annotated[str, OneOf(choices.STAGES)] = field("How far it is", "planned")
    how: Annotated[str, OneOf(choices.HOW_SEEN)] = field("Seen with", "unknown")
    started_at: Moment | None = field("Begun", hint="UTC, as 2026-03-01T14:05:00Z.")
    started_by: ShortText = field("By whom", "", private="names")
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """What it is and when it was begun."""
        what = "Round" if self.off else "First look"
        return f"{what} {self.ref}"

    @property
    def stage_words(self) -> str:
        """How far it is, in words."""
        return (choices.STAGES if self.off else choices.FIRST_STAGES)[self.stage]

    @property
    def seen_words(self) -> Mapping[str, str]:
        """What may be seen at a point in it: code and words."""
        return choices.OFF_SEEN if self.off else choices.FIRST_SEEN


class Reading(Item):
    """What one person saw at one point in one round.

    A mark made later by the same person takes the place of the earlier one when it is
    read; both stay.
    """

    sort: ClassVar[str] = "reading"
    plural: ClassVar[str] = "readings"
    noun: ClassVar[str] = "Reading"
    prefix: ClassVar[str] = "M"
    by_form: ClassVar[bool] = False

    round: Annotated[Ref, RefTo(("round",))] = field("Round", ...)
    point: Annotated[Ref, RefTo(("point",))] = field("Point", ...)
    seen: Annotated[str, OneOf(choices.SEEN)] = field("What was seen", ...)
    how: Annotated[str, OneOf(choices.HOW_SEEN)] = field("Seen with", "unknown")
    seen_at: Moment | None = field("When", hint="UTC, as 2026-03-01T14:05:00Z.")
    seen_by: ShortText = field("By whom", "", private="names")
    note: LongText = field("Note", "")
