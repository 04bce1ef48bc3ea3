"""An item of the intake: from the street to the tails, and the earthing."""

from __future__ import annotations

from typing import Annotated, ClassVar

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import choices
from app.domain.record._field import (
    LongText,
    Number,
    OneOf,
    Ref,
    RefTo,
    ShortText,
    field,
)
from app.domain.record.items import Item

KINDS = {code: kind.label for code, kind in INTAKE_KINDS.items()}


class IntakeItem(Item):
    """One thing in the cupboard, whose it is, and what feeds it."""

    sort: ClassVar[str] = "intake"
    plural: ClassVar[str] = "intake"
    noun: ClassVar[str] = "Intake item"
    prefix: ClassVar[str] = "I"

    kind: Annotated[str, OneOf(KINDS)] = field("What it is", ...)
    name: ShortText = field("Name", "", hint="Only if the kind does not say enough.")
    owner: Annotated[str, OneOf(choices.OWNERS)] = field(
        "Whose it is", "unknown", term="ownership-boundary"
    )
    fed_from: Annotated[Ref, RefTo(("source", "intake", "device"))] | None = field(
        "Fed from", hint="The item before it, towards the street."
    )
    second_feed: Annotated[Ref, RefTo(("source", "intake", "device"))] | None = field(
        "Second feed",
        hint="Only a changeover switch or a battery gateway has one.",
        blank=True,
    )
    room: Annotated[Ref, RefTo(("room",))] | None = field("Where it is")
    basis: Annotated[str, OneOf(choices.BASES)] = field("How this is known", "unknown")
    printed: ShortText = field("Printed on it", "", hint="As it stands; no more.")
    rated_current_a: Number | None = field(
        "Rating printed",
        unit="A",
        low=0,
        high=1000,
        nonzero=True,
        term="rated-current",
    )
    poles: Annotated[str, OneOf(choices.POLES)] = field(
        "Breaks", "unknown", term="poles"
    )
    entry: Annotated[str, OneOf(choices.CABLE_ENTRIES)] = field(
        "How the cable comes in", "unknown"
    )
    csa_mm2: Number | None = field(
        "Conductor size printed", unit="mm²", low=0, high=1000, nonzero=True
    )
    length_m: Number | None = field("Length", unit="m", low=0, high=1000)
    resistance_ohm: Number | None = field(
        "Resistance to earth",
        unit="Ω",
        low=0,
        high=100000,
        hint="As an electrician's document gives it.",
    )
    service: Annotated[str, OneOf(choices.SERVICES)] = field(
        "Bonds what", "unknown", term="main-bonding"
    )
    seal: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Seal there", "unknown", term="seal"
    )
    condition: Annotated[str, OneOf(choices.CONDITIONS)] = field(
        "What is seen of its condition", "unknown"
    )
    when: Annotated[str, OneOf(choices.WHEN)] = field(
        "When it passes the supply on",
        "always",
        hint="Of a contactor or a time switch, “All the time” reads as not known.",
        hinted="switches_itself",
        term="off-peak",
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its name, else its kind."""
        return self.name or KINDS[self.kind]
