"""The circuit chart for the inside of a board's door: one row a device."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from app.domain.board import main_switches, switch_name
from app.domain.chain import chains, is_rcd, may_be_rcd
from app.domain.days import in_words
from app.domain.failed import failed_rcds
from app.domain.kinds import DEVICE_KINDS
from app.domain.labels.confirmed import feeding_ties
from app.domain.labels.label import BLANK, Label, is_way, label_of
from app.domain.network import Network, downstream, fed_by
from app.domain.odd import odd_among
from app.domain.record import Board, Device, Point, Record, Room, Tie
from app.domain.record.choices import GRADES, POLES

# What does not apply to a device; what nobody has recorded is said in words.
NOT_APPLYING = "–"
NONE_RECORDED = "none recorded"
MADE_BY = (
    "Made from a record that is kept by whoever looks after the home and says how each "
    "way is known; not tested."
)
NOT_READ = "not read"
NO_DAY, NOBODY = "day not recorded", "not recorded by whom"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartRow:
    """One device on the chart.

    Attributes:
        label: What its label says.
        feeds: What it feeds, with a query mark where that is not confirmed.
        kind: What it is.
        printed: What is printed on it; says so where nothing was read.
        rcd: The RCD on this board that it is behind, or its own; else nothing.
        rooms: Room and number of points in it, in the order of the walk.
        exceptions: What one would not expect of it, a sentence each.
        how: How what it feeds is known: the weakest of its ties.
        when: Day of the oldest of these ties, and by whom.
        old: The label found, until what it feeds is confirmed.
    """

    label: Label
    feeds: str
    kind: str
    printed: str
    rcd: str
    rooms: tuple[tuple[str, int], ...]
    exceptions: tuple[str, ...]
    how: str
    when: str
    old: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A board's circuit chart.

    Attributes:
        board: Its name.
        place: The room that it stands in.
        fed_from: What feeds it.
        main_switch: Its main switches, and what each breaks.
        rows: Its devices from left to right, blanks left out.
        in_doubt: Whether any row carries a query mark.
    """

    board: str
    place: str
    fed_from: str
    main_switch: str
    rows: tuple[ChartRow, ...]
    in_doubt: bool


def chart_of(net: Network, board: Board) -> Chart:
    """Return the circuit chart of a board."""
    record = net.record
    room = record.find(Room, board.room)
    feeder = record.by_ref.get(board.fed_from or "")
    devices = record.devices_of(board.ref)
    rows = tuple(_row(net, d) for d in devices if d.kind != BLANK)
    return Chart(
        board=board.name,
        place=room.name if room else "Place not recorded",
        fed_from=feeder.title if feeder else "not recorded",
        main_switch="; ".join(map(_switch, main_switches(devices))) or "not recorded",
        rows=rows,
        in_doubt=any(row.label.text != row.label.name for row in rows),
    )


def _switch(device: Device) -> str:
    """Return a main switch with the poles that it breaks."""
    poles = POLES[device.poles].lower()
    breaks = "poles not known" if device.poles == "unknown" else f"breaks {poles}"
    return f"{switch_name(device)}, {breaks}"


def _row(net: Network, device: Device) -> ChartRow:
    label = label_of(net, device)
    points = _points(net, device) if label.outgoing else ()
    ties = feeding_ties(net, device) if label.outgoing else ()
    unread = NOT_READ if DEVICE_KINDS[device.kind].fields else NOT_APPLYING
    return ChartRow(
        label=label,
        feeds=label.text if label.outgoing else _beside(net, device),
        kind=DEVICE_KINDS[device.kind].label,
        printed=label.printed or unread,
        rcd=_rcd(net, device),
        rooms=_rooms(net.record, points),
        exceptions=(*_not_counted_on(net, device), *_exceptions(net, device, points)),
        how=_how(net, label, ties),
        when=_when(ties),
        old=NOT_APPLYING if label.confirmed and label.outgoing else _found(device),
    )


def _beside(net: Network, device: Device) -> str:
    """Say how many devices of its own board a device feeds directly."""
    fed = fed_by(net, device.ref)
    here = net.record.devices_of(device.board)
    count = sum(d.ref in fed for d in here if d.kind != BLANK)
    noun = "device" if count == 1 else "devices"
    return f"{count} {noun} here" if count else NONE_RECORDED


def _found(device: Device) -> str:
    if device.label_found is None:
        return "not recorded"
    return f"“{device.label_found}”" if device.label_found else "nothing written"


def _points(net: Network, device: Device) -> tuple[Point, ...]:
    fed = downstream(net, device.ref)
    return tuple(point for point in net.record.points if point.ref in fed)


