"""What switching rounds have shown against the record: a plan must not rely on it.

A point that stayed live with more switched off than a plan would switch off is fed by
something that the record does not know.  One that went off with a way that does not
lead to it is not fed as recorded, or not by that alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from typing import Literal

from app.domain.days import in_words
from app.domain.isolation.names import called, listed, named
from app.domain.isolation.wires import Wires, wires
from app.domain.network import Network, Role, downstream, feeders_of, upstream
from app.domain.record import Point, Record, Round
from app.domain.trace.readings import perhaps_battery, standing, staying_on_tells
from app.domain.uk_time import uk_time

MOST_TOLD = 3
ROLES: tuple[Role, ...] = ("line", "neutral")


@dataclass(frozen=True, slots=True)
class Sighting:
    """A point that did in a round what it could not have done by the record."""

    point: Point
    round: Round
    seen: Literal["live", "dead"]


def seen_otherwise(net: Network) -> tuple[Sighting, ...]:
    """Return what was seen in rounds and cannot be by the ties of the record.

    Seen live counts though somebody else saw it go off, and though it was off before;
    seen to go off counts as it does for tracing.  A point with a battery of its own may
    well stay on, and one of which nobody recorded what feeds it contradicts nothing.
    """
    return net.keep("seen otherwise", partial(_seen_otherwise, net))


def stayed_live(
    run: Wires, points: Iterable[Point], opened: frozenset[str]
) -> tuple[Sighting, ...]:
    """Return points seen live though all that would part them here was parted then."""
    refs = {point.ref for point in points}
    live = [s for s in seen_otherwise(run.net) if s.seen == "live"]
    return tuple(s for s in live if s.point.ref in refs and _covers(run, s, opened))


def told(sightings: Iterable[Sighting], net: Network) -> str:
    """Return what was seen, in one phrase: each point once, as it was seen first."""
    first: dict[str, Sighting] = {}
    for each in sightings:
        first.setdefault(each.point.ref, each)
    return listed(
        f"{called(s.point)} {in_the_round(net.record, s)}" for s in first.values()
    )


def of_point(net: Network, point: Point) -> tuple[str, ...]:
    """Return in sentences what rounds showed of a point against its ties."""
    found = [s for s in seen_otherwise(net) if s.point.ref == point.ref]
    return tuple(
        f"It {'stayed live' if seen.seen == 'live' else 'went off'} "
        f"{in_the_round(net.record, seen)}. By its ties it could not: "
        f"{_lower(still_fed([seen])) if seen.seen == 'live' else 'look again'}."
        for seen in found[:MOST_TOLD]
    )


def still_fed(found: Iterable[Sighting]) -> str:
    """Return what may be behind points that stayed live; a mark alone does not say."""
    other = "something else feeds it, or the mark is wrong"
    if any(perhaps_battery(seen.point) for seen in found):
        return f"It may have a battery of its own; else {other}"
    return f"{other[0].upper()}{other[1:]}"


def _lower(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]


def in_the_round(record: Record, seen: Sighting) -> str:
    """Return what was off, in which round and when, as the end of a sentence."""
    off = named(record.by_ref[r] for r in seen.round.off if r in record.by_ref)
    at = seen.round.started_at
    day = f", {in_words(uk_time(datetime.fromisoformat(at)).date())}" if at else ""
    return f"with {off} off ({seen.round.title}{day})"


def _covers(run: Wires, seen: Sighting, opened: frozenset[str]) -> bool:
    """Return whether what parts a point here parts nothing that the round did not."""
    ref = seen.point.ref
    own = opened & (upstream(run.net, ref) | upstream(run.net, ref, "neutral"))
    return bool(own) and run.live(seen.round.off) <= run.live(own)


def _seen_otherwise(net: Network) -> tuple[Sighting, ...]:
    run, record = wires(net), net.record
    dark = frozenset(_dark_at_baseline(record))
    return tuple(
        found
        for each in record.rounds
        if each.off
        for found in _in_round(run, each, dark)
    )


def _in_round(
    run: Wires, each: Round, dark: frozenset[tuple[str, str]]
) -> Iterator[Sighting]:
    net, live = run.net, run.live(each.off)
    behind = frozenset[str]().union(
        *(downstream(net, ref, role) for ref in each.off for role in ROLES)
    )
    for ref, readings in standing(net.record, each).items():
        point = net.record.find(Point, ref)
        if point is None or not feeders_of(net, ref):
            continue
        saw = {reading.seen for reading in readings}
        if "live" in saw and ref not in live and staying_on_tells(point):
            yield Sighting(point, each, "live")
        elif saw == {"dead"} and ref not in behind and (each.when, ref) not in dark:
            yield Sighting(point, each, "dead")


def _dark_at_baseline(record: Record) -> Iterator[tuple[str, str]]:
    for each in record.rounds:
        for ref, readings in standing(record, each).items() if not each.off else ():
            if "dead" in {reading.seen for reading in readings}:
                yield each.when, ref
