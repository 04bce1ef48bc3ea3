"""A circuit: what is wired to one way, or to several."""

from __future__ import annotations

from typing import Annotated, ClassVar

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

CABLE = "The cable"


class Circuit(Item):
    """A circuit with its cable, as far as it is known."""

    sort: ClassVar[str] = "circuit"
    plural: ClassVar[str] = "circuits"
    noun: ClassVar[str] = "Circuit"
    prefix: ClassVar[str] = "C"

    number: ShortText = field("Number", "")
    name: ShortText = field("Name", "", hint="Such as Upstairs sockets.")
    ways: tuple[Annotated[Ref, RefTo(("device", "intake"))], ...] = field(
        "Way", (), hint="More than one only where you know it to be so.", term="way"
    )
    use: Annotated[str, OneOf(choices.CIRCUIT_USES)] = field("Used for", "unknown")
    arrangement: Annotated[str, OneOf(choices.ARRANGEMENTS)] = field(
        "Arrangement", "unknown", term="ring-final"
    )
    cable: Annotated[str, OneOf(choices.CABLES)] = field(
        "Kind of cable", "unknown", group=CABLE
    )
    line_mm2: Number | None = field(
        "Line conductor",
        unit="mm²",
        low=0,
        high=1000,
        nonzero=True,
        group=CABLE,
        term="line",
    )
    cpc_mm2: Number | None = field(
        "Protective conductor",
        unit="mm²",
        low=0,
        high=1000,
        group=CABLE,
        term="protective-conductor",
    )
    has_cpc: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Has a protective conductor", "unknown", group=CABLE
    )
    colours: Annotated[str, OneOf(choices.COLOURS)] = field(
        "Colours", "unknown", group=CABLE
    )
    method: Annotated[str, OneOf(choices.METHODS)] = field(
        "How it is laid", "unknown", group=CABLE, term="installation-method"
    )
    length_m: Number | None = field(
        "Length",
        unit="m",
        low=0,
        high=10000,
        hint="To the furthest point; round the loop for a ring.",
        group=CABLE,
    )
    grouped_with: int | None = field(
        "Other circuits beside it", low=0, high=50, group=CABLE
    )
    ambient_c: int | None = field(
        "Warmest place", unit="°C", low=-20, high=90, group=CABLE
    )
    insulation_mm: int | None = field(
        "Length within insulation", unit="mm", low=0, high=100000, group=CABLE
    )
    installed: ShortText = field("When it was put in (about)", "")
    paper: Annotated[str, OneOf(choices.PAPERS)] = field("Paper for it", "unknown")
    connected_w: Number | None = field(
        "Connected load", unit="W", low=0, high=100000, term="connected-load"
    )
    managed: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Held back when the home draws much",
        "unknown",
        hint="As a vehicle charger or a battery with load management is.",
    )
    floor_area_m2: Number | None = field(
        "Floor area served", unit="m²", low=0, high=10000
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its name, else its number, else its reference."""
        return self.name or f"Circuit {self.number or self.ref}"

    @property
    def has_no_earth(self) -> bool:
        """Whether it is recorded that it has no protective conductor."""
        return self.has_cpc == "no" or self.cable == "twin_no_earth"
