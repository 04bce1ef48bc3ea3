"""A point borrows the neutral of another circuit.

Looks at:
    Points whose neutral is recorded on another circuit than their line, and lights with
    two-way switches of which nobody has said.
Why it matters:
    With its own way off, the neutral can become live when it is parted, through someone
    else's switch. Switching single ways off cannot show it.
What to do:
    Switch off both circuits, or better the main switch, before anyone opens it. Have an
    electrician put it right.
Source:
    BS 7671:2018+A2:2022, 314.4 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit, Point
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="borrowed-neutral", rank="electrician", group="points")

BETWEEN_STOREYS = ("hall", "landing", "stairs")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point with a neutral elsewhere, and the lights that may have one."""
    net, open_ones = sight.net, []
    lighting = [c for c in sight.record.circuits if c.use == "lighting"]
    for point in sight.record.points:
        line = net.circuits_at.get(point.ref, ())
        neutral = net.neutral_circuits_at.get(point.ref, ())
        if set(neutral) - set(line):
            yield _found(sight, point, line, neutral)
        elif len(lighting) > 1 and _between_storeys(sight, point):
            open_ones.append(point.ref)
    if open_ones:
        yield lacking(tuple(open_ones), "where its neutral returns")


def _found(
    sight: Sight, point: Point, line: tuple[str, ...], neutral: tuple[str, ...]
) -> Found:
    circuits = (sight.record.find(Circuit, ref) for ref in (*line, *neutral))
    ways = (way for circuit in circuits if circuit for way in sight.ways(circuit))
    return Found(
        tuple(dict.fromkeys((point.ref, *line, *neutral, *refs_of(ways)))),
        f"{sight.name(point.ref)} has its line from {sight.names(line)} "
        f"and its neutral from {sight.names(neutral)}.",
    )


def _between_storeys(sight: Sight, point: Point) -> bool:
    """A light of hall or stairs that two-way switches work, its neutral not said."""
    room = sight.room(point)
    if point.kind != "light" or room is None or room.kind not in BETWEEN_STOREYS:
        return False
    controllers = sight.record.controllers_of(point.ref)
    switches = (sight.record.find(Point, c.controller) for c in controllers)
    return any(switch and switch.kind == "two_way_switch" for switch in switches)
