"""The home, its supply facts, its rooms and the sources that can feed it."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from pydantic import AfterValidator

from app.domain.mpan import checked_mpan
from app.domain.phone import checked_phone
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

SUPPLY = "The supply"


class Home(Item):
    """One home, and what is known of the supply that enters it."""

    sort: ClassVar[str] = "home"
    plural: ClassVar[str] = "homes"
    noun: ClassVar[str] = "Home"
    prefix: ClassVar[str] = "H"

    name: ShortText = field("Name", ..., hint="What you call it. No address is needed.")
    nation: Annotated[str, OneOf(choices.NATIONS)] = field(
        "Nation", "unknown", hint="The rules differ between the four."
    )
    dwelling: Annotated[str, OneOf(choices.DWELLINGS)] = field(
        "Kind of dwelling", "unknown"
    )
    tenure: Annotated[str, OneOf(choices.TENURES)] = field("Who lives in it", "unknown")
    storeys: int | None = field("Storeys", low=1, high=20)
    floor_area_m2: Number | None = field("Floor area", unit="m²", low=1, high=10000)
    year_built: int | None = field("Year built (about)", low=1100, high=2200)
    inspected_on: date | None = field(
        "Last inspection report", hint="The day that stands on the report.", come=True
    )
    inspect_again_by: date | None = field(
        "Next inspection recommended by",
        hint="The day that the report recommends.",
        after="inspected_on",
    )
    notes: LongText = field("Notes", "")

    earthing: Annotated[str, OneOf(choices.EARTHINGS)] = field(
        "Earthing arrangement",
        "unknown",
        hint="As a document or the network says. Never guess it from how it looks.",
        group=SUPPLY,
        term="earthing-arrangement",
    )
    earthing_basis: Annotated[str, OneOf(choices.BASES)] = field(
        "How the earthing is known", "unknown", group=SUPPLY
    )
    earthing_note: LongText = field("Note on the earthing", "", group=SUPPLY)
    phases: Annotated[str, OneOf(choices.PHASES)] = field(
        "Phases", "unknown", group=SUPPLY, term="phase"
    )
    looped: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Supply looped to or from next door",
        "unknown",
        group=SUPPLY,
        term="looped-supply",
    )
    ze_ohm: Number | None = field(
        "External loop impedance, Ze",
        unit="Ω",
        low=0,
        high=1000,
        group=SUPPLY,
        term="ze",
    )
    ze_basis: Annotated[str, OneOf(choices.SUPPLY_BASES)] = field(
        "How Ze is known", "unknown", group=SUPPLY
    )
    fault_current_ka: Number | None = field(
        "Prospective fault current",
        unit="kA",
        low=0,
        high=100,
        group=SUPPLY,
        term="prospective-fault-current",
    )
    fault_current_basis: Annotated[str, OneOf(choices.SUPPLY_BASES)] = field(
        "How the fault current is known", "unknown", group=SUPPLY
    )
    mpan: Annotated[ShortText, AfterValidator(checked_mpan)] = field(
        "MPAN",
        "",
        hint="The 13 digits on the bill that begin 10 to 29. Private; may stay empty.",
        group=SUPPLY,
        term="mpan",
        private="mpan",
    )
    network_phone: Annotated[ShortText, AfterValidator(checked_phone)] = field(
        "Number of your network operator",
        "",
        hint="Private; from the bill. Needed in Northern Ireland, where 105 does not "
        "reach it.",
        group=SUPPLY,
        private="phones",
    )


class Room(Item):
    """A room, a cupboard or an outside wall, in the order of the walk."""

    sort: ClassVar[str] = "room"
    plural: ClassVar[str] = "rooms"
    noun: ClassVar[str] = "Room"
    prefix: ClassVar[str] = "R"

    name: ShortText = field("Name", ...)
    storey: Annotated[str, OneOf(choices.STOREYS)] = field("Storey", "unknown")
    kind: Annotated[str, OneOf(choices.ROOM_KINDS)] = field("Kind of room", "unknown")
    has_bath: Annotated[str, OneOf(choices.YES_NO)] = field("Bath", "unknown")
    has_shower: Annotated[str, OneOf(choices.YES_NO)] = field("Shower", "unknown")
    has_basin: Annotated[str, OneOf(choices.YES_NO)] = field("Basin or sink", "unknown")
    has_pool: Annotated[str, OneOf(choices.YES_NO)] = field("Pool or sauna", "unknown")
    looked_at: Annotated[str, OneOf(choices.LOOKED_AT)] = field("Looked at", "not_yet")
    note: LongText = field("Note", "")


class Source(Item):
    """Something that can feed the home, or may: answered yes, no or not known."""

    sort: ClassVar[str] = "source"
    plural: ClassVar[str] = "sources"
    noun: ClassVar[str] = "Source"
    prefix: ClassVar[str] = "S"

    name: ShortText = field("Name", "")
    kind: Annotated[str, OneOf(choices.SOURCE_KINDS)] = field("Kind", ...)
    present: Annotated[str, OneOf(choices.YES_NO)] = field("Is there one", "unknown")
    owner: Annotated[str, OneOf(choices.OWNERS)] = field("Whose it is", "unknown")
    when: Annotated[str, OneOf(choices.WHEN)] = field("When it feeds", "unknown")
    runs_without_network: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Can feed when the network is off", "unknown"
    )
    joins: Annotated[Ref, RefTo(("circuit", "device", "intake"))] | None = field(
        "Can feed back through",
        hint="The circuit, device or intake item where it joins the installation.",
        blank=True,
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its name, else its kind."""
        return self.name or choices.SOURCE_KINDS[self.kind]
