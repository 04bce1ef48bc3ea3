"""Odd ones out: points not on the circuit that one would look for them on.

A point is odd when
* more than half of the room's points of its group share a circuit, and it is not on
  that circuit; or
* three in four of its circuit's points stand on one storey, or in outbuildings, and it
  stands elsewhere; or
* it stands in the house and its circuit comes from a board in an outbuilding, though
  there is a board in the house.

Common practice, no source: it says where to look twice, not that anything is wrong.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from app.domain.chain import board_of
from app.domain.kinds import POINT_KINDS
from app.domain.network import Network, points_on
from app.domain.record import Board, Circuit, Item, Point, Record, Room

NO_STOREY = {"loft", "outside", "cellar", "unknown"}
# A garage may be part of the house or not, so it is no place to compare with.
NO_PLACE = {"garage", "outside"}
APART = "in outbuildings"


@dataclass(frozen=True, slots=True, kw_only=True)
class Odd:
    """A point where one would not look for it, and why."""

    point: str
    circuits: tuple[str, ...]
    expected: str | None
    sentence: str


def odd_ones_out(net: Network) -> tuple[Odd, ...]:
    """Return the points of a record that stand on an unexpected circuit."""
    return odd_among(net, net.record.points)


def odd_among(net: Network, points: Iterable[Point]) -> tuple[Odd, ...]:
    """Return the odd ones out of these points, one reason each.

    It looks only at the rooms that they stand in and at the circuits that feed them.
    """
    points = tuple(points)
    rooms = dict.fromkeys(p.room for p in points if p.room)
    circuits = dict.fromkeys(c for p in points for c in net.circuits_at.get(p.ref, ()))
    odd: dict[str, Odd] = {}
    for found in (
        *(o for room in rooms for o in _odd_in_room(net, room)),
        *(o for circuit in circuits for o in _odd_on_circuit(net, circuit)),
        *(o for circuit in circuits for o in _odd_by_board(net, circuit)),
    ):
        odd.setdefault(found.point, found)
    return tuple(odd[p.ref] for p in points if p.ref in odd)


def _odd_in_room(net: Network, room: str) -> Iterator[Odd]:
    on = net.circuits_at
    groups: dict[str, list[Point]] = {}
    for point in net.record.points_of(room):
        group = POINT_KINDS[point.kind].group
        if group in ("sockets", "lights") and point.ref in on:
            groups.setdefault(group, []).append(point)
    for kind, points in groups.items():
        counts = Counter(circuit for p in points for circuit in on[p.ref])
        usual, most = counts.most_common(1)[0]
        if most <= len(points) / 2:
            continue
        name = _circuit(net.record, usual)
        for point in points:
            if usual not in on[point.ref]:
                why = f"most other {kind} in its room are on {name}"
                yield _odd(net, point, f"; {why}", usual)


def _odd_on_circuit(net: Network, circuit: str) -> Iterator[Odd]:
    places = _places(net, circuit)
    if not places:
        return
    usual, most = Counter(places.values()).most_common(1)[0]
    if most < len(places) * 3 / 4:
        return
    alone = most == len(points_on(net, circuit)) - 1
    whose = "whose other points are all" if alone else "mostly"
    for ref, place in places.items():
        if place != usual:
            point = net.record.by_ref[ref]
            yield _odd(net, point, f", {whose} {usual}")


def _odd_by_board(net: Network, circuit: str) -> Iterator[Odd]:
    record = net.record
    found = record.find(Circuit, circuit)
    boards = board_of(record, found) if found else ()
    if not any(_board_place(record, ref) == APART for ref in boards):
        return
    if all(_board_place(record, board.ref) == APART for board in record.boards):
        return
    for ref, place in _places(net, circuit).items():
        if place != APART:
            yield _odd(net, record.by_ref[ref], ", from a board in an outbuilding")


def _places(net: Network, circuit: str) -> dict[str, str]:
    """Return where each point of a circuit stands, as far as that can be compared."""
    points = (net.record.find(Point, ref) for ref in points_on(net, circuit))
    places = {p.ref: _place(net.record, p.room) for p in points if p}
    return {ref: place for ref, place in places.items() if place}


def _board_place(record: Record, ref: str) -> str | None:
    board = record.find(Board, ref)
    return _place(record, board.room) if board else None


def _place(record: Record, ref: str | None) -> str | None:
    room = record.find(Room, ref)
    if room is None or room.kind in NO_PLACE:
        return None
    if room.kind == "outbuilding":
        return APART
    return None if room.storey in NO_STOREY else f"on the {room.storey} floor"


def _odd(net: Network, point: Item, why: str, expected: str | None = None) -> Odd:
    circuits = net.circuits_at[point.ref]
    names = " and ".join(_circuit(net.record, ref) for ref in circuits)
    return Odd(
        point=point.ref,
        circuits=circuits,
        expected=expected,
        sentence=f"It is on {names}{why}.",
    )


def _circuit(record: Record, ref: str) -> str:
    circuit = record.by_ref[ref]
    return f"{circuit.title} ({circuit.ref})"
