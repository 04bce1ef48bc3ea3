"""A path read as a chain: what each step is, whose it is, what it guards and opens."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from app.domain.failed import failed_rcds
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, POINT_KINDS
from app.domain.kinds._kind import DeviceKind, IntakeKind
from app.domain.network import Network, Path, Role, paths
from app.domain.record import (
    Board,
    Circuit,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
)
from app.domain.record._field import Model, Number, field
from app.domain.record.choices import GRADES

# An arc fault device may hold an RCD; of these others one cannot tell by the kind.
_MAY_BE_RCD = frozenset({"afdd", "unknown", "other"})


class Step(Model):
    """One step of a chain.

    ``protects`` says what it guards everything after it against; ``opens`` which poles
    it breaks when it is switched off, by the record or, failing that, ``opens_basis``
    says that it is only usual for its kind: then *line* means at least the line.
    ``isolates`` is false of what opens nothing, and of what switches itself.
    ``failed`` says why an RCD is not to be counted on: see `app.domain.failed`.
    """

    ref: str = field("Reference", ...)
    sort: str = field("Sort of item", ...)
    kind: str | None = field("Kind")
    title: str = field("What it is called", ...)
    owner: str = field("Whose it is", "unknown")
    room: str | None = field("Room")
    board: str | None = field("Board")
    when: str = field("When it passes the supply on", "always")
    rated_current_a: Number | None = field("Rated current", unit="A")
    curve: str | None = field("Type")
    protects: tuple[str, ...] = field("Guards against", ())
    residual_current_ma: Number | None = field("IΔn", unit="mA")
    rcd_type: str | None = field("RCD type")
    time_delayed: str | None = field("Time-delayed")
    failed: str = field("Why its RCD is not to be counted on", "")
    fuse_a: Number | None = field("Fuse in it", unit="A")
    opens: str = field("Poles that it opens", "none")
    opens_basis: str = field("How that is known", "none")
    isolates: bool = field("Parts what is behind it for a person", default=False)
    tie: str | None = field("Tie by which it is fed")
    grade: str | None = field("How that tie is known")


class Chain(Model):
    """One way that the supply takes to a thing, from where it begins."""

    role: str = field("Conductor", "line")
    references: tuple[str, ...] = field("References in order", ())
    begins_at_source: bool = field("Begins at a source", default=False)
    runs_in_circle: bool = field("Cut where the record runs in a circle", default=False)
    when: tuple[str, ...] = field("When it is live, unless always", ())
    lowest_grade: str | None = field("Lowest grade of its ties")
    steps: tuple[Step, ...] = field("Steps", ())


# Steps already read, by reference, tie and the owner before: chains share most.
Steps = dict[tuple[str, str | None, str], Step]


def chains(net: Network, ref: str, role: Role = "line") -> tuple[Chain, ...]:
    """Return every chain to a thing, in the order that the record names its feeds."""
    return tuple(_chain(net, path, role) for path in paths(net, ref, role))


def is_rcd(step: Step) -> bool:
    """Return whether a step guards what is after it against earth leakage."""
    return "earth_leakage" in step.protects


def may_be_rcd(step: Step) -> bool:
    """Return whether the record leaves open that a step guards by an RCD.

    The RCD in a socket-outlet guards that outlet; whether it guards what is tied behind
    it too depends on how that is wired.
    """
    if is_rcd(step):
        return False
    if step.sort == "point":
        return bool(step.residual_current_ma)
    return step.sort in ("device", "intake") and step.kind in _MAY_BE_RCD


def is_overcurrent(step: Step) -> bool:
    """Return whether a step guards what is after it against too much current."""
    return "overload" in step.protects or "short_circuit" in step.protects


def isolates(step: Step) -> bool:
    """Return whether a person can part what is behind a step from it."""
    return step.isolates


def switches_itself(item: Item) -> bool:
    """Return whether a thing goes on and off by itself, by its kind."""
    if isinstance(item, Device):
        return DEVICE_KINDS[item.kind].switches_itself
    return isinstance(item, IntakeItem) and INTAKE_KINDS[item.kind].switches_itself


def poles_opened(item: Device | IntakeItem) -> str:
    """Return the poles that a thing opens, as recorded or else as usual."""
    device = isinstance(item, Device)
    kind = DEVICE_KINDS[item.kind] if device else INTAKE_KINDS[item.kind]
    return _opens(kind, item.poles)["opens"]


def when_of(item: Item) -> str:
    """Return when a thing passes the supply on.

    Of what switches itself, *all the time* only says that nobody has said otherwise.
    """
    when = item.when if isinstance(item, Device | IntakeItem | Source) else "always"
    return "unknown" if when == "always" and switches_itself(item) else when


def board_of(record: Record, circuit: Circuit) -> tuple[str, ...]:
    """Return the boards that a circuit's ways stand on."""
    ways = (record.find(Device, ref) for ref in circuit.ways)
    return tuple(dict.fromkeys(way.board for way in ways if way))


