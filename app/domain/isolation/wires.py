"""The supply as it can run: every conductor both ways, with whatever is closed.

A plan for switching off needs more than the usual direction of the supply.  A circuit
between two ways carries it from one into the other, and a battery pushes it back up
the way that it hangs on.  So intake items, devices and circuits join in both
directions here; a point passes the supply on, never back.  Line and neutral count
alike: a conductor that reaches a thing by either makes it count as live.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property, partial

from app.domain.chain import poles_opened, switches_itself
from app.domain.isolation.own import live_of_themselves
from app.domain.network import Feed, Network, feeders_of, joined_at
from app.domain.record import (
    Board,
    Circuit,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Source,
)

# What a householder may have that is a switch of their own before the first board.
OWN_SWITCHES = frozenset({"isolator", "switch_fuse"})
# Joins one supply or the other; whether it has a position for neither is not recorded.
CHOOSES = "changeover"
# Nor does anything isolate of which nobody knows what it is.
NO_ISOLATION = frozenset({CHOOSES, "unknown", "other"})
# The one kind of point that parts a source's own side from the rest.
DC_ISOLATOR = "dc_isolator"
EARTHS = frozenset(
    {"earth_electrode", "earthing_conductor", "earthing_terminal", "main_bonding"}
)
_CONDUCTS = (Circuit, Device, IntakeItem)


@dataclass(frozen=True)
class Wires:
    """What can carry the supply to what, and where it can be parted.

    Whatever can be opened has two sides: its own reference names the one that its feed
    comes in by, `load_side` the other.  Only between these two is anything ever parted.

    Attributes:
        net: The supply network that this was made from.
        ahead: What each side of a thing can carry the supply to, switches apart.
        back: What can carry the supply to each side of a thing, switches apart.
        roots: Where the supply begins: each source, each thing of which the record
            does not say what feeds it, and each point that stays live of itself.
        openable: Devices and intake items of one's own that part what is behind them,
            and the d.c. isolators of sources.
    """

    net: Network
    ahead: Mapping[str, tuple[str, ...]]
    back: Mapping[str, tuple[str, ...]]
    roots: frozenset[str]
    openable: frozenset[str]
    _live: dict[frozenset[str], frozenset[str]] = field(
        default_factory=dict, compare=False, repr=False
    )

    def live(self, opened: Iterable[str] = ()) -> frozenset[str]:
        """Return what the supply can reach with some things open, on either side."""
        shut = frozenset(opened)
        if shut not in self._live:
            self._live[shut] = frozenset(map(whose_side, self.sides(self.roots, shut)))
        return self._live[shut]

    def supplied(self, opened: Iterable[str]) -> frozenset[str]:
        """Return what the supply can reach on the side that its feed comes in by."""
        return frozenset(r for r in self.sides(self.roots, opened) if not _is_load(r))

    def sides(self, starts: Iterable[str], opened: Iterable[str]) -> frozenset[str]:
        """Return every side that can be reached from some sides, with things open."""
        parted = {
            side: self.ahead.get(side, ())
            for side in self.sides_of(ref for ref in opened if ref in self.openable)
        }
        onward = {**self._closed, **parted} if parted else self._closed
        return _spread(starts, onward)

    @cached_property
    def _closed(self) -> dict[str, tuple[str, ...]]:
        """The sides next to each in the direction of the supply, all closed."""
        sides = self.ahead.keys() | self.sides_of(self.openable)
        return {side: tuple(self._onward(side)) for side in sides}

    @cached_property
    def _closed_back(self) -> dict[str, tuple[str, ...]]:
        """The sides from which the supply can come to each, all closed."""
        sides = self.back.keys() | self.sides_of(self.openable)
        return {side: tuple(self.before(side)) for side in sides}

    def a_way_to(self, ref: str) -> frozenset[str]:
        """Return what one way of the supply to a thing runs through, all closed."""
        came_from: dict[str, str | None] = dict.fromkeys(self.roots)
        waiting = deque(self.roots)
        while waiting and whose_side(side := waiting.popleft()) != ref:
            fresh = [s for s in self._closed.get(side, ()) if s not in came_from]
            came_from |= dict.fromkeys(fresh, side)
            waiting += fresh
        ends = [s for s in (ref, load_side(ref)) if s in came_from]
        at, way = ends[0] if ends else None, set[str]()
        while at is not None:
            way.add(whose_side(at))
            at = came_from[at]
        return frozenset(way)

    def leads_to(self, refs: Iterable[str]) -> frozenset[str]:
        """Return everything that the supply can come through to reach these things."""
        reached = _spread(self.sides_of(refs), self._closed_back)
        return frozenset(map(whose_side, reached))

    def sides_of(self, refs: Iterable[str]) -> set[str]:
        """Return both sides of things that have two, and the things themselves."""
        return {
            s
            for ref in refs
            for s in ((ref, load_side(ref)) if ref in self.openable else (ref,))
        }

    def _onward(self, side: str) -> Iterator[str]:
        yield from self.ahead.get(side, ())
        if whose_side(side) in self.openable:
            yield from self.across(side)

    def before(self, side: str) -> Iterator[str]:
        """Yield the sides from which the supply can come to one, all closed."""
        yield from self.back.get(side, ())
        if whose_side(side) in self.openable:
            yield from self.across(side, back=True)

    def across(self, side: str, *, back: bool = False) -> Iterator[str]:
        """Yield the other side of a switch, if the supply can go that way."""
        ref, load = whose_side(side), _is_load(side)
        one_way = self.net.record.find(Point, ref) is not None
        if not one_way or load == back:
            yield ref if load else load_side(ref)


def load_side(ref: str) -> str:
    """Return the name of the side of a switch that its load hangs on."""
    return f"{ref}>"


def whose_side(side: str) -> str:
    """Return the reference of the thing that a side belongs to."""
    return side.rstrip(">")


def _is_load(side: str) -> bool:
    return side.endswith(">")


def _spread(
    starts: Iterable[str], onward: Mapping[str, Iterable[str]]
) -> frozenset[str]:
    seen = set(starts)
    waiting = list(seen)
    while waiting:
        for side in onward.get(waiting.pop(), ()):
            if side not in seen:
                seen.add(side)
                waiting.append(side)
    return frozenset(seen)


def wires(net: Network) -> Wires:
    """Return how the supply of a record can run, worked out once for a network."""
    return net.keep("wires", partial(_wires, net))


def _wires(net: Network) -> Wires:
    record = net.record
    openable = frozenset(i.ref for i in record.items() if is_openable(record, i))
    ahead: dict[str, list[str]] = {}
    back: dict[str, list[str]] = {}
    for one, other in dict.fromkeys(_joints(net, openable)):
        ahead.setdefault(one, []).append(other)
        back.setdefault(other, []).append(one)
    return Wires(
        net=net,
        ahead={ref: tuple(refs) for ref, refs in ahead.items()},
        back={ref: tuple(refs) for ref, refs in back.items()},
        roots=_roots(net),
        openable=openable,
    )


def is_openable(record: Record, item: Item) -> bool:
    """Return whether someone may switch a thing to part what is behind it.

    Only what is recorded as one's own: of the network's, the meter operator's and of
    what nobody has said whose it is, nothing is ever switched for a plan.
    """
    if isinstance(item, Point):
        return item.kind == DC_ISOLATOR
    if isinstance(item, IntakeItem):
        own = item.owner == "consumer" and item.kind in OWN_SWITCHES
    elif isinstance(item, Device):
        board = record.find(Board, item.board)
        own = board is not None and board.owner == "consumer"
    else:
        return False
    parts = own and item.kind not in NO_ISOLATION and not switches_itself(item)
    return parts and poles_opened(item) != "none"


def carries_on(source: Source) -> bool:
    """Return whether a source may feed what is cut off from the network."""
    there = source.present != "no"
    return there and (source.kind == "network" or source.runs_without_network != "no")


def _joints(net: Network, openable: frozenset[str]) -> Iterator[tuple[str, str]]:
    def load(ref: str) -> str:
        return load_side(ref) if ref in openable else ref

    for feeds in net.feeders.values():
        for feed in feeds:
            if feed.feeder == feed.fed:
                continue
            yield load(feed.feeder), feed.fed
            if _both_ways(net.record, feed):
                yield feed.fed, load(feed.feeder)
    for source in net.record.sources:
        joined = joined_at(net.record, source)
        if joined and carries_on(source):
            yield source.ref, load(joined)


def _both_ways(record: Record, feed: Feed) -> bool:
    ends = (record.by_ref[feed.feeder], record.by_ref[feed.fed])
    chooses = getattr(ends[1], "kind", None) == CHOOSES
    return not chooses and all(isinstance(end, _CONDUCTS) for end in ends)


def carries_supply(item: Item) -> bool:
    """Return whether a thing is live by itself while the supply is on.

    All of the intake is but the earthing: what only gives orders has a supply too.
    """
    if isinstance(item, IntakeItem):
        return item.kind not in EARTHS
    return isinstance(item, Circuit | Device | Point)


def _roots(net: Network) -> frozenset[str]:
    """What nothing begins, such as a circle of feeds, begins itself.

    Only feeds in their usual direction count here: that a thing might also be fed back
    into does not say what feeds it.
    """
    carrying = [i.ref for i in net.record.items() if carries_supply(i)]
    begun = {source.ref for source in net.record.sources}
    begun |= live_of_themselves(net)
    begun |= {ref for ref in carrying if not feeders_of(net, ref).keys() - {ref}}
    reached = _spread(begun, net.feeds_of["line"])
    return frozenset(begun | {ref for ref in carrying if ref not in reached})
