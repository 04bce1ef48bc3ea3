"""A sheet to hang by the board: what each RCD and each way feeds, suspects in order."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from app.domain.isolation.help import whom_to_call
from app.domain.kinds import DEVICE_KINDS, POINT_KINDS
from app.domain.labels.confirmed import feeds_boards
from app.domain.labels.printed import printed
from app.domain.network import Network, downstream
from app.domain.record import Board, Device, IntakeItem, Room
from app.domain.record.choices import CARE
from app.domain.tripped.hanging import can_trip, has_button, where
from app.domain.tripped.screens import SCREENS
from app.domain.tripped.suspects import Suspect, suspects
from app.domain.tripped.wrong import wrong_lines, wrong_on

FIRST_GROUNDS = ("outdoors", "wet")
_UNPLUG = (
    "what hangs on it, from the top of its list: outdoors and wet first, then heaters "
    "and motors. A switch may leave one wire joined. What is wired in: off at its own "
    "switch."
)
_WAYS_OFF = (
    "switch off all of them, then it on once more. It holds: one way on at a time; the "
    "one that trips it stays off. A fuse is not drawn for this."
)
_NEUTRAL = (
    "most likely a neutral touches earth. Ways that break one wire do not part it. "
    "Leave it off and call."
)
RULES = (
    (
        "A lock, a notice, somebody at work:",
        "it is off on purpose. Only who hung it takes it off and switches on.",
    ),
    ("Unplug", _UNPLUG),
    ("Switch it on, once:", "right down to off first, then up."),
    (
        "It stays on:",
        "plug in one thing at a time, a minute apart. What trips it stays unplugged.",
    ),
    ("It trips again, and it has ways below it:", _WAYS_OFF),
    ("It trips with every way off:", _NEUTRAL),
    ("Any other that will not stay on:", "leave it off and call."),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Things:
    """What is on a way in one room, in short.

    Attributes:
        text: The room, and what is in it.
        first: Whether it is outdoors or wet, so to be looked at first.
        count: How many points that is.
    """

    text: str
    first: bool
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A device of a board on the sheet.

    Attributes:
        name: What to look for on the board.
        under: Whether it hangs on an RCD of this board.
        head: Whether ways of this board hang on it, so that it heads them.
        things: What is on it, the likeliest first.
        boards: Boards that hang on it.
    """

    name: str
    under: bool
    head: bool
    things: tuple[Things, ...]
    boards: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRows:
    """A board on the sheet: its name, where it is, its devices from the left."""

    name: str
    room: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class IfItTrips:
    """The whole sheet.

    Attributes:
        home: Name of the home.
        stop: What is asked before anything is touched, and what is recorded as wrong.
        leave: What to do when any of that is so.
        rules: What to do else: the case, what to do.
        boards: Each board with its devices.
        missed: What is missed while it is off.
        call: Whom to call.
    """

    home: str
    stop: tuple[str, ...]
    leave: tuple[str, ...]
    rules: tuple[tuple[str, str], ...]
    boards: tuple[BoardRows, ...]
    missed: tuple[str, ...]
    call: tuple[str, ...]


def if_it_trips(net: Network) -> IfItTrips:
    """Return the sheet of a home; without a record it is general guidance."""
    record = net.record
    everything = tuple(s for d in record.devices for s in suspects(net, d.ref))
    return IfItTrips(
        home=record.home.name,
        stop=(*SCREENS["stop"].says, *wrong_lines(wrong_on(net))),
        leave=SCREENS["leave"].says,
        rules=RULES,
        boards=(*_before(net), *(_board(net, board) for board in record.boards)),
        missed=_missed(tuple(dict.fromkeys(everything))),
        call=whom_to_call(record.home),
    )


def _before(net: Network) -> tuple[BoardRows, ...]:
    """Return the fuses of one's own that stand before the boards."""
    rows = []
    for item in (d for d in can_trip(net.record) if isinstance(d, IntakeItem)):
        fed = downstream(net, item.ref)
        boards = [
            board.name
            for board in net.record.boards
            if any(d.ref in fed for d in net.record.devices_of(board.ref))
        ]
        rows.append(
            Row(name=item.title, under=False, head=False, things=(), boards=(*boards,))
        )
    where_it_is = BoardRows(name="Before the boards", room="", rows=tuple(rows))
    return (where_it_is,) if rows else ()


