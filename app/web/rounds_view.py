"""What the pages of switching rounds show, worked out from the record."""

from __future__ import annotations

import secrets
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from flask import session

from app.domain.kinds import POINT_KINDS
from app.domain.network import Network
from app.domain.record import Circuit, Device, Point, Reading, Record, Room, Round
from app.domain.record.choices import CARE, HOW_SEEN, SEEN
from app.domain.trace import (
    Conflict,
    PointState,
    Survey,
    conflicts,
    likely_ways,
    naming,
)
from app.domain.trace.readings import by_hand, standing, without_supply
from app.web.paired import phone

FUSES = ("fuse_rewirable", "fuse_cartridge", "fuse_bs88")
# What comes back by itself and what does not: common practice, no source.
RESTART = {
    "router": "Wait until the router is up before you trust a page that loads.",
    "freezer": "See that the freezer runs again.",
    "fridge": "See that the fridge runs again.",
    "alarm": "Silence and test the alarms.",
    "care_alarm": "Test the care alarm by a call.",
    "heating": "Set the heating's clock, and see that it lights.",
    "water": "See that the pump runs.",
    "livestock": "See to the tank, the fence or the stable.",
    "medical": "See that the medical equipment runs and is charging.",
    "stairlift": "Run the stairlift once.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """A point that is missed while it is off, or may be."""

    title: str
    room: str | None
    care: str
    certain: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A point in a round, with what was marked.

    Attributes:
        ref: Its reference.
        title: What it is called.
        likely: Whether the record suggests that it goes dead in this round.
        seen: What this browser's person marked; empty when nothing.
        others: What others saw, in words, where it differs.
    """

    ref: str
    title: str
    likely: bool
    seen: str
    others: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkRoom:
    """The points of a room, in the order of the walk."""

    name: str
    marks: tuple[Mark, ...]


def person() -> str:
    """Return what this browser's person is called; made up until they say it.

    Two phones have two names, so that a disagreement between them shows.
    """
    if "person" not in session:
        own = phone()
        session["person"] = own.name if own else f"Browser {secrets.token_hex(2)}"
    return str(session["person"])


def switches(net: Network, each: Round) -> tuple[tuple[str, str], ...]:
    """Return what is to be switched off, board by board: reference and name."""
    called = naming(net.record)
    order = {device.ref: n for n, device in enumerate(net.record.devices)}
    refs = sorted(each.off, key=lambda ref: order.get(ref, 0))
    return tuple((ref, called(ref)) for ref in refs)


def fuses_off(record: Record, each: Round) -> tuple[str, ...]:
    """Return the fuses that are to be drawn, by name."""
    devices = [record.find(Device, ref) for ref in each.off]
    called = naming(record)
    return tuple(called(d.ref) for d in devices if d and d.kind in FUSES)


def left_on(record: Record) -> tuple[tuple[str, str], ...]:
    """Return what is to be left on, and why."""
    called = naming(record)
    return tuple((called(d.ref), d.leave_on) for d in record.devices if d.leave_on)


def missed(net: Network, each: Round) -> tuple[Missed, ...]:
    """Return what is missed while a round lasts, the gravest first.

    What is not tied to any circuit may go off with any of them.
    """
    off = without_supply(net, each.off)
    found = [m for p in net.record.points if p.care for m in _missed(net, p, off)]
    order = {words: n for n, words in enumerate(CARE.values())}
    return tuple(sorted(found, key=lambda m: (not m.certain, order[m.care])))


def _missed(net: Network, point: Point, off: frozenset[str]) -> Iterator[Missed]:
    circuits = [
        found
        for ref in net.circuits_at.get(point.ref, ())
        if (found := net.record.find(Circuit, ref))
    ]
    dark = [c for c in circuits if c.ways and set(c.ways) <= off]
    if circuits and not dark:
        return
    room = net.record.find(Room, point.room)
    for care in point.care:
        yield Missed(
            title=point.title,
            room=room.name if room else None,
            care=CARE[care],
            certain=bool(circuits) and len(dark) == len(circuits),
        )


def turn_on_first(record: Record, each: Round) -> tuple[str, ...]:
    """Return what makes it plain which points go dead, by what there is to look at."""
    wanted = set(each.asked) or {point.ref for point in record.points}
    groups = {POINT_KINDS[p.kind].group for p in record.points if p.ref in wanted}
    told = {
        "lights": "Switch on the lights: a lamp that is off shows nothing.",
        "sockets": "Plug a lamp, a radio or a socket tester into free sockets. A loud "
        "radio lets one person work alone.",
        "fixed": "Switch on what is wired in, at its own switch, if that does no harm.",
        "alarms": "Alarms have batteries: look at the green mains lamp, not the siren.",
    }
    return tuple(words for group, words in told.items() if group in groups)


def restart(net: Network, each: Round) -> tuple[str, ...]:
    """Return what to see to once all is back on: of what went off, or may have."""
    cares = {one.care for one in missed(net, each)}
    return tuple(words for code, words in RESTART.items() if CARE[code] in cares)


def rooms(net: Network, each: Round) -> tuple[MarkRoom, ...]:
    """Return the points to look at, by room; those likely to go dead by themselves."""
    record = net.record
    off = without_supply(net, each.off)
    likely = {p for p, way in likely_ways(net).items() if way in off}
    told, own = standing(record, each), _own_marks(record, each)
    wanted = set(each.asked)
    groups: list[MarkRoom] = []
    for room_ref, name in (*((r.ref, r.name) for r in record.rooms), (None, "No room")):
        points = [
            p for p in record.points_of(room_ref) if not wanted or p.ref in wanted
        ]
        points.sort(key=lambda p: p.ref not in likely)
        if points:
            marks = tuple(_mark(p, told, own, likely) for p in points)
            groups.append(MarkRoom(name=name, marks=marks))
    return tuple(groups)


def _mark(
    point: Point,
    told: Mapping[str, tuple[Reading, ...]],
    own: Mapping[str, str],
    likely: set[str],
) -> Mark:
    seen = own.get(point.ref, "")
    return Mark(
        ref=point.ref,
        title=point.title,
        likely=point.ref in likely,
        seen=seen,
        others=_others(told.get(point.ref, ()), seen),
    )


def _others(readings: tuple[Reading, ...], seen: str) -> str:
    """Return what others saw where it differs, and whether to look again."""
    theirs = [r for r in readings if r.seen_by != person() and r.seen != seen]
    words = [f"{r.seen_by or 'Someone'}: {SEEN[r.seen].lower()}." for r in theirs]
    looks = {seen, *(r.seen for r in theirs)} - {"", "not_looked"}
    again = ["Seen differently: look again."] if len(looks) > 1 else []
    return " ".join([*words, *again])


def _own_marks(record: Record, each: Round) -> dict[str, str]:
    """Return what this browser's person marked last, by point."""
    readings = [r for r in record.readings_of(each.ref) if r.seen_by == person()]
    return {r.point: r.seen for r in sorted(readings, key=lambda r: r.seen_at or "")}


def conflict_words(record: Record, conflict: Conflict) -> str:
    """Return a disagreement in a sentence."""
    point = record.find(Point, conflict.point)
    told = [
        f"{r.seen_by or 'someone'} saw it “{SEEN[r.seen].lower()}”"
        for r in conflict.readings
    ]
    title = point.title if point else conflict.point
    return f"{title}, round {conflict.round}: {' and '.join(told)}. Look again."


def all_conflicts(record: Record) -> tuple[str, ...]:
    """Return every disagreement, in sentences."""
    return tuple(conflict_words(record, each) for each in conflicts(record))


def how_choices() -> tuple[tuple[str, str], ...]:
    """Return the ways of seeing whether a point is live: code and words."""
    return tuple(HOW_SEEN.items())


def devices_by_board(record: Record) -> tuple[tuple[str, tuple[Device, ...]], ...]:
    """Return what may be switched by hand, board by board."""
    return tuple(
        (board.name, tuple(d for d in record.devices_of(board.ref) if by_hand(d)))
        for board in record.boards
    )


def found_so_far(survey: Survey, known: Mapping[str, PointState]) -> str:
    """Return what is known of a home's points, in one sentence."""
    if not survey.ways:
        return "There is no way on any board yet to switch off."
    if not survey.points:
        return "There is no point yet to look at: walk the house first."
    found = [state for state in known.values() if state.status == "found"]
    sure = sum(1 for state in found if state.confirmed and state.was_live)
    noun = "point is" if len(known) == 1 else "points are"
    return (
        f"{len(found)} of {len(known)} {noun} found by switching off, {sure} of them "
        "confirmed."
    )
