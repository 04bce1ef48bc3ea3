"""The supply network: one directed graph from the sources to the last point.

Sources feed intake items, these feed devices, devices feed circuits, circuits feed
points, and a point may feed what is behind it.  A board is no node: it only says what
its devices are fed from when they do not say it themselves.  Line and neutral are kept
apart, for a point may have its line from one circuit and its neutral from another.

Everything here is total: references that lead nowhere, or to a thing that cannot feed,
are left out (`faults` reports them), and circles end where they began.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import islice
from types import MappingProxyType
from typing import Any, Literal, TypeVar

from app.domain.aging import aged_ties
from app.domain.record import (
    Circuit,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Source,
    Tie,
    Work,
    specs,
)

Role = Literal["line", "neutral"]
T = TypeVar("T")
MOST_PATHS = 50

_FED_BY: tuple[tuple[str, type[Item], str], ...] = (
    ("intake", IntakeItem, "fed_from"),
    ("device", Device, "fed_from"),
    ("circuit", Circuit, "ways"),
    ("point", Tie, "tied_to"),
)
_MAY_FEED = {
    fed: {sort for spec in specs(cls) if spec.name == name for sort in spec.sorts}
    for fed, cls, name in _FED_BY
}


@dataclass(frozen=True, slots=True)
class Feed:
    """One thing feeding another.

    Attributes:
        feeder: Reference of what feeds.
        fed: Reference of what is fed.
        line: Whether the line conductor goes this way.
        neutral: Whether the neutral conductor goes this way.
        tie: Reference of the tie that says so, for a point.
    """

    feeder: str
    fed: str
    line: bool = True
    neutral: bool = True
    tie: str | None = None

    def carries(self, role: Role) -> bool:
        """Return whether this conductor goes this way."""
        return self.line if role == "line" else self.neutral


NO_FEEDS: Mapping[str, Feed] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Path:
    """One way that the supply takes to a thing.

    Attributes:
        refs: References in order, the source first, the thing itself last.
        ties: For each reference, the tie by which it is fed, if any.
        whole: Whether it begins at a source; else where it begins is not recorded.
        circle: Whether it was cut where the record runs in a circle.
    """

    refs: tuple[str, ...]
    ties: tuple[str | None, ...]
    whole: bool
    circle: bool = False


@dataclass(frozen=True)
class Network:
    """The graph of one record, both ways round."""

    record: Record
    feeders: Mapping[str, tuple[Feed, ...]]
    fed: Mapping[str, tuple[Feed, ...]]

    @cached_property
    def points_at(self) -> Mapping[str, tuple[str, ...]]:
        """The points for which each circuit is the nearest on a path."""
        return {c.ref: _points_on(self, c.ref, "line") for c in self.record.circuits}

    @cached_property
    def circuits_at(self) -> Mapping[str, tuple[str, ...]]:
        """The circuits that feed each point, as `circuits_of` but for all at once."""
        return _turned_over(self.points_at)

    @cached_property
    def neutral_circuits_at(self) -> Mapping[str, tuple[str, ...]]:
        """The circuits by which the neutral of each point returns."""
        circuits = self.record.circuits
        return _turned_over(
            {c.ref: _points_on(self, c.ref, "neutral") for c in circuits}
        )

    @cached_property
    def _kept(self) -> dict[str, Any]:
        return {}

    def keep(self, name: str, make: Callable[[], T]) -> T:
        """Return what is worked out of this network, by its own name, only once."""
        if name not in self._kept:
            self._kept[name] = make()
        made: T = self._kept[name]
        return made

    @cached_property
    def feeders_of(self) -> Mapping[Role, Mapping[str, Mapping[str, Feed]]]:
        """For each conductor, what feeds each thing; of twin feeds the first."""
        return _each_once(self.feeders, lambda feed: feed.feeder)

    @cached_property
    def feeds_of(self) -> Mapping[Role, Mapping[str, Mapping[str, Feed]]]:
        """For each conductor, what each thing feeds; of twin feeds the first."""
        return _each_once(self.fed, lambda feed: feed.fed)

    @cached_property
    def aged(self) -> Mapping[str, Work]:
        """The ties that later work has put in doubt, each with that work."""
        return aged_ties(self.record)

    @cached_property
    def fed_back(self) -> Mapping[str, frozenset[str]]:
        """All that a source can feed back into, by the source: see `feedback`."""
        joins = {s.ref: joined_at(self.record, s) for s in self.record.sources}
        there = {s.ref for s in self.record.sources if s.present != "no"}
        return {
            source: _shares_a_feed(self, ref)
            for source, ref in joins.items()
            if ref and source in there
        }


def network(record: Record) -> Network:
    """Build the supply network of a record."""
    feeders: dict[str, list[Feed]] = {}
    fed: dict[str, list[Feed]] = {}
    for feed in _feeds(record):
        feeders.setdefault(feed.fed, []).append(feed)
        fed.setdefault(feed.feeder, []).append(feed)
    return Network(
        record=record,
        feeders={ref: tuple(feeds) for ref, feeds in feeders.items()},
        fed={ref: tuple(feeds) for ref, feeds in fed.items()},
    )


def joined_at(record: Record, source: Source) -> str | None:
    """Return where a source can feed back, if the record names such a thing."""
    item = record.by_ref.get(source.joins or "")
    return item.ref if isinstance(item, Circuit | Device | IntakeItem) else None


def feeders_of(net: Network, ref: str, role: Role = "line") -> Mapping[str, Feed]:
    """Return what feeds a thing directly, each feeder once, in the record's order."""
    return net.feeders_of[role].get(ref, NO_FEEDS)


