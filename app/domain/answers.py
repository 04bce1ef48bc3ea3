"""What the three questions answer: shapes that pages, people and programs share.

Their JSON Schema is what ``ways schema --answer`` prints.  Nothing here says anything
of the installation itself: it follows from the record, and ``unknowns`` says what that
does not say.
"""

from __future__ import annotations

from datetime import date
from typing import Literal

from app.domain.chain import Chain, Step
from app.domain.record._field import Model, Number, field

Cover = Literal["yes", "failed", "no", "some", "unknown", "not_mains"]


class Named(Model):
    """A thing by its reference and what it is called."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)


class TieAnswer(Model):
    """A tie, and how it is known."""

    ref: str = field("Reference", ...)
    point: str = field("Point", ...)
    tied_to: Named = field("Tied to", ...)
    role: str = field("What the tie is", ...)
    grade: str = field("How it is known", ...)
    seen_on: date | None = field("On what day")
    seen_by: str = field("By whom, or in which document", "")


class Rcd(Model):
    """An RCD above a point, or in it."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    residual_current_ma: Number | None = field("IΔn", unit="mA")
    rcd_type: str | None = field("RCD type")
    time_delayed: str | None = field("Time-delayed")
    failed: str = field("Why it is not to be counted on", "")


class Overcurrent(Model):
    """A fuse or circuit-breaker above a point."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    kind: str | None = field("Kind")
    rated_current_a: Number | None = field("Rated current", unit="A")
    curve: str | None = field("Type")


class PointAnswer(Model):
    """What feeds a point, whose each piece is, and what protects it.

    ``opens`` holds only what a person can part it from the supply with, on the way of
    its neutral too where that is another: no contactor or time switch, for these come
    on by themselves, and nothing that opens no pole.
    """

    asks: Literal["point"] = "point"
    home: str = field("Home", ...)
    point: Named = field("Point", ...)
    kind: str = field("Kind", ...)
    room: Named | None = field("Room")
    circuits: tuple[Named, ...] = field("Circuits that feed it", ())
    chains: tuple[Chain, ...] = field("From each source to the point", ())
    neutral_chains: tuple[Chain, ...] = field("The neutral, where it differs", ())
    neutral_circuits: tuple[Named, ...] = field(
        "Circuits by which its neutral returns, where that differs", ()
    )
    can_feed_back: tuple[Named, ...] = field("Sources that can feed back into it", ())
    overcurrent: tuple[Overcurrent, ...] = field("Fuses and breakers upstream", ())
    rcds: tuple[Rcd, ...] = field("RCDs upstream", ())
    own_rcd_ma: Number | None = field("RCD in the point", unit="mA")
    within_30_ma: Cover = field("RCD of 30 mA or less on every chain", "unknown")
    past_rcd: tuple[Named, ...] = field(
        "Sources that may feed it past its RCD of 30 mA or less", ()
    )
    earthing_open: tuple[Named, ...] = field(
        "Sources before its RCD of which no earth of the neutral is recorded", ()
    )
    local_fuses: dict[str, Number | None] = field("Fuses in points before it", ...)
    opens: tuple[Step, ...] = field("What can switch it", ())
    boundaries: tuple[tuple[str, str], ...] = field("Where the owner changes", ())
    boundaries_unknown: tuple[tuple[str, str], ...] = field(
        "Where it is not known whether the owner changes", ()
    )
    ties: tuple[TieAnswer, ...] = field("Ties", ())
    also_present: tuple[Named, ...] = field("Other conductors in the box", ())
    present_before: tuple[Named, ...] = field(
        "Circuits in the boxes of points before it", ()
    )
    controlled_by: tuple[Named, ...] = field("Switched by", ())
    odd: str | None = field("Why it is an odd one out")
    unknowns: tuple[str, ...] = field("What the record does not say", ())


class Feeding(Model):
    """A point that something feeds."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    room: Named | None = field("Room")
    care: tuple[str, ...] = field("Missed if it goes off", ())
    other_feed: bool = field("Keeps another feed", default=False)
    neutral_elsewhere: tuple[Named, ...] = field(
        "Circuits elsewhere by which its neutral returns", ()
    )


class WayAnswer(Model):
    """What a device feeds, and in which rooms."""

    asks: Literal["way"] = "way"
    home: str = field("Home", ...)
    way: Named = field("Way", ...)
    kind: str = field("Kind", ...)
    board: Named | None = field("Board")
    label_found: str | None = field("Label as found")
    chains: tuple[Chain, ...] = field("From each source to the device", ())
    circuits: tuple[Named, ...] = field("Circuits it feeds", ())
    boards: tuple[Named, ...] = field("Boards it feeds", ())
    points: tuple[Feeding, ...] = field("Points it feeds", ())
    rooms: tuple[Named, ...] = field("Rooms it serves", ())
    care: tuple[Feeding, ...] = field("Points that would be missed", ())
    neutral_only: tuple[Named, ...] = field("Points whose neutral alone is here", ())
    present_at: tuple[Named, ...] = field("Boxes it is present in", ())
    can_feed_back: tuple[Named, ...] = field("Sources that can feed back into it", ())
    unknowns: tuple[str, ...] = field("What the record does not say", ())


class RoomAnswer(Model):
    """Which ways serve a room."""

    asks: Literal["room"] = "room"
    home: str = field("Home", ...)
    room: Named = field("Room", ...)
    looked_at: str = field("Looked at", ...)
    ways: tuple[Named, ...] = field("Ways that serve it", ())
    circuits: tuple[Named, ...] = field("Circuits in it", ())
    sources: tuple[Named, ...] = field("Sources that feed it without a circuit", ())
    can_feed_back: tuple[Named, ...] = field("Sources that can feed back into it", ())
    points: tuple[Named, ...] = field("Points in it", ())
    ties: tuple[TieAnswer, ...] = field("Ties of its points", ())
    not_tied: tuple[Named, ...] = field("Points that nothing is known to feed", ())
    odd: tuple[str, ...] = field("Odd ones out", ())
    unknowns: tuple[str, ...] = field("What the record does not say", ())
