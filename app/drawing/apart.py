"""What feeds a board's devices apart from the board's own feed, and at what hours."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.chain import Chain, chains, when_of
from app.domain.network import Network
from app.domain.record import Board, Device
from app.drawing.joins import named_with_board
from app.drawing.phrase import hours, joined


def hours_of(net: Network, ref: str | None) -> str:
    """Return the hours of a feed; nothing if it is live at all times by some path."""
    if ref is None or ref not in net.record.by_ref:
        return ""
    times = [_times(chain) for chain in chains(net, ref)]
    if not all(times):
        return ""
    return joined(dict.fromkeys(time for found in times for time in found))


def _times(chain: Chain) -> list[str]:
    """Leave out the network where nobody has said that it is on all the time."""
    steps = (s for s in chain.steps if s.kind != "network" or s.when != "unknown")
    return [hours(step.when) for step in steps if step.when != "always"]


def feeds_apart(net: Network, board: Board) -> Iterator[str]:
    """Say of each device what else feeds it than the board, and its own hours."""
    for device in net.record.devices_of(board.ref):
        own = hours(when_of(device))
        said = [*_feeds(net, board, device), *([own] if own else [])]
        if said:
            yield f"{device.title}: {'; '.join(said)}"


def _feeds(net: Network, board: Board, device: Device) -> Iterator[str]:
    feeder = net.record.by_ref.get(device.fed_from or "")
    here = isinstance(feeder, Device) and feeder.board == board.ref
    if device.fed_from and not here and device.fed_from != board.fed_from:
        yield _from(net, "fed from", device.fed_from)
    if device.second_feed:
        yield _from(net, "second feed", device.second_feed)


def _from(net: Network, how: str, ref: str) -> str:
    times = hours_of(net, ref)
    name = named_with_board(net.record, ref)
    return f"{how} {name} ({times})" if times else f"{how} {name}"