def _chain(net: Network, path: Path, role: Role) -> Chain:
    steps = tuple(_steps(net, path))
    grades = [step.grade for step in steps if step.grade is not None]
    times = dict.fromkeys(step.when for step in steps if step.when != "always")
    return Chain(
        role=role,
        references=path.refs,
        begins_at_source=path.whole,
        runs_in_circle=path.circle,
        when=tuple(times),
        lowest_grade=min(grades, default=None, key=list(GRADES).index),
        steps=steps,
    )


def _steps(net: Network, path: Path) -> Iterator[Step]:
    record, owner = net.record, "unknown"
    known: Steps = net.keep("steps", dict)
    for ref, tie in zip(path.refs, path.ties, strict=True):
        key = (ref, tie, owner)
        step = known.get(key)
        if step is None:
            item = record.by_ref[ref]
            own = _owner(record, item, owner)
            step = known[key] = _step(net, item, own, record.find(Tie, tie))
        owner = step.owner
        yield step


def _owner(record: Record, item: Item, before: str) -> str:
    """Circuits and points belong to the owner of the way or source that feeds them."""
    if isinstance(item, IntakeItem | Source):
        return item.owner
    if isinstance(item, Device):
        board = record.find(Board, item.board)
        return board.owner if board else "unknown"
    return before


def _step(net: Network, item: Item, owner: str, tie: Tie | None) -> Step:
    failure = failed_rcds(net).get(item.ref)
    return Step(
        ref=item.ref,
        sort=item.sort,
        kind=getattr(item, "kind", None),
        title=item.title,
        owner=owner,
        tie=tie.ref if tie else None,
        grade=tie.grade if tie else None,
        when=when_of(item),
        failed=failure.says if failure else "",
        **_isolating(item, _facts(net.record, item)),
    )


def _isolating(item: Item, facts: dict[str, Any]) -> dict[str, Any]:
    opens = facts.get("opens", "none") != "none"
    return {**facts, "isolates": opens and not switches_itself(item)}


def _facts(record: Record, item: Item) -> dict[str, Any]:
    """Return what is recorded of a thing; a figure of 0 is none."""
    if isinstance(item, Device):
        return _device_facts(record, item)
    if isinstance(item, IntakeItem):
        return _intake_facts(record, item)
    return _point_facts(record, item) if isinstance(item, Point) else {}


def _device_facts(record: Record, item: Device) -> dict[str, Any]:
    kind = DEVICE_KINDS[item.kind]
    board = record.find(Board, item.board)
    protects = _with_leakage(kind.protects, item.residual_current_ma)
    residual = "earth_leakage" in protects
    return {
        "board": item.board,
        "room": _room_name(record, board.room if board else None),
        "rated_current_a": item.rated_current_a or None,
        "curve": item.curve if "curve" in kind.fields else None,
        "residual_current_ma": item.residual_current_ma or None,
        "rcd_type": item.rcd_type if residual else None,
        "time_delayed": item.time_delayed if residual else None,
        "protects": protects,
        **_opens(kind, item.poles),
    }


def _intake_facts(record: Record, item: IntakeItem) -> dict[str, Any]:
    kind = INTAKE_KINDS[item.kind]
    return {
        "room": _room_name(record, item.room),
        "rated_current_a": item.rated_current_a or None,
        "protects": kind.protects,
        **_opens(kind, item.poles),
    }


def _point_facts(record: Record, item: Point) -> dict[str, Any]:
    kind = POINT_KINDS[item.kind]
    fused = kind.has_fuse or item.fuse_a
    own = ("overload", "short_circuit") if fused else ()
    onward = item.residual_current_ma if kind.guards_onward else None
    protects = _with_leakage(own, onward)
    return {
        "room": _room_name(record, item.room),
        "residual_current_ma": item.residual_current_ma or None,
        "rcd_type": "unknown" if "earth_leakage" in protects else None,
        "fuse_a": item.fuse_a or None,
        "protects": protects,
        **_usual(kind.switches),
    }


def _with_leakage(protects: tuple[str, ...], own: Decimal | None) -> tuple[str, ...]:
    """An IΔn, unless it is 0, makes an RCD of any device."""
    if not own or "earth_leakage" in protects:
        return protects
    return (*protects, "earth_leakage")


def _opens(kind: DeviceKind | IntakeKind, recorded: str) -> dict[str, str]:
    """Poles that a thing breaks; where its kind breaks nothing, nothing does."""
    if recorded == "unknown" or "poles" not in kind.fields:
        return _usual(kind.opens)
    return {"opens": recorded, "opens_basis": "recorded"}


def _usual(poles: str) -> dict[str, str]:
    return {"opens": poles, "opens_basis": "none" if poles == "none" else "usual"}


def _room_name(record: Record, ref: str | None) -> str | None:
    room = record.find(Room, ref)
    return room.name if room else None
