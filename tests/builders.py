"""The shortest way to say an installation: what is fed stands inside what feeds it.

    home(
        street(
            board("B1",
                main_switch("MS",
                    rcd("R1", way("W1", circuit("C1", socket("P1")))),
                    way("W2", circuit("C2", light("P2"))))))
    )

Any field of the record may be given by its name; numbers may be plain.  What has a
second feed is said beside the picture, with ``tie`` or by naming references.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Protocol

from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Control,
    Device,
    Home,
    IntakeItem,
    Item,
    Point,
    Reading,
    Record,
    Room,
    Round,
    Source,
    Tie,
    specs,
)

OTHER_SOURCES = ("solar", "battery", "generator", "vehicle", "neighbour", "landlord")


@dataclass(frozen=True)
class Part:
    """A thing of the installation, with what it feeds inside it."""

    model: type[Item]
    fields: dict[str, Any]
    inner: tuple[Part, ...] = ()


class Maker(Protocol):
    def __call__(self, ref: str, *inner: Part, **fields: Any) -> Part: ...


def _maker(model: type[Item], **usual: Any) -> Maker:
    def make(ref: str, *inner: Part, **fields: Any) -> Part:
        return Part(model, {"ref": ref, **usual, **fields}, inner)

    return make


room = _maker(Room, name="A room", storey="ground", kind="living", looked_at="all")
source = _maker(Source, kind="network", present="yes", owner="network", when="always")
intake = _maker(IntakeItem, owner="consumer")
cutout = _maker(IntakeItem, kind="cutout", owner="network", rated_current_a=100)
meter = _maker(IntakeItem, kind="meter", owner="meter_operator")
tails = _maker(IntakeItem, kind="tails", owner="consumer")

board = _maker(Board, name="A board", owner="consumer")
device = _maker(Device)
main_switch = _maker(Device, kind="main_switch", rated_current_a=100)
rcd = _maker(Device, kind="rcd", rated_current_a=63, residual_current_ma=30)
way = _maker(Device, kind="circuit_breaker", rated_current_a=32, curve="B")
rcbo = _maker(
    Device, kind="rcbo", rated_current_a=32, curve="B", residual_current_ma=30
)

circuit = _maker(Circuit)
point = _maker(Point)
socket = _maker(Point, kind="socket")
light = _maker(Point, kind="light")
fcu = _maker(Point, kind="fused_connection_unit", fuse_a=13)
switch = _maker(Point, kind="switch")


def tie(point: str, tied_to: str, role: str = "feeds", **fields: Any) -> Part:
    ref = fields.pop("ref", f"T-{point}-{tied_to}-{role}")
    ends = {"point": point, "tied_to": tied_to, "role": role}
    return Part(Tie, {"ref": ref, "grade": "3", **ends, **fields})


def control(controller: str, controlled: str) -> Part:
    ref = f"K-{controller}-{controlled}"
    ends = {"controller": controller, "controlled": controlled}
    return Part(Control, {"ref": ref, **ends})


def switched_off(
    ref: str, *off: str, dead: str = "", live: str = "", **fields: Any
) -> tuple[Part, ...]:
    """A round with some devices off, and what A saw go dead or stay live."""
    seen = {"dead": dead.split(), "live": live.split()}
    readings = (
        Part(
            Reading,
            {
                "ref": f"{ref}-{point}",
                "round": ref,
                "point": point,
                "seen": what,
                "seen_by": "A",
            },
        )
        for what, points in seen.items()
        for point in points
    )
    return (Part(Round, {"ref": ref, "off": off, **fields}), *readings)


def street(*inner: Part) -> Part:
    """The network, its cut-out, the meter and the tails, each with its owner."""
    return source("GRID", cutout("CUT", meter("MET", tails("TAIL", *inner))))


def one_way(*inner: Part, **fields: Any) -> Part:
    """A street, a board and one way with what hangs on it: ``GRID … MS W1``."""
    return street(board("B1", main_switch("MS", way("W1", *inner, **fields))))


def no_other_sources() -> tuple[Part, ...]:
    """Every other source answered with no."""
    return tuple(
        source(f"NO-{kind}", kind=kind, present="no") for kind in OTHER_SOURCES
    )


def home(*parts: Part, **fields: Any) -> Record:
    """Return the record of a home with these parts."""
    items: dict[str, list[Item]] = {cls.plural: [] for cls in SORTS.values()}
    for part in _flat(parts, None, None):
        items[part.model.plural].append(_item(part))
    about = _item(Part(Home, {"ref": "H1", "name": "A home", **fields}))
    return Record.model_validate(
        {"home": about, **{k: tuple(v) for k, v in items.items()}}
    )


def _flat(
    parts: tuple[Part, ...], feeder: Part | None, on: str | None
) -> Iterator[Part]:
    """Yield each part before what is inside it, its feeder written into it."""
    for part in parts:
        fed = _fed(part, feeder, on)
        yield from fed
        board = part.fields["ref"] if part.model is Board else on
        inner_on = board if part.model in (Board, Device) else None
        yield from _flat(part.inner, part, inner_on)


def _fed(part: Part, feeder: Part | None, on: str | None) -> Iterator[Part]:
    fields = dict(part.fields)
    grade = fields.pop("tied", "3") if part.model is Point else "3"
    by = feeder.fields["ref"] if feeder else None
    if part.model is Device:
        fields.setdefault("board", on)
    if part.model is Circuit and by:
        fields.setdefault("ways", (by,))
    elif (
        part.model in (IntakeItem, Board, Device)
        and feeder
        and feeder.model is not Board
    ):
        fields.setdefault("fed_from", by)
    yield Part(part.model, fields)
    if part.model is Point and by:
        yield tie(fields["ref"], by, grade=grade)


def _item(part: Part) -> Item:
    """Build an item; plain numbers become the decimals that the record holds."""
    decimals = {spec.name for spec in specs(part.model) if spec.type == "decimal"}
    values = {
        name: Decimal(str(value)) if name in decimals and value is not None else value
        for name, value in part.fields.items()
    }
    return part.model.model_validate(values)
