"""What the record says is wrong with what has tripped: then nothing is switched on."""

from __future__ import annotations

from app.domain.conditions import recorded_bad, seen_as
from app.domain.isolation.names import called
from app.domain.network import Network, downstream, upstream
from app.domain.record import Board, Item, Point


def wrong_on(net: Network, ref: str = "") -> tuple[Item, ...]:
    """Return what is hot, broken, wet or loose on the way to a device or behind it.

    Where it is not known which device, it is everything in the home recorded so.
    """
    bad = recorded_bad(net.record)
    if ref not in net.record.by_ref:
        return bad
    behind = downstream(net, ref) | downstream(net, ref, "neutral")
    near = {ref, *upstream(net, ref), *behind}
    boards = {d.board for d in net.record.devices if d.ref in near}
    return tuple(
        item
        for item in bad
        if not isinstance(item, Board | Point) or item.ref in boards | behind
    )


def wrong_lines(items: tuple[Item, ...]) -> tuple[str, ...]:
    """Return these with what was seen, a line each."""
    return tuple(f"{called(item)}: {seen_as(item)}." for item in items)