def _board(net: Network, board: Board) -> BoardRows:
    room = net.record.find(Room, board.room)
    devices = net.record.devices_of(board.ref)
    rows = tuple(_row(net, device) for device in devices if _shown(net, device))
    return BoardRows(name=board.name, room=room.name if room else "", rows=rows)


def _shown(net: Network, device: Device) -> bool:
    """A device that trips, or that feeds something by itself."""
    return bool(DEVICE_KINDS[device.kind].protects) or bool(
        net.record.circuits_of(device.ref)
    )


def _row(net: Network, device: Device) -> Row:
    head = _heads(net, device)
    return Row(
        name=_name(net, device),
        under=_under(net, device),
        head=head,
        things=_things(net, _own(net, device)),
        boards=() if head else feeds_boards(net, device),
    )


def _things(net: Network, found: tuple[Suspect, ...]) -> tuple[Things, ...]:
    """Return suspects room by room, in their order; lights by their rooms alone."""
    by_room: dict[tuple[bool, str], list[Suspect]] = {}
    lights = [s for s in found if s.ground == "lights"]
    for suspect in found:
        if suspect.ground != "lights":
            first = suspect.ground in FIRST_GROUNDS
            by_room.setdefault((first, suspect.room or ""), []).append(suspect)
    rooms = [
        Things(text=_in_room(net, room, some), first=first, count=len(some))
        for (first, room), some in by_room.items()
    ]
    if not lights:
        return tuple(rooms)
    places = ", ".join(dict.fromkeys(s.room or "no room" for s in lights))
    text = f"lights and switches: {places}"
    return (*rooms, Things(text=text, first=False, count=len(lights)))


def _in_room(net: Network, room: str, some: list[Suspect]) -> str:
    """Return what is in a room; of what has no name of its own, how many alike."""
    named = {p.ref: p for p in net.record.points if p.ref in {s.ref for s in some}}
    kinds = Counter(p.kind for p in named.values() if not p.name)
    words: dict[str, None] = {}
    for suspect in some:
        point = named[suspect.ref]
        alike = 0 if point.name else kinds[point.kind]
        label = POINT_KINDS[point.kind].label
        words[f"{alike} × {label}" if alike > 1 else suspect.title] = None
    said = ", ".join(words)
    return f"{room}: {said}" if room else said


def _missed(found: tuple[Suspect, ...]) -> tuple[str, ...]:
    """Return what is missed, each sort with where it is."""
    return tuple(
        f"{words}: {', '.join(where(s) for s in found if care in s.care)}"
        for care, words in CARE.items()
        if any(care in s.care for s in found)
    )


def _own(net: Network, device: Device) -> tuple[Suspect, ...]:
    """Return what is on a device's own circuits, not behind another board's ways."""
    circuits = net.record.circuits_of(device.ref)
    refs = {ref for c in circuits for ref in net.points_at.get(c.ref, ())}
    return tuple(s for s in suspects(net, device.ref) if s.ref in refs)


def _heads(net: Network, device: Device) -> bool:
    fed = downstream(net, device.ref)
    beside = net.record.devices_of(device.board)
    return any(other.ref in fed for other in beside if _shown(net, other))


def _under(net: Network, device: Device) -> bool:
    """Return whether a device with a test button is above it on its own board."""
    beside = net.record.devices_of(device.board)
    return any(has_button(d) and device.ref in downstream(net, d.ref) for d in beside)


def _name(net: Network, device: Device) -> str:
    """Return what to look for: the way number, what it feeds, what is printed on it."""
    kind = DEVICE_KINDS[device.kind]
    label = f"“{device.label_found}”" if device.label_found else ""
    names = ", ".join(c.title for c in net.record.circuits_of(device.ref))
    if not device.way:
        own = f"{kind.short} {label or device.ref}"
        return ", ".join(filter(None, (own, names, printed(device))))
    button = kind.short if has_button(device) else ""
    parts = (f"Way {device.way}", names or label, button, printed(device))
    return ", ".join(filter(None, parts))
