"""What the record expects when a set of switches is off."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from app.domain.answers import Named
from app.domain.chain import poles_opened
from app.domain.isolation.aim import Aim
from app.domain.isolation.names import called
from app.domain.isolation.rounds import stayed_live
from app.domain.isolation.shapes import Affected, Outcome, Switch
from app.domain.isolation.wires import DC_ISOLATOR, Wires, carries_supply, load_side
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, POINT_KINDS
from app.domain.network import Network, circuits_of, feeders_of, sources_of, upstream
from app.domain.record import Board, Device, IntakeItem, Item, Point, Record, Room
from app.domain.record.choices import CARE
from app.domain.unknowns import unanswered_sources

CARRIERS = frozenset({"fuse_rewirable", "fuse_cartridge", "fuse_bs88"})
_FIRST = list(CARE)


def outcome(wires: Wires, aim: Aim, opened: frozenset[str]) -> Outcome:
    """Return what goes off, what stays live and what is not known with these open."""
    before, live = wires.live(), wires.live(opened)
    points = wires.net.record.points
    worked_on = {point.ref for point in aim.points}
    lost = [p for p in points if p.ref in before and p.ref not in live]
    room = room_points(wires, aim)
    seen = {s.point.ref for s in stayed_live(wires, room, opened)}
    apart = [p for p in room if p.ref not in worked_on and p.ref in live | seen]
    return Outcome(
        switches=switches(wires, opened),
        parts=not aim.targets(wires.net) & live,
        goes_off=affected(
            wires, (p for p in lost if p.ref not in worked_on and p not in apart)
        ),
        work_off=affected(wires, (p for p in lost if p.ref in worked_on)),
        partly_off=affected(wires, _partly(wires, live)),
        live_here=affected(wires, (p for p in apart if not unfed(wires, p))),
        unknown_here=affected(wires, (p for p in room if unfed(wires, p))),
        intake_here=_intake_here(wires, aim, live),
        cannot=affected(wires, (p for p in aim.points if p.ref in live)),
        behind=behind(wires, opened),
    )


def room_points(wires: Wires, aim: Aim) -> tuple[Point, ...]:
    """Return the points of the rooms that the work is in."""
    rooms = {*aim.rooms}
    return tuple(p for p in wires.net.record.points if p.room in rooms)


def unfed(wires: Wires, point: Point) -> bool:
    """Return whether the record does not say what feeds a point."""
    return not feeders_of(wires.net, point.ref)


def switches(wires: Wires, opened: Iterable[str]) -> tuple[Switch, ...]:
    """Return things to switch off in the order to do it.

    What is furthest from the street goes first, so that the large switches part little
    load; a source's d.c. isolator last, after its a.c. side. Common practice, no
    source.
    """
    record = wires.net.record
    refs = set(opened)
    items = [item for item in record.items() if item.ref in refs]
    items.sort(
        key=lambda item: (isinstance(item, Point), -len(upstream(wires.net, item.ref)))
    )
    return tuple(_switch(record, item) for item in items)


def affected(wires: Wires, points: Iterable[Point]) -> tuple[Affected, ...]:
    """Return points as someone would ask for them, what is missed most first."""
    record = wires.net.record
    found = [
        Affected(
            ref=point.ref,
            title=point.title,
            room=room_name(record, point.room),
            care=point.care,
        )
        for point in points
    ]
    return tuple(sorted(found, key=_by_care))


def room_name(record: Record, ref: str | None) -> str | None:
    """Return the name of a room, if the record holds it."""
    room = record.find(Room, ref)
    return room.name if room else None


def behind(wires: Wires, opened: frozenset[str]) -> tuple[str, ...]:
    """Return in sentences what stays live at each open thing that is reached."""
    record, supplied = wires.net.record, wires.supplied(opened)
    found = [_supply_side(record, record.by_ref[r]) for r in opened if r in supplied]
    both = wires.sides(wires.roots, opened)
    found += [
        f"The outgoing side of {called(record.by_ref[ref])} stays live too."
        for ref in opened
        if load_side(ref) in both
    ]
    return tuple(dict.fromkeys(sorted(found)))


def _by_care(point: Affected) -> int:
    return min((_FIRST.index(care) for care in point.care), default=len(_FIRST))


def _partly(wires: Wires, live: frozenset[str]) -> list[Point]:
    """Points that lose one of their feeds and are reached all the same."""
    net = wires.net
    feeds = net.keep("what each point is fed by", partial(_feeds, net))
    reached = [point for point in net.record.points if point.ref in live]
    return [point for point in reached if not feeds[point.ref] <= live]


def _feeds(net: Network) -> dict[str, frozenset[str]]:
    """Return by which circuits, or sources at once, each point has line or neutral."""
    return {
        point.ref: frozenset(
            (
                *circuits_of(net, point.ref),
                *sources_of(net, point.ref),
                *net.neutral_circuits_at.get(point.ref, ()),
            )
        )
        for point in net.record.points
    }


def _intake_here(wires: Wires, aim: Aim, live: frozenset[str]) -> tuple[Named, ...]:
    return tuple(
        Named(ref=item.ref, title=item.title)
        for item in wires.net.record.intake
        if item.room in aim.rooms and item.ref in live and carries_supply(item)
    )


def _switch(record: Record, item: Item) -> Switch:
    board = record.find(Board, getattr(item, "board", None))
    place = board.room if board else getattr(item, "room", None)
    return Switch(
        ref=item.ref,
        title=item.title,
        kind=_kind_label(item),
        way=getattr(item, "way", ""),
        label_found=getattr(item, "label_found", None) or None,
        board=Named(ref=board.ref, title=board.name) if board else None,
        room=room_name(record, place),
        poles=_poles(item),
        carrier=getattr(item, "kind", "") in CARRIERS,
        still_live=_supply_side(record, item),
    )


def _kind_label(item: Item) -> str:
    if isinstance(item, Device):
        return DEVICE_KINDS[item.kind].label
    if isinstance(item, IntakeItem):
        return INTAKE_KINDS[item.kind].label
    return POINT_KINDS[item.kind].label if isinstance(item, Point) else ""


def breaks_neutral(item: Item) -> bool:
    """Return whether the record itself says that a thing breaks the neutral too."""
    return getattr(item, "poles", "unknown") in (
        "line_and_neutral",
        "three_line_and_neutral",
    )


def _poles(item: Item) -> str:
    if isinstance(item, Device | IntakeItem):
        return item.poles if poles_opened(item) == item.poles else "unknown"
    return "unknown"


def _may_have_panels(record: Record) -> bool:
    """Return whether a home has panels, or may have: nobody wrote that it has none."""
    there = {s.kind for s in record.sources if s.present != "no"}
    return "solar" in there or "solar" in unanswered_sources(record)


def _supply_side(record: Record, item: Item) -> str:
    name = called(item)
    if isinstance(item, Point) and item.kind == DC_ISOLATOR:
        panels = ", panels in any daylight" if _may_have_panels(record) else ""
        return f"The d.c. cable into {name} stays live{panels}."
    board = record.find(Board, getattr(item, "board", None))
    if board and not getattr(item, "fed_from", None):
        return (
            f"The cable into {board.name}, and the incoming side of {name}, stay live."
        )
    return f"The incoming side of {name} stays live."
