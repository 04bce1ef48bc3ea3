"""The sentence at the top of a page: what the record says of a way, a board, a room."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.answers import RoomAnswer, WayAnswer
from app.domain.chain import chains
from app.domain.network import Network, downstream
from app.domain.record import Board, Device, Record
from app.domain.record.choices import WHEN

WEAK = ("0", "1")


def way_lede(net: Network, answer: WayAnswer) -> str:
    """Say what a way or device feeds, and how much of that is only supposed."""
    fed = downstream(net, answer.way.ref)
    devices = sum(device.ref in fed for device in net.record.devices)
    parts = [
        counted(len(answer.circuits), "circuit"),
        counted(devices, "device"),
        counted(len(answer.points), "point"),
    ]
    said = [part for part in parts if part]
    if not said:
        in_part = answer.neutral_only or answer.present_at
        only = " but for what hangs on it in part, below" if in_part else ""
        return f"Nothing that it feeds is recorded{only}. That does not make it spare."
    rooms = ", ".join(room.title for room in answer.rooms)
    where = f" in {rooms}" if rooms else ""
    return f"By the record it feeds {listed(said)}{where}.{_weak(net.record, answer)}"


def board_lede(net: Network, board: Board) -> str:
    """Say where a board stands, and everything from outside it that feeds it."""
    record = net.record
    room = record.by_ref.get(board.room or "")
    where = f"It stands in {room.title}. " if room else ""
    feeds = [_feed(net, ref) for ref in outside_feeds(record, board)]
    feed = (
        f"It is fed from {listed(feeds)}" if feeds else "What feeds it is not recorded"
    )
    both = ": switching off one leaves the rest." if len(feeds) > 1 else "."
    ways = sum(bool(record.circuits_of(d.ref)) for d in record.devices_of(board.ref))
    feeding = {0: "no way feeds", 1: "one way feeds"}.get(ways, f"{ways} ways feed")
    return f"{where}{feed}{both} By the record {feeding} a circuit."


def outside_feeds(record: Record, board: Board) -> tuple[str, ...]:
    """Return what feeds a board's devices from outside it, second feeds too."""
    devices = record.devices_of(board.ref)
    own = {device.ref for device in devices}
    feeds = [board.fed_from] if not devices else []
    for device in devices:
        feeds += [device.fed_from or board.fed_from, device.second_feed]
    return tuple(dict.fromkeys(ref for ref in feeds if ref and ref not in own))


def room_lede(answer: RoomAnswer) -> str:
    """Say which ways and which other sources serve a room."""
    if not answer.points:
        return "No points are recorded in this room."
    count, loose = len(answer.ways), len(answer.not_tied)
    ways = {0: "No way is recorded that serves", 1: "One way serves"}.get(
        count, f"{count} ways serve"
    )
    sources = [source.title for source in answer.sources]
    feed = "feeds" if len(sources) == 1 else "feed"
    also = f" {listed(sources)} {feed} it too, past the boards." if sources else ""
    what = "one point" if loose == 1 else f"{loose} points"
    left = f" What feeds {what} here is not recorded: treat as live." if loose else ""
    return f"{ways} this room by the record.{also}{left}"


def counted(number: int, noun: str) -> str:
    """Return a number of things in words; nothing for none."""
    if not number:
        return ""
    return f"one {noun}" if number == 1 else f"{number} {noun}s"


def listed(parts: Iterable[str]) -> str:
    """Return parts as a sentence lists them: a, b and c."""
    *first, last = parts
    return f"{', '.join(first)} and {last}" if first else last


def _weak(record: Record, answer: WayAnswer) -> str:
    ties = [
        tie
        for point in answer.points
        for tie in record.ties_of(point.ref)
        if tie.role == "feeds" and tie.grade in WEAK
    ]
    if not ties:
        return ""
    what = counted(len({tie.point for tie in ties}), "point")
    return f" For {what} of these that is known from a label at best."


def _feed(net: Network, ref: str) -> str:
    item = net.record.by_ref.get(ref)
    times = {when for chain in chains(net, ref) for when in chain.when}
    hours = [WHEN[when].lower() for when in WHEN if when in times - {"unknown"}]
    title = item.title if item else ref
    if isinstance(item, Device):
        board = net.record.by_ref.get(item.board)
        title = f"{title} of {board.title}" if board else title
    return f"{title} ({', '.join(hours)})" if hours else title
