"""The three questions: what feeds a point, what a way feeds, which ways serve a room.

Pure functions from the supply network to the shapes of `answers`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from app.domain.answers import (
    Feeding,
    Named,
    PointAnswer,
    RoomAnswer,
    TieAnswer,
    WayAnswer,
)
from app.domain.chain import Chain, Step, chains, isolates
from app.domain.feedback import can_feed_back, can_feed_back_at, joins_behind
from app.domain.network import (
    Network,
    circuits_of,
    downstream,
    feeders_of,
    goes_off,
    sources_of,
)
from app.domain.odd import odd_among
from app.domain.protection import (
    boundaries,
    boundaries_unknown,
    cover,
    earthing_open,
    local_fuses,
    overcurrents,
    past_rcd,
    rcds,
    without_30_ma,
)
from app.domain.record import (
    Board,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Tie,
)
from app.domain.unknowns import (
    unknowns_of_chains,
    unknowns_of_fed,
    unknowns_of_neutral,
    unknowns_of_room,
    unknowns_of_sources,
)

__all__ = [
    "ask_point",
    "ask_room",
    "ask_way",
    "boundaries",
    "boundaries_unknown",
    "named",
    "without_30_ma",
]


def ask_point(net: Network, point: Point) -> PointAnswer:
    """Answer what feeds a point, whose each piece is, and what protects it."""
    record = net.record
    line = chains(net, point.ref)
    neutral = _neutral_apart(net, point, line)
    ties = record.ties_of(point.ref)
    before = _before(line)
    on_both = _before((*line, *neutral))
    past = past_rcd(net, line)
    return PointAnswer(
        home=record.home.ref,
        point=named(point),
        kind=point.kind,
        room=_named_ref(record, point.room),
        circuits=_named_refs(record, circuits_of(net, point.ref)),
        chains=line,
        **_of_neutral(net, point, neutral),
        can_feed_back=_named_refs(record, can_feed_back_at(net, [point.ref])),
        overcurrent=overcurrents(before),
        rcds=rcds(before),
        own_rcd_ma=point.residual_current_ma or None,
        within_30_ma=cover(point, line, past),
        past_rcd=_named_refs(record, past),
        earthing_open=_named_refs(record, earthing_open(net, line)),
        local_fuses=local_fuses(before),
        opens=tuple(filter(isolates, on_both)),
        boundaries=boundaries(line),
        boundaries_unknown=boundaries_unknown(line),
        ties=tuple(_tie(record, tie) for tie in ties),
        also_present=_named_refs(record, (t.tied_to for t in ties if _present(t))),
        present_before=_named_refs(record, _present_before(net, on_both)),
        controlled_by=_controllers(record, point.ref),
        odd=next((odd.sentence for odd in odd_among(net, [point])), None),
        unknowns=(
            *unknowns_of_chains(record, line),
            *unknowns_of_neutral(record, neutral),
            *unknowns_of_sources(record),
        ),
    )


def ask_way(net: Network, way: Device | IntakeItem) -> WayAnswer:
    """Answer what a device feeds, and in which rooms."""
    record = net.record
    fed = downstream(net, way.ref)
    points = [point for point in record.points if point.ref in fed]
    off = goes_off(net, way.ref)
    back = joins_behind(net, way.ref, fed)
    feeding = tuple(
        _feeding(net, p, fed, other_feed=back or p.ref not in off) for p in points
    )
    circuits = [circuit for circuit in record.circuits if circuit.ref in fed]
    up = chains(net, way.ref)
    return WayAnswer(
        home=record.home.ref,
        way=named(way),
        kind=way.kind,
        board=_named_ref(record, getattr(way, "board", None)),
        label_found=getattr(way, "label_found", None),
        chains=up,
        circuits=tuple(named(circuit) for circuit in circuits),
        boards=tuple(named(board) for board in _boards_fed(record, way, fed)),
        points=feeding,
        rooms=_rooms(record, feeding),
        care=tuple(point for point in feeding if point.care),
        neutral_only=_neutral_only(net, way, fed),
        present_at=_present_at(record, {way.ref, *fed}),
        can_feed_back=_named_refs(record, can_feed_back(net, [way.ref])),
        unknowns=(
            *unknowns_of_chains(record, up),
            *unknowns_of_fed(net, points),
            *unknowns_of_sources(record),
        ),
    )


def ask_room(net: Network, room: Room) -> RoomAnswer:
    """Answer which ways serve a room, and what is not known in it."""
    record = net.record
    points = record.points_of(room.ref)
    circuits = dict.fromkeys(c for p in points for c in _there(net, p, circuits_of))
    sources = (source for p in points for source in _there(net, p, sources_of))
    odd = {o.point: o.sentence for o in odd_among(net, points)}
    return RoomAnswer(
        home=record.home.ref,
        room=named(room),
        looked_at=room.looked_at,
        ways=_named_refs(record, (w for c in circuits for w in feeders_of(net, c))),
        circuits=_named_refs(record, circuits),
        sources=_named_refs(record, sources),
        can_feed_back=_named_refs(
            record, can_feed_back_at(net, (p.ref for p in points))
        ),
        points=tuple(named(p) for p in points),
        ties=tuple(_tie(record, t) for p in points for t in record.ties_of(p.ref)),
        not_tied=tuple(named(p) for p in points if not feeders_of(net, p.ref)),
        odd=tuple(f"{p.title} ({p.ref}): {odd[p.ref]}" for p in points if p.ref in odd),
        unknowns=unknowns_of_room(net, room, points),
    )


def named(item: Item) -> Named:
    """Return a thing's reference and title."""
    return Named(ref=item.ref, title=item.title)


