"""Something outdoors hangs on a circuit that serves the rooms.

Looks at:
    Points outdoors on a circuit that has an RCD before it and points indoors.
Why it matters:
    Water in a fitting outdoors trips the RCD of that circuit, and takes the rooms with
    it.
What to do:
    When it trips, look outdoors first. A two-pole switch for the outdoor part lets the
    rest come back on.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, counted, is_outdoors

KIND = RemarkKind(code="outdoors-on-indoor-circuit", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits that go outdoors and indoors."""
    open_ones = []
    for circuit in sight.record.circuits:
        points = sight.points_on(circuit)
        where = {p.ref: is_outdoors(sight, p) for p in points}
        out = [ref for ref, outdoors in where.items() if outdoors]
        rooms = [ref for ref, outdoors in where.items() if outdoors is False]
        open_ones += [ref for ref, outdoors in where.items() if outdoors is None]
        if out and rooms and sight.rcds(circuit.ref):
            units = [f for ref in out for f in feeders_of(sight.net, ref) if f in where]
            yield Found(
                tuple(dict.fromkeys((circuit.ref, *out, *units))),
                f"{sight.name(circuit.ref)} feeds {sight.names(out)} outdoors and "
                f"{counted(len(rooms), 'point')} indoors.",
            )
    if open_ones:
        yield lacking(
            tuple(dict.fromkeys(open_ones)), "the room, or whether it is outdoors"
        )
