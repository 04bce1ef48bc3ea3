"""Files that belong to things of the record, and what is marked on a picture."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from pydantic import Field

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
from app.domain.record.work import ABOUT

Digest = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]


class Attachment(Item):
    """A photograph or another file; its bytes are kept once, by their content."""

    sort: ClassVar[str] = "attachment"
    plural: ClassVar[str] = "attachments"
    noun: ClassVar[str] = "File"
    prefix: ClassVar[str] = "F"
    by_form: ClassVar[bool] = False
    goes_with: ClassVar[str] = "of"

    of: tuple[Annotated[Ref, RefTo((*ABOUT, "work", "paper", "trip"))], ...] = field(
        "What it belongs to", (), hint="Left open: the home."
    )
    sha256: Digest = field("SHA-256 of its bytes", ...)
    media_type: Annotated[str, OneOf(choices.MEDIA_TYPES)] = field("Type", ...)
    size: int = field("Size", ..., unit="bytes", low=1, high=2**31 - 1)
    file_name: ShortText = field("Name of the file", "")
    caption: ShortText = field("Caption", "")
    taken_on: date | None = field("Taken on")
    added_at: Moment | None = field("Added", hint="UTC, as 2026-03-01T14:05:00Z.")
    added_by: ShortText = field("By whom", "", private="names")
    private: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Keep it back when the record is handed over", "unknown"
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its caption, else the name of the file, else its reference."""
        return self.caption or self.file_name or f"File {self.ref}"


class Spot(Item):
    """A spot marked on a picture: this way, this socket."""

    sort: ClassVar[str] = "spot"
    plural: ClassVar[str] = "spots"
    noun: ClassVar[str] = "Spot"
    prefix: ClassVar[str] = "L"
    by_form: ClassVar[bool] = False

    attachment: Annotated[Ref, RefTo(("attachment",))] = field("Picture", ...)
    across: int = field("From the left", ..., unit="‰", low=0, high=1000)
    down: int = field("From the top", ..., unit="‰", low=0, high=1000)
    about: Annotated[Ref, RefTo(ABOUT)] | None = field("What it shows", blank=True)
    words: ShortText = field("Words", "")

    @property
    def title(self) -> str:
        """Its words, else its reference."""
        return self.words or f"Spot {self.ref}"