def _before(line: tuple[Chain, ...]) -> list[Step]:
    """Return every step before the point, once each, in the order of the chains."""
    steps = {step.ref: step for chain in line for step in chain.steps[:-1]}
    return list(steps.values())


def _neutral_apart(
    net: Network, point: Point, line: tuple[Chain, ...]
) -> tuple[Chain, ...]:
    """Return the neutral's chains, or nothing where they are the line's."""
    neutral = chains(net, point.ref, "neutral")
    same = [c.references for c in line] == [c.references for c in neutral]
    return () if same else neutral


def _of_neutral(
    net: Network, point: Point, neutral: tuple[Chain, ...]
) -> dict[str, Any]:
    circuits = circuits_of(net, point.ref, "neutral") if neutral else ()
    return {
        "neutral_chains": neutral,
        "neutral_circuits": _named_refs(net.record, circuits),
    }


def _present_before(net: Network, before: Iterable[Step]) -> list[str]:
    """Return the circuits in the boxes of the points among the steps."""
    refs = [step.ref for step in before if step.sort == "point"]
    ties = (t for ref in refs for t in net.record.ties_of(ref) if _present(t))
    return [c for t in ties for c in circuits_of(net, t.tied_to) or (t.tied_to,)]


def _there(
    net: Network, point: Point, found: Callable[..., tuple[str, ...]]
) -> tuple[str, ...]:
    """Return what has a conductor at a point: line, neutral or passing by."""
    passing = (t.tied_to for t in net.record.ties_of(point.ref) if _present(t))
    return (
        *found(net, point.ref),
        *found(net, point.ref, "neutral"),
        *(c for ref in passing for c in found(net, ref)),
    )


def _present(tie: Tie) -> bool:
    return tie.role == "present"


def _tie(record: Record, tie: Tie) -> TieAnswer:
    return TieAnswer(
        ref=tie.ref,
        point=tie.point,
        tied_to=_named_ref(record, tie.tied_to) or Named(ref=tie.tied_to, title="?"),
        role=tie.role,
        grade=tie.grade,
        seen_on=tie.seen_on,
        seen_by=tie.seen_by,
    )


def _controllers(record: Record, ref: str) -> tuple[Named, ...]:
    return _named_refs(record, (c.controller for c in record.controllers_of(ref)))


def _feeding(
    net: Network, point: Point, fed: frozenset[str], *, other_feed: bool
) -> Feeding:
    neutral = net.neutral_circuits_at.get(point.ref, ())
    apart = set(neutral) != set(net.circuits_at.get(point.ref, ()))
    elsewhere = (circuit for circuit in neutral if apart and circuit not in fed)
    return Feeding(
        ref=point.ref,
        title=point.title,
        room=_named_ref(net.record, point.room),
        care=point.care,
        other_feed=other_feed,
        neutral_elsewhere=_named_refs(net.record, elsewhere),
    )


def _boards_fed(
    record: Record, way: Device | IntakeItem, fed: frozenset[str]
) -> list[Board]:
    """Return the boards that hang on a way, its own apart."""
    own = getattr(way, "board", None)
    return [
        board
        for board in record.boards
        if board.ref != own
        and (
            board.fed_from in {way.ref, *fed}
            or any(device.ref in fed for device in record.devices_of(board.ref))
        )
    ]


def _rooms(record: Record, points: Iterable[Feeding]) -> tuple[Named, ...]:
    served = {point.room.ref for point in points if point.room}
    return tuple(named(room) for room in record.rooms if room.ref in served)


def _neutral_only(
    net: Network, way: Device | IntakeItem, fed: frozenset[str]
) -> tuple[Named, ...]:
    here = downstream(net, way.ref, "neutral") - fed
    return tuple(named(point) for point in net.record.points if point.ref in here)


def _present_at(record: Record, refs: set[str]) -> tuple[Named, ...]:
    """Return the points in whose boxes conductors of these circuits or points are."""
    return _named_refs(
        record, (t.point for t in record.ties if _present(t) and t.tied_to in refs)
    )


def _named_refs(record: Record, refs: Iterable[str]) -> tuple[Named, ...]:
    items = (record.by_ref.get(ref) for ref in dict.fromkeys(refs))
    return tuple(named(item) for item in items if item)


def _named_ref(record: Record, ref: str | None) -> Named | None:
    item = record.by_ref.get(ref or "")
    return named(item) if item else None
