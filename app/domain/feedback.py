"""Sources that can feed back: a battery, panels or a generator on a circuit or a way.

Where a source joins, the supply may run against its usual direction, up to what it
hangs on and down every closed way from there.  Which ways are closed no record knows,
so whatever shares a feed with that place counts as reached.
"""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.network import Network, joined_at
from app.domain.record import Source


def can_feed_back(net: Network, refs: Iterable[str]) -> tuple[str, ...]:
    """Return the sources that can feed back into any of these things."""
    refs = set(refs)
    return tuple(
        source
        for source, reached in net.fed_back.items()
        if not refs.isdisjoint(reached)
    )


def can_feed_back_at(net: Network, points: Iterable[str]) -> tuple[str, ...]:
    """Return the sources that can feed back into points, by line or by neutral."""
    if not net.fed_back:
        return ()
    neutral = net.neutral_circuits_at
    return can_feed_back(net, (r for p in points for r in (p, *neutral.get(p, ()))))


def joins_behind(net: Network, opened: str, fed: frozenset[str]) -> bool:
    """Return whether a source can keep feeding what is behind an open thing.

    One that is known to stop when the network is off stops here too: by the record it
    hangs on nothing else.
    """
    going_on = filter(may_go_on, net.record.sources)
    joins = {joined_at(net.record, source) for source in going_on}
    return not joins.isdisjoint({opened, *fed})


def may_go_on(source: Source) -> bool:
    """Return whether a source may feed on with the network off; unknown counts."""
    return source.present != "no" and source.runs_without_network != "no"
