"""Points that stay live of themselves: by a battery of their own, or by a d.c. side.

No switch of the home parts them from that, so a supply begins at each of them.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from app.domain.isolation.names import called
from app.domain.kinds import POINT_KINDS
from app.domain.network import (
    Network,
    circuits_of,
    downstream,
    feeders_of,
    joined_at,
    up_to_circuits,
    upstream,
)
from app.domain.record import Point, Source
from app.domain.unknowns import BELONGS_TO, FROM_THE_STREET, unanswered_sources

# The battery of an alarm or of an emergency light serves itself alone, also where the
# mains runs on through it to the next.  Common practice, no source.
SERVES_ITSELF = frozenset({"alarms", "lights"})
# What only joins, switches or fuses holds no battery, unless the record says so.
HOLDS_NONE = frozenset(
    {
        "appliance_switch",
        "blank_plate",
        "cooker_outlet",
        "cooker_outlet_socket",
        "dc_isolator",
        "fused_connection_unit",
        "isolator",
        "junction_box",
        "shower_switch",
    }
)
BATTERY = "It feeds more from a battery of its own. It counts as live."
DC = "Its d.c. side is not recorded. It counts as live."
NO_DC = "whose d.c. side is not recorded"
_OF_DC = frozenset({"dc_isolator", "battery"})


def own_batteries(net: Network) -> tuple[Point, ...]:
    """Return the points that have a battery of their own and feed something."""
    return tuple(p for p in _feeding(net) if p.battery_backed == "yes")


def may_have_battery(net: Network) -> tuple[Point, ...]:
    """Return the points that feed something and may have a battery: nobody said."""
    return tuple(
        point
        for point in _feeding(net)
        if point.battery_backed == "unknown"
        and point.kind not in (HOLDS_NONE | BELONGS_TO.keys())
    )


def open_dc(net: Network) -> tuple[Point, ...]:
    """Return inverters and batteries of which nobody wrote what is on their d.c. side.

    Also where the sources that they belong to are answered with no: what is on the wall
    contradicts the answer.  A d.c. isolator that hangs on a circuit only is among them.
    """
    return tuple(
        point
        for point in net.record.points
        if _has_dc(net, point) and not _dc_recorded(net, point)
    )


def live_because(net: Network, ref: str) -> Iterator[tuple[Point, str]]:
    """Yield each point that keeps a thing live with everything off, and why it does.

    The thing itself comes first, then what it hangs on, whatever stands between.
    """
    batteries = own_batteries(net)
    holders = (*batteries, *open_dc(net))
    for point in sorted(holders, key=lambda point: point.ref != ref):
        battery = point in batteries
        if point.ref == ref:
            yield point, BATTERY if battery else DC
        elif ref in downstream(net, point.ref):
            of = "which has a battery of its own" if battery else NO_DC
            yield point, f"It hangs on {called(point)}, {of}. It counts as live."


def live_of_themselves(net: Network) -> frozenset[str]:
    """Return every point at which a supply begins that no switch of the home parts."""
    return net.keep("live of themselves", partial(_live_of_themselves, net))


def _live_of_themselves(net: Network) -> frozenset[str]:
    return frozenset(p.ref for p in (*own_batteries(net), *open_dc(net)))


def _feeding(net: Network) -> tuple[Point, ...]:
    return tuple(
        point
        for point in net.record.points
        if net.fed.get(point.ref) and POINT_KINDS[point.kind].group not in SERVES_ITSELF
    )


def _has_dc(net: Network, point: Point) -> bool:
    """Return whether a point is to have a d.c. side that ties lead to.

    A d.c. isolator that nothing feeds stands for that side itself.
    """
    fed_isolator = point.kind == "dc_isolator" and feeders_of(net, point.ref)
    return point.kind in BELONGS_TO or bool(fed_isolator)


def _dc_recorded(net: Network, point: Point) -> bool:
    """Return whether ties lead from a d.c. source to a point, no circuit between.

    A d.c. isolator or a battery that nothing feeds stands for a source too: it counts
    as live itself.  An inverter may serve several: none may be left over.
    """
    above = [ref for ref in up_to_circuits(net, point.ref, "line") if ref != point.ref]
    sources = (net.record.find(Source, ref) for ref in above)
    points = (net.record.find(Point, ref) for ref in above)
    ends = [p for p in points if p and p.kind in _OF_DC and not feeders_of(net, p.ref)]
    if not ends and all(s.kind in FROM_THE_STREET for s in sources if s):
        return False
    return point.kind != "inverter" or _left_over(net, point, {*above}) <= len(ends)


def _left_over(net: Network, inverter: Point, above: set[str]) -> int:
    """Return how many sources that an inverter may serve reach neither it nor another.

    A kind that nobody answered counts as one.
    """
    kinds, record = BELONGS_TO[inverter.kind], net.record
    there = [s for s in record.sources if s.kind in kinds and s.present != "no"]
    open_kinds = {*kinds} & {*unanswered_sources(record)} - {s.kind for s in there}
    left = [s for s in there if s.ref not in above and not _elsewhere(net, s, inverter)]
    return len(left) + len(open_kinds)


def _elsewhere(net: Network, source: Source, inverter: Point) -> bool:
    """Return whether a source has another inverter, or joins away from this one."""
    others = (p for p in net.record.points if p.kind == "inverter" and p != inverter)
    if any(source.ref in up_to_circuits(net, p.ref, "line") for p in others):
        return True
    joined = joined_at(net.record, source)
    beside = upstream(net, inverter.ref) | downstream(net, inverter.ref)
    away = joined is not None and joined not in beside
    return away and bool(circuits_of(net, inverter.ref))