def fed_by(net: Network, ref: str, role: Role = "line") -> Mapping[str, Feed]:
    """Return what a thing feeds directly, each once, in the record's order."""
    return net.feeds_of[role].get(ref, NO_FEEDS)


def _each_once(
    feeds: Mapping[str, tuple[Feed, ...]], other_end: Callable[[Feed], str]
) -> dict[Role, dict[str, dict[str, Feed]]]:
    found: dict[Role, dict[str, dict[str, Feed]]] = {"line": {}, "neutral": {}}
    for role, by_ref in found.items():
        for ref, those in feeds.items():
            for feed in those:
                if feed.carries(role):
                    by_ref.setdefault(ref, {}).setdefault(other_end(feed), feed)
    return found


def upstream(net: Network, ref: str, role: Role = "line") -> frozenset[str]:
    """Return everything that feeds a thing, near or far, without the thing itself."""
    return frozenset(_reached(ref, lambda here: feeders_of(net, here, role)))


def downstream(net: Network, ref: str, role: Role = "line") -> frozenset[str]:
    """Return everything that a thing feeds, near or far, without the thing itself."""
    return frozenset(_reached(ref, lambda here: fed_by(net, here, role)))


def goes_off(net: Network, opened: str, role: Role = "line") -> frozenset[str]:
    """Return everything that no feed is left for when one thing is open.

    A thing with another feed stays on, even if where that feed begins is not recorded.
    """
    left: dict[str, set[str]] = {}
    waiting = deque([opened])
    while waiting:
        here = waiting.popleft()
        for ref in fed_by(net, here, role):
            others = left.setdefault(ref, set(feeders_of(net, ref, role)))
            others.discard(here)
            if not others and ref != opened:
                waiting.append(ref)
    return frozenset(ref for ref, others in left.items() if not others) - {opened}


def paths(net: Network, ref: str, role: Role = "line") -> tuple[Path, ...]:
    """Return the ways that the supply takes to a thing, `MOST_PATHS` at most.

    A path that would run in a circle ends where it would enter it again, and is not
    whole.  A thing that nothing feeds has one path: itself.
    """
    return tuple(islice(_walk_up(net, ref, role), MOST_PATHS))


def circuits_of(net: Network, ref: str, role: Role = "line") -> tuple[str, ...]:
    """Return the circuits that feed a point, the nearest on each path only."""
    nearest = up_to_circuits(net, ref, role)
    return tuple(here for here in nearest if net.record.find(Circuit, here))


def sources_of(net: Network, ref: str, role: Role = "line") -> tuple[str, ...]:
    """Return the sources that feed a point without a circuit between."""
    nearest = up_to_circuits(net, ref, role)
    return tuple(here for here in nearest if net.record.find(Source, here))


def points_on(net: Network, circuit: str) -> tuple[str, ...]:
    """Return the points for which this circuit is the nearest on a path."""
    return net.points_at.get(circuit, ())


def up_to_circuits(net: Network, ref: str, role: Role) -> list[str]:
    """Return what feeds a thing up to the first circuits, and the thing itself."""
    seen, found, waiting = {ref}, [], [ref]
    while waiting:
        here = waiting.pop()
        found.append(here)
        if net.record.find(Circuit, here):
            continue
        feeders = [r for r in feeders_of(net, here, role) if r not in seen]
        waiting += reversed(feeders)
        seen.update(feeders)
    return found


