"""The survey that a record holds: its ways, its rounds, and what was read in them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial

from app.domain.kinds import DEVICE_KINDS, POINT_KINDS
from app.domain.network import Network, downstream, feeders_of, upstream
from app.domain.record import Circuit, Device, Point, Reading, Record, Round
from app.domain.trace.survey import Group, Look, Seen, Survey, Way

_POLES = {
    "line": 1,
    "line_and_neutral": 2,
    "three_line": 1,
    "three_line_and_neutral": 2,
}
_DEAD_OR_LIVE: dict[str, Seen] = {"dead": "dead", "live": "live"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """A point of which people saw different things in one round: both stand."""

    round: str
    point: str
    readings: tuple[Reading, ...]


def survey_of(net: Network) -> Survey:
    """Return the survey that a record holds.

    A way is whatever can be switched by hand nearest above a circuit, and every other
    outgoing device that can be.  A way from which something left on is fed is left on
    too.  A round in which nothing of this was off, though it names something, is left
    out: it would read as a baseline.
    """
    record = net.record
    points = tuple(_in_walking_order(record))
    devices = _ways(net)
    refs = [device.ref for device in devices]
    kept = _kept_on(net)
    return Survey(
        ways=tuple(_all_ways(net, devices, kept)),
        points=tuple(point.ref for point in points),
        looks=tuple(_looks(net, set(refs))),
        groups=tuple(_groups(net, set(refs), kept)),
        own_battery=frozenset(p.ref for p in points if not staying_on_tells(p)),
        perhaps_battery=frozenset(p.ref for p in points if perhaps_battery(p)),
    )


def staying_on_tells(point: Point) -> bool:
    """Return whether it tells of a point's supply that it stayed on in a round.

    A battery of its own keeps it on without. Where none is recorded it tells.
    """
    return point.battery_backed != "yes"


def conflicts(record: Record) -> tuple[Conflict, ...]:
    """Return where people saw different things, in the order of the rounds."""
    return tuple(
        Conflict(round=each.ref, point=point, readings=readings)
        for each in record.rounds
        for point, readings in standing(record, each).items()
        if len({reading.seen for reading in readings}) > 1
    )


def ways_of(net: Network, circuit: Circuit) -> tuple[str, ...]:
    """Return what can be switched by hand nearest above a circuit, on each feed."""
    return _nearest(net, circuit.ref, by_hand)


def loses_left_on(net: Network, off: Iterable[str]) -> tuple[Device, ...]:
    """Return what is to be left on but would lose its supply with these switched off.

    For a round chosen by hand; a planned one never does this.
    """
    dark = without_supply(net, off)
    return tuple(d for d in net.record.devices if d.leave_on and d.ref in dark)


def likely_ways(net: Network) -> dict[str, str]:
    """Return the way that the record suggests for each point, if it is one way."""
    found = {}
    for point in net.record.points:
        circuits = [
            net.record.find(Circuit, c) for c in net.circuits_at.get(point.ref, ())
        ]
        ways = {way for c in circuits if c for way in ways_of(net, c)}
        if len(ways) == 1:
            (found[point.ref],) = ways
    return found


def by_hand(device: Device) -> bool:
    """Return whether a device can be switched, or its fuse drawn, by hand."""
    kind = DEVICE_KINDS[device.kind]
    opens = kind.opens != "none" or device.kind in ("other", "unknown")
    return opens and not kind.switches_itself


def perhaps_battery(point: Point) -> bool:
    """Return whether a point often has a battery of its own, and nobody said."""
    return point.battery_backed == "unknown" and POINT_KINDS[point.kind].often_battery


def _ways(net: Network) -> list[Device]:
    above = {way for each in net.record.circuits for way in ways_of(net, each)}
    return [
        device
        for device in net.record.devices
        if device.ref in above or _free_way(net, device)
    ]


def _free_way(net: Network, device: Device) -> bool:
    """Return whether a device is an outgoing one of which no circuit is known."""
    outgoing = DEVICE_KINDS[device.kind].outgoing and by_hand(device)
    return outgoing and not net.fed.get(device.ref)


def _kept_on(net: Network) -> dict[str, str]:
    """Return why each thing is left on that is to be, or that feeds what is to be."""
    kept = [device for device in net.record.devices if device.leave_on]
    above = {ref: d.leave_on for d in kept for ref in upstream(net, d.ref)}
    return {**above, **{device.ref: device.leave_on for device in kept}}


def _all_ways(
    net: Network, devices: Iterable[Device], kept: Mapping[str, str]
) -> Iterator[Way]:
    devices = tuple(devices)
    dark = {device.ref: without_supply(net, [device.ref]) for device in devices}
    above: dict[str, list[str]] = {device.ref: [] for device in devices}
    for ref, below in dark.items():
        for other in (below & above.keys()) - {ref}:
            above[other].append(ref)
    for device in devices:
        # Of all that take it down alone, the nearest is the one under most others.
        parent = max(above[device.ref], key=lambda ref: len(above[ref]), default=None)
        yield Way(
            ref=device.ref,
            parent=parent,
            poles=_POLES.get(device.poles),
            leave_on=kept.get(device.ref, ""),
        )


def _nearest(
    net: Network, ref: str, wanted: Callable[[Device], bool]
) -> tuple[str, ...]:
    """Return the devices above a thing that are wanted, the nearest on each feed."""
    seen, waiting, found = {ref}, list(feeders_of(net, ref)), []
    for here in waiting:
        if here in seen:
            continue
        seen.add(here)
        device = net.record.find(Device, here)
        if device is not None and wanted(device):
            found.append(here)
        else:
            waiting.extend(feeders_of(net, here))
    return tuple(found)


def _groups(net: Network, ways: set[str], kept: Mapping[str, str]) -> Iterator[Group]:
    for device in net.record.devices:
        if device.ref in ways or not by_hand(device) or device.ref in kept:
            continue
        below = without_supply(net, [device.ref]) & ways
        if len(below) > 1:
            yield Group(ref=device.ref, ways=frozenset(below))


def without_supply(net: Network, opened: Iterable[str]) -> frozenset[str]:
    """Return every device and circuit that no feed is left for.

    What nothing is known to feed keeps its supply: where that comes from is not known.
    """
    off = set(opened)
    # Only what is fed through one of them can lose its supply.
    below_them = off.union(*(downstream(net, ref) for ref in off))
    alive: dict[str, bool] = {}

    def fed(ref: str, trail: frozenset[str]) -> bool:
        if ref in off:
            return False
        if ref not in alive:
            feeders = [f for f in feeders_of(net, ref) if f not in trail]
            below = trail | {ref}
            alive[ref] = not feeders or any(fed(f, below) for f in feeders)
        return alive[ref]

    places = net.keep("places of devices", partial(_places, net))
    devices = sorted(below_them & places.keys(), key=places.__getitem__)
    return frozenset(ref for ref in devices if not fed(ref, frozenset()))


def _places(net: Network) -> dict[str, int]:
    """Return where each device stands in the record."""
    return {device.ref: place for place, device in enumerate(net.record.devices)}


def _looks(net: Network, ways: set[str]) -> Iterator[Look]:
    for each in net.record.rounds:
        off = without_supply(net, each.off) & ways if each.off else frozenset()
        if each.off and not off:
            continue
        seen, disputed = {}, set()
        for point, readings in standing(net.record, each).items():
            told = {reading.seen for reading in readings}
            if len(told) > 1:
                disputed.add(point)
            elif (only := next(iter(told))) in _DEAD_OR_LIVE:
                seen[point] = _DEAD_OR_LIVE[only]
        yield Look(
            ref=each.ref,
            off=off,
            seen=seen,
            night=each.when == "night",
            disputed=frozenset(disputed),
        )


def standing(record: Record, each: Round) -> dict[str, tuple[Reading, ...]]:
    """Return what counts of each point: the latest mark of each person.

    Who only did not look says nothing against what another saw.
    """
    latest: dict[str, dict[str, Reading]] = {}
    in_time = sorted(record.readings_of(each.ref), key=lambda r: r.seen_at or "")
    for reading in in_time:
        latest.setdefault(reading.point, {})[reading.seen_by] = reading
    return {point: _who_looked(marks.values()) for point, marks in latest.items()}


def _who_looked(marks: Iterable[Reading]) -> tuple[Reading, ...]:
    marks = tuple(marks)
    looked = tuple(mark for mark in marks if mark.seen in _DEAD_OR_LIVE)
    return looked or marks[:1]


def _in_walking_order(record: Record) -> Iterator[Point]:
    for room in record.rooms:
        yield from record.points_of(room.ref)
    known = {room.ref for room in record.rooms}
    yield from (point for point in record.points if point.room not in known)
