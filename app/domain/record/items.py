"""What every item of the record has, and the two smallest: a tie and a control."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.record import choices
from app.domain.record._field import (
    LongText,
    Model,
    OneOf,
    Ref,
    RefTo,
    ShortText,
    field,
)


class Item(Model):
    """A thing in the record, with a reference unique in its home.

    ``sort`` names the class in tables, addresses and documents; ``prefix`` begins the
    references made for it.  ``by_form`` says whether the general form edits it; what
    has pages of its own, made for the moment of use, is not offered there.
    ``cannot_lose`` names references without which, once given, it would say something
    else; ``goes_with`` one that keeps it as long as anything in it is left.
    """

    sort: ClassVar[str]
    plural: ClassVar[str]
    noun: ClassVar[str]
    prefix: ClassVar[str]
    by_form: ClassVar[bool] = True
    cannot_lose: ClassVar[tuple[str, ...]] = ()
    goes_with: ClassVar[str] = ""

    ref: Ref = field(
        "Reference", ..., hint="Letters, digits, dot, hyphen; unique in this home."
    )

    @property
    def title(self) -> str:
        """What to call it in a list: its name, else its noun and reference."""
        name = str(getattr(self, "name", ""))
        return name or f"{self.noun} {self.ref}"


class Tie(Item):
    """Says that a point belongs to a circuit, how, and how that is known."""

    sort: ClassVar[str] = "tie"
    plural: ClassVar[str] = "ties"
    noun: ClassVar[str] = "Tie"
    prefix: ClassVar[str] = "T"

    point: Annotated[Ref, RefTo(("point",))] = field("Point", ...)
    tied_to: Annotated[Ref, RefTo(("circuit", "point", "source"))] = field(
        "Tied to",
        ...,
        hint="A circuit; or the switch, fused connection unit or socket it is behind.",
        term="tie",
    )
    role: Annotated[str, OneOf(choices.TIE_ROLES)] = field("What the tie is", "feeds")
    grade: Annotated[str, OneOf(choices.GRADES)] = field(
        "How it is known", "0", term="grade"
    )
    seen_on: date | None = field(
        "On what day", hint="The day it was seen or written.", come=True
    )
    seen_by: ShortText = field("By whom or in which document", "", private="names")
    note: LongText = field("Note", "")


class Control(Item):
    """Says that one thing switches another, as a wall switch does a light."""

    sort: ClassVar[str] = "control"
    plural: ClassVar[str] = "controls"
    noun: ClassVar[str] = "Control"
    prefix: ClassVar[str] = "K"

    controller: Annotated[Ref, RefTo(("point", "device", "intake"))] = field(
        "What switches", ...
    )
    controlled: Annotated[Ref, RefTo(("point", "device", "intake"))] = field(
        "What is switched", ...
    )
    note: LongText = field("Note", "")