def _points_on(net: Network, circuit: str, role: Role) -> tuple[str, ...]:
    def onward(here: str) -> list[str]:
        fed = fed_by(net, here, role)
        return [ref for ref in fed if not net.record.find(Circuit, ref)]

    reached = _reached(circuit, onward)
    return tuple(ref for ref in reached if net.record.find(Point, ref))


def _turned_over(points: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """Return the circuits of each point from the points of each circuit."""
    found: dict[str, list[str]] = {}
    for circuit, on_it in points.items():
        for point in on_it:
            found.setdefault(point, []).append(circuit)
    return {point: tuple(circuits) for point, circuits in found.items()}


def _shares_a_feed(net: Network, ref: str) -> frozenset[str]:
    """Return a thing, what feeds it, and all that any of these feeds."""
    above = {ref, *upstream(net, ref)}
    reached = _reached_from(above, lambda here: fed_by(net, here))
    return frozenset(reached)


def _feeds(record: Record) -> Iterator[Feed]:
    for item in record.intake:
        yield from _named(record, item, item.fed_from, item.second_feed)
    boards = {board.ref: board.fed_from for board in record.boards}
    for device in record.devices:
        incoming = device.fed_from or boards.get(device.board)
        yield from _named(record, device, incoming, device.second_feed)
    for circuit in record.circuits:
        yield from _named(record, circuit, *circuit.ways)
    borrowed = {tie.point for tie in record.ties if tie.role == "neutral"}
    for tie in record.ties:
        if record.find(Point, tie.point) and _may_feed(record, tie.tied_to, "point"):
            yield from _tied(tie, has_own_neutral=tie.point not in borrowed)


def _named(record: Record, fed: Item, *feeders: str | None) -> Iterator[Feed]:
    for feeder in dict.fromkeys(feeders):
        if feeder and _may_feed(record, feeder, fed.sort):
            yield Feed(feeder, fed.ref)


def _may_feed(record: Record, feeder: str, fed: str) -> bool:
    item = record.by_ref.get(feeder)
    return item is not None and item.sort in _MAY_FEED[fed]


def _tied(tie: Tie, *, has_own_neutral: bool) -> Iterator[Feed]:
    if tie.role == "feeds":
        yield Feed(tie.tied_to, tie.point, neutral=has_own_neutral, tie=tie.ref)
    if tie.role == "neutral":
        yield Feed(tie.tied_to, tie.point, line=False, tie=tie.ref)


def _reached(start: str, next_of: Callable[[str], Iterable[str]]) -> list[str]:
    """Return what can be reached from a thing, the nearest first, without itself."""
    return _reached_from([start], next_of)[1:]


def _reached_from(
    starts: Iterable[str], next_of: Callable[[str], Iterable[str]]
) -> list[str]:
    seen = dict.fromkeys(starts)
    waiting = deque(seen)
    while waiting:
        onward = [ref for ref in next_of(waiting.popleft()) if ref not in seen]
        seen |= dict.fromkeys(onward)
        waiting.extend(onward)
    return list(seen)


def _walk_up(net: Network, ref: str, role: Role) -> Iterator[Path]:
    """Yield each path to a thing, walking from it towards the sources."""
    trail: dict[str, str | None] = {}
    waiting: list[tuple[str, str | None, int]] = [(ref, None, 0)]
    feeders = net.feeders_of[role]
    while waiting:
        here, tie, depth = waiting.pop()
        while len(trail) > depth:
            trail.popitem()
        trail[here] = tie
        depth += 1
        feeds = feeders.get(here, NO_FEEDS)
        onward = [
            (feeder, feed.tie, depth)
            for feeder, feed in feeds.items()
            if feeder not in trail
        ]
        if not feeds or len(onward) < len(feeds):
            yield _path(trail, net.record.by_ref.get(here), circle=bool(feeds))
        waiting += onward[::-1]


def _path(trail: Mapping[str, str | None], first: Item | None, *, circle: bool) -> Path:
    """Turn a trail around; each tie moves to the thing that it feeds."""
    refs, ties = list(trail)[::-1], list(trail.values())[::-1]
    return Path(
        refs=tuple(refs),
        ties=(None, *ties[:-1]),
        whole=first is not None and first.sort == "source",
        circle=circle,
    )
