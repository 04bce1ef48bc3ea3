"""A remark that someone has set aside, with the reason."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.record._field import LongText, Ref, RefTo, ShortText, field
from app.domain.record.items import Item

# Whatever a remark can be about; one about the home itself names nothing.
REMARKED = (
    "room",
    "source",
    "intake",
    "board",
    "device",
    "circuit",
    "point",
    "tie",
    "work",
)


class Aside(Item):
    """Says that a remark was read and set aside, as the record then stood.

    ``facts`` is a short mark of what the remark rested on: it comes back when that
    changes.
    """

    sort: ClassVar[str] = "aside"
    plural: ClassVar[str] = "asides"
    noun: ClassVar[str] = "Remark set aside"
    prefix: ClassVar[str] = "A"
    by_form: ClassVar[bool] = False
    cannot_lose: ClassVar[tuple[str, ...]] = ("about",)

    remark: ShortText = field("Remark", ...)
    about: Annotated[Ref, RefTo(REMARKED)] | None = field(
        "What it is about", hint="Left open: the home.", blank=True
    )
    reason: LongText = field("Why it is set aside", ...)
    day: date | None = field("On what day")
    facts: ShortText = field("Mark of its facts", "")

    @property
    def title(self) -> str:
        """The remark that it sets aside."""
        return self.remark