def _rooms(record: Record, points: tuple[Point, ...]) -> tuple[tuple[str, int], ...]:
    counts = Counter(point.room for point in points)
    named = [(room.name, counts[room.ref]) for room in record.rooms]
    rooms = {room.ref for room in record.rooms}
    elsewhere = sum(n for ref, n in counts.items() if ref not in rooms)
    return tuple((n, c) for n, c in (*named, ("room not recorded", elsewhere)) if c)


def _rcd(net: Network, device: Device) -> str:
    """Return the RCDs that a device is behind, on its own board or before it."""
    if device.kind == "rcbo":
        return f"its own{_failed(net, device)}"
    line = chains(net, device.ref)
    before = {step.ref: step for chain in line for step in chain.steps[:-1]}.values()
    found = [net.record.find(Device, step.ref) for step in before if is_rcd(step)]
    names = ", ".join(_rcd_name(net, device, rcd) for rcd in found if rcd)
    if names or not is_way(net, device):
        return names or NOT_APPLYING
    return "not known" if any(map(may_be_rcd, before)) else NONE_RECORDED


def _failed(net: Network, rcd: Device) -> str:
    """Return that an RCD is not to be counted on, where something says so."""
    failure = failed_rcds(net).get(rcd.ref)
    return f" ({failure.short})" if failure else ""


def _not_counted_on(net: Network, device: Device) -> tuple[str, ...]:
    failure = failed_rcds(net).get(device.ref)
    return (f"{failure.says}: do not count on it",) if failure else ()


def _rcd_name(net: Network, device: Device, rcd: Device) -> str:
    """Name an RCD by its kind and its place among those of its board."""
    record = net.record
    here = [d.ref for d in record.devices_of(rcd.board) if d.kind == rcd.kind]
    number = f" {here.index(rcd.ref) + 1}" if len(here) > 1 else ""
    board = record.find(Board, rcd.board)
    where = f" on {board.name}" if board and rcd.board != device.board else ""
    return f"{DEVICE_KINDS[rcd.kind].label}{number}{where}{_failed(net, rcd)}"


def _exceptions(
    net: Network, device: Device, points: tuple[Point, ...]
) -> tuple[str, ...]:
    """Return where a way departs from what one would expect of it."""
    own = {circuit.ref for circuit in net.record.circuits_of(device.ref)}
    odd = {found.point for found in odd_among(net, points)}
    said = {
        point.ref: [
            *(["an odd one out"] if point.ref in odd else []),
            *_crossed(net, point, own),
        ]
        for point in points
    }
    return tuple(f"{_where(net, r)}: {', '.join(s)}" for r, s in said.items() if s)


def _crossed(net: Network, point: Point, own: set[str]) -> list[str]:
    """Return what else feeds a point, and where its neutral returns."""
    line = net.circuits_at.get(point.ref, ())
    neutral = net.neutral_circuits_at.get(point.ref, ())
    others = [net.record.by_ref[ref].title for ref in line if ref not in own]
    away = [net.record.by_ref[r].title for r in neutral if r not in line]
    said = [f"fed from {', '.join(others)} too"] if own & set(line) and others else []
    return said + ([f"neutral on {', '.join(away)}"] if away else [])


def _where(net: Network, ref: str) -> str:
    """Return a point's title with its room."""
    point = net.record.find(Point, ref)
    room = net.record.find(Room, point.room) if point else None
    title = point.title if point else ref
    return f"{title}, {room.name}" if room else title


def rooms_in_words(row: ChartRow) -> str:
    """Return the rooms that a way serves, each with its number of points."""
    if not row.label.outgoing:
        return NOT_APPLYING
    rooms = (f"{room}\xa0({count})" for room, count in row.rooms)
    return ", ".join(rooms) or NONE_RECORDED


def _how(net: Network, label: Label, ties: tuple[Tie, ...]) -> str:
    """Return the weakest grade in words, and whether work was done since."""
    if not label.outgoing:
        return NOT_APPLYING
    if not ties:
        return "not recorded" if label.known else "not known"
    since = ", work since" if any(tie.ref in net.aged for tie in ties) else ""
    return GRADES[min(tie.grade for tie in ties)].lower() + since


def _when(ties: tuple[Tie, ...]) -> str:
    """Return the oldest day of the weakest ties, and by whom."""
    weakest = min((tie.grade for tie in ties), default="0")
    if weakest == "0":
        return ""
    those = [tie for tie in ties if tie.grade == weakest]
    days = [tie.seen_on for tie in those if tie.seen_on]
    people = list(dict.fromkeys(tie.seen_by for tie in those if tie.seen_by))
    day = in_words(min(days)) if len(days) == len(those) else NO_DAY
    return f"{day}, {', '.join(people) or NOBODY}"
