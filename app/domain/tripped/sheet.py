"""A sheet to hang by the board: what each RCD and each way feeds, suspects in order."""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.isolation.help import whom_to_call
from app.domain.kinds import DEVICE_KINDS
from app.domain.labels.confirmed import feeds_boards
from app.domain.labels.printed import printed
from app.domain.network import Network, downstream
from app.domain.record import Board, Device, Room
from app.domain.tripped.hanging import has_button, missed, where
from app.domain.tripped.screens import SCREENS
from app.domain.tripped.suspects import Suspect, suspects

FIRST_GROUNDS = ("outdoors", "wet")
RULES = (
    (
        "Unplug",
        "what hangs on it, from the top of its list: outdoors and wet first, then "
        "heaters and motors. A switch may leave one wire joined. What is wired in: off "
        "at its own switch.",
    ),
    ("Switch it on, once:", "right down to off first, then up."),
    (
        "It stays on:",
        "plug in one thing at a time, a minute apart. What trips it stays unplugged.",
    ),
    (
        "It trips again, and it has ways below it:",
        "switch off all of them, then switch it on once more. It holds: one way on at a "
        "time; the one that trips it stays off. A fuse is not drawn for this.",
    ),
    (
        "It trips with every way off:",
        "most likely a neutral touches earth. Ways that break one wire do not part it. "
        "Leave it off and call.",
    ),
    ("Any other that will not stay on:", "leave it off and call."),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A device of a board on the sheet.

    Attributes:
        name: What to look for on the board.
        under: The RCD of this board that it hangs on, by name; empty for none.
        head: Whether ways of this board hang on it, so that it heads them.
        first: What is outdoors or wet on it.
        then: What else is on it, the likeliest first.
        boards: Boards that hang on it.
    """

    name: str
    under: str
    head: bool
    first: tuple[str, ...]
    then: tuple[str, ...]
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
        stop: What is asked before anything is touched.
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
        stop=SCREENS["stop"].says,
        leave=SCREENS["leave"].says,
        rules=RULES,
        boards=tuple(_board(net, board) for board in record.boards),
        missed=missed(tuple(dict.fromkeys(everything))),
        call=whom_to_call(record.home.nation),
    )


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
    own = _own(net, device)
    return Row(
        name=_name(net, device),
        under=_under(net, device),
        head=_heads(net, device),
        first=tuple(where(s) for s in own if s.ground in FIRST_GROUNDS),
        then=tuple(where(s) for s in own if s.ground not in FIRST_GROUNDS),
        boards=() if _heads(net, device) else feeds_boards(net, device),
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


def _under(net: Network, device: Device) -> str:
    """Return the nearest device with a test button above it on its own board."""
    beside = net.record.devices_of(device.board)
    above = [
        d for d in beside if has_button(d) and device.ref in downstream(net, d.ref)
    ]
    return _name(net, above[-1]) if above else ""


def _name(net: Network, device: Device) -> str:
    """Return what to look for: the way number, what it feeds, what is printed on it."""
    names = ", ".join(c.title for c in net.record.circuits_of(device.ref))
    kind = DEVICE_KINDS[device.kind]
    number = f"Way {device.way}" if device.way else f"{kind.short} {device.ref}"
    label = f"“{device.label_found}”" if device.label_found else ""
    button = "test button" if has_button(device) else ""
    parts = (number, names or label, printed(device), button)
    return ", ".join(filter(None, parts))
