"""A point: a socket-outlet, a light, a boiler, or what no one has identified yet."""

from __future__ import annotations

from typing import Annotated, ClassVar

from app.domain.kinds import POINT_KINDS
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

KINDS = {code: kind.label for code, kind in POINT_KINDS.items()}


class Point(Item):
    """A point in a room; what feeds it is said by its ties."""

    sort: ClassVar[str] = "point"
    plural: ClassVar[str] = "points"
    noun: ClassVar[str] = "Point"
    prefix: ClassVar[str] = "P"

    room: Annotated[Ref, RefTo(("room",))] | None = field("Room")
    kind: Annotated[str, OneOf(KINDS)] = field("What it is", ...)
    place: ShortText = field(
        "Where in the room", "", hint="Such as left of the window."
    )
    name: ShortText = field(
        "Name", "", hint="Only if kind and place do not say enough."
    )
    count: int = field("How many alike", 1, low=1, high=99)
    connection: Annotated[str, OneOf(choices.CONNECTIONS)] = field(
        "How it is joined", "unknown", term="spur"
    )
    fuse_a: Number | None = field("Fuse in it", unit="A", low=0, high=100, nonzero=True)
    residual_current_ma: Number | None = field(
        "RCD of its own, IΔn",
        unit="mA",
        low=0,
        high=3000,
        nonzero=True,
        term="residual-current",
    )
    care: tuple[Annotated[str, OneOf(choices.CARE)], ...] = field(
        "Missed if it goes off", (), term="care"
    )
    load_w: Number | None = field("Load", unit="W", low=0, high=100000)
    outdoor: Annotated[str, OneOf(choices.YES_NO)] = field("Outdoors", "unknown")
    ip: ShortText = field("IP code printed", "")
    current: Annotated[str, OneOf(choices.CURRENT_KINDS)] = field(
        "What it runs on", "unknown", term="extra-low-voltage"
    )
    metal: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Metal plate or fitting", "unknown"
    )
    condition: Annotated[str, OneOf(choices.POINT_CONDITIONS)] = field(
        "What is seen of its condition", "unknown"
    )
    from_bath_m: Number | None = field(
        "From the edge of the bath or shower",
        unit="m",
        low=0,
        high=100,
        hint="Only in a room with a bath or a shower.",
    )
    height_m: Number | None = field(
        "Height above the floor",
        unit="m",
        low=0,
        high=100,
        hint="To its middle. Only in a room with a bath or a shower.",
    )
    battery_backed: Annotated[str, OneOf(choices.YES_NO)] = field(
        "Has a battery of its own", "unknown"
    )
    looked_behind: Annotated[str, OneOf(choices.LOOKED_BEHIND)] = field(
        "Looked behind", "unknown"
    )
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its name, else its kind and place."""
        kind = KINDS[self.kind]
        return self.name or (f"{kind}, {self.place}" if self.place else kind)
