"""A board, and the devices on it in their physical order."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.kinds import DEVICE_KINDS
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

KINDS = {code: kind.label for code, kind in DEVICE_KINDS.items()}


class Board(Item):
    """An enclosure with devices, fed from an intake item or from a way elsewhere."""

    sort: ClassVar[str] = "board"
    plural: ClassVar[str] = "boards"
    noun: ClassVar[str] = "Board"
    prefix: ClassVar[str] = "B"

    name: ShortText = field("Name", ..., hint="Such as Main board, Garage board.")
    room: Annotated[Ref, RefTo(("room",))] | None = field("Where it is")
    fed_from: (
        Annotated[Ref, RefTo(("intake", "circuit", "device", "point", "source"))] | None
    ) = field(
        "Fed from", hint="An intake item, or the circuit that ends at this board."
    )
    owner: Annotated[str, OneOf(choices.OWNERS)] = field("Whose it is", "unknown")
    enclosure: Annotated[str, OneOf(choices.ENCLOSURES)] = field("Enclosure", "unknown")
    year: int | None = field("Year (about)", low=1880, high=2200)
    earthing: Annotated[str, OneOf(choices.BOARD_EARTHINGS)] = field(
        "Earthing of what it feeds", "unknown", term="earthing-arrangement"
    )
    surge_protection: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Surge protection", "unknown", term="spd"
    )
    blanks_missing: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Openings without a blank", "unknown"
    )
    chart: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Circuit chart there", "unknown"
    )
    second_supply_notice: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Notice of a second supply there", "unknown"
    )
    condition: Annotated[str, OneOf(choices.POINT_CONDITIONS)] = field(
        "What is seen of its condition", "unknown"
    )
    paper: Annotated[str, OneOf(choices.PAPERS)] = field("Paper for it", "unknown")
    note: LongText = field("Note", "")


class Device(Item):
    """A device on a board: what is printed on it, and what it is fed from."""

    sort: ClassVar[str] = "device"
    plural: ClassVar[str] = "devices"
    noun: ClassVar[str] = "Device"
    prefix: ClassVar[str] = "D"

    board: Annotated[Ref, RefTo(("board",))] = field("Board", ...)
    kind: Annotated[str, OneOf(KINDS)] = field("What it is", ...)
    way: ShortText = field("Way number", "", hint="As printed, or as you count it.")
    label_found: ShortText | None = field(
        "Label as found",
        hint="The very words. A lone hyphen: nothing is written there.",
        term="label-as-found",
    )
    in_use: Annotated[str, OneOf(choices.USES)] = field("In use", "unknown")
    leave_on: ShortText = field(
        "Leave on, because",
        "",
        hint="Why it must not be switched off to find out, such as a medical device.",
    )
    fed_from: (
        Annotated[Ref, RefTo(("device", "intake", "circuit", "point", "source"))] | None
    ) = field("Fed from", hint="Left open: what the board itself is fed from.")
    second_feed: (
        Annotated[Ref, RefTo(("device", "intake", "circuit", "point", "source"))] | None
    ) = field("Second feed", hint="Only a changeover switch has one.", blank=True)
    rated_current_a: Number | None = field(
        "Rated current", unit="A", low=0, high=1000, nonzero=True, term="rated-current"
    )
    curve: Annotated[str, OneOf(choices.CURVES)] = field(
        "Type", "unknown", term="tripping-type"
    )
    residual_current_ma: Number | None = field(
        "IΔn", unit="mA", low=0, high=3000, nonzero=True, term="residual-current"
    )
    rcd_type: Annotated[str, OneOf(choices.RCD_TYPES)] = field(
        "RCD type", "unknown", term="rcd-types"
    )
    time_delayed: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Time-delayed, S", "unknown", term="time-delayed"
    )
    button_pressed_on: date | None = field(
        "Test button last pressed",
        hint="The day it was pressed and it tripped.",
        come=True,
    )
    button_every_months: int | None = field(
        "Test button asked for every",
        unit="months",
        low=1,
        high=60,
        hint="As it stands on the device, or on the notice beside it.",
    )
    poles: Annotated[str, OneOf(choices.POLES)] = field(
        "Breaks", "unknown", term="poles"
    )
    breaking_capacity_ka: Number | None = field(
        "Breaking capacity",
        unit="kA",
        low=0,
        high=200,
        nonzero=True,
        term="breaking-capacity",
    )
    fuse_wire_a: Number | None = field(
        "Fuse wire seen",
        unit="A",
        low=0,
        high=200,
        nonzero=True,
        hint="Without touching the carrier.",
        term="rewirable-fuse",
    )
    phase: Annotated[str, OneOf(choices.PHASE)] = field(
        "Phase", "unknown", term="phase"
    )
    modules: int | None = field(
        "Width", unit="modules", low=1, high=12, blank=True, term="module"
    )
    when: Annotated[str, OneOf(choices.WHEN)] = field(
        "When it passes the supply on",
        "always",
        hint="Of a contactor or a time switch, “All the time” reads as not known.",
        hinted="switches_itself",
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its way number and the words found beside it, as far as there are any."""
        short = DEVICE_KINDS[self.kind].label
        name = f"Way {self.way}" if self.way else f"{short} {self.ref}"
        return f"{name}, “{self.label_found}”" if self.label_found else name
