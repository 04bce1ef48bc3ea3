"""What is to be worked on, and every circuit that has to be off for it."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.domain.kinds import POINT_KINDS
from app.domain.network import Network, points_on
from app.domain.record import Board, Circuit, Item, Point, Room

# Kinds of work in a place, by the groups of points that they are about.
JOBS = {
    "any": "Anything here",
    "lighting": "Lights and their switches",
    "sockets": "Socket-outlets and connection units",
    "fixed": "Fixed equipment",
    "alarms": "Smoke and heat alarms",
}
_GROUPS = {"lighting": "lights", "sockets": "sockets", "fixed": "fixed"}


@dataclass(frozen=True)
class Aim:
    """What is to be worked on.

    Attributes:
        named: The items that were asked for.
        job: The kind of work, one of ``JOBS``.
        points: The points that will be touched.
        boards: The boards that are to be worked on themselves.
        circuits: Every circuit that has a conductor there, and what is joined to it.
        own: Those of ``circuits`` that feed the points or were asked for.
        ignored: Points of extra-low voltage that no circuit of the home feeds.
    """

    named: tuple[Item, ...]
    job: str
    points: tuple[Point, ...]
    boards: tuple[Board, ...]
    circuits: tuple[str, ...]
    own: tuple[str, ...]
    ignored: tuple[Point, ...]

    @property
    def rooms(self) -> tuple[str, ...]:
        """The rooms that the work is in."""
        boards = (board.room for board in self.boards)
        named = (item.ref for item in self.named if isinstance(item, Room))
        places = (*named, *(point.room for point in self.points), *boards)
        return tuple(dict.fromkeys(room for room in places if room))

    def targets(self, net: Network) -> frozenset[str]:
        """Everything that has to be parted from the supply."""
        devices = (d.ref for b in self.boards for d in net.record.devices_of(b.ref))
        return frozenset((*(p.ref for p in self.points), *self.circuits, *devices))


def aim(net: Network, refs: Iterable[str], job: str = "any") -> Aim:
    """Return what is meant by references to points, rooms, circuits and boards."""
    record = net.record
    named = tuple(
        item
        for ref in dict.fromkeys(refs)
        if isinstance(item := record.by_ref.get(ref), Point | Room | Circuit | Board)
    )
    boards = tuple(item for item in named if isinstance(item, Board))
    circuits = [item.ref for item in named if isinstance(item, Circuit)]
    circuits += [c for b in boards for c in _circuits_of_board(net, b)]
    meant = dict.fromkeys(p for item in named for p in _points(net, item, job))
    at_all = (record.find(Point, ref) for ref in meant)
    points = tuple(point for point in at_all if point and not ignored(net, point))
    own = [*circuits, *(c for point in points for c in _own(net, point.ref))]
    present = [c for point in points for c in _in_the_box(net, point.ref)]
    joined = closed_over(borrowings(net), [*own, *present])
    return Aim(
        named=named,
        job=job,
        points=points,
        boards=boards,
        circuits=joined,
        own=tuple(dict.fromkeys(own)),
        ignored=tuple(
            found
            for ref in meant
            if (found := record.find(Point, ref)) and ignored(net, found)
        ),
    )


def ignored(net: Network, point: Point) -> bool:
    """Return whether a point runs on extra-low voltage from nothing of this home's."""
    circuits = net.circuits_at.get(point.ref) or net.neutral_circuits_at.get(point.ref)
    fed = any(tie.role == "feeds" for tie in net.record.ties_of(point.ref))
    return point.current == "extra_low" and fed and not circuits


def borrowings(net: Network) -> Mapping[str, frozenset[str]]:
    """Return the circuits that share a neutral with each circuit.

    A point with its line from one and its neutral from another joins the two: what is
    cut on one is live by the other.
    """
    joined: dict[str, set[str]] = {}
    for point, neutral in net.neutral_circuits_at.items():
        line = net.circuits_at.get(point, ())
        if set(neutral) == set(line):
            continue
        together = {*line, *neutral}
        for circuit in together:
            joined.setdefault(circuit, set()).update(together)
    return {ref: frozenset(refs) for ref, refs in joined.items()}


def closed_over(
    joined: Mapping[str, frozenset[str]], circuits: Iterable[str]
) -> tuple[str, ...]:
    """Return these circuits and all that are joined to them, however far."""
    seen = dict.fromkeys(circuits)
    waiting = deque(seen)
    while waiting:
        fresh = [c for c in sorted(joined.get(waiting.popleft(), ())) if c not in seen]
        seen |= dict.fromkeys(fresh)
        waiting.extend(fresh)
    return tuple(seen)


def _points(net: Network, item: Item, job: str) -> tuple[str, ...]:
    if isinstance(item, Point):
        return (item.ref,)
    if isinstance(item, Room):
        return tuple(p.ref for p in net.record.points_of(item.ref) if is_of(p, job))
    if isinstance(item, Circuit):
        back = net.neutral_circuits_at
        returning = (ref for ref, circuits in back.items() if item.ref in circuits)
        return (*points_on(net, item.ref), *returning)
    return ()


def is_of(point: Point, job: str) -> bool:
    """Return whether a kind of work may touch a point.

    Junction boxes, blank plates and what nobody has identified may be part of any.
    """
    group = POINT_KINDS[point.kind].group
    return job == "any" or group in (_GROUPS.get(job, job), "other")


def _circuits_of_board(net: Network, board: Board) -> tuple[str, ...]:
    ways = {device.ref for device in net.record.devices_of(board.ref)}
    return tuple(c.ref for c in net.record.circuits if ways & set(c.ways))


def _own(net: Network, ref: str) -> tuple[str, ...]:
    line, neutral = net.circuits_at, net.neutral_circuits_at
    return (*line.get(ref, ()), *neutral.get(ref, ()))


def _in_the_box(net: Network, ref: str) -> tuple[str, ...]:
    """Return circuits that are there though they feed nothing there.

    Those recorded as present, and those of what it switches or what switches it: the
    wires between them stand in both boxes.
    """
    found: list[str] = []
    for tie in net.record.ties_of(ref):
        if tie.role == "present":
            circuit = net.record.find(Circuit, tie.tied_to)
            found += [tie.tied_to] if circuit else _own(net, tie.tied_to)
    for control in net.record.controls:
        if control.controller == ref:
            found += _own(net, control.controlled)
        if control.controlled == ref:
            found += _own(net, control.controller)
    return tuple(found)
