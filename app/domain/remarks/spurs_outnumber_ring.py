"""A ring has more spurs without a fuse than points on the ring.

Looks at:
    How the sockets and connection units of each ring are joined.
Why it matters:
    A ring with many spurs is mostly spurs, and each is one thin leg.
What to do:
    Add no further spur. Ask an electrician.
Source:
    IET On-Site Guide, appendix H (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
)
from app.domain.remarks._sight import SOCKETS, Sight, refs_of

KIND = RemarkKind(code="spurs-outnumber-ring", rank="electrician", group="circuits")

COUNTED = frozenset({*SOCKETS, "fused_connection_unit"})


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each ring with more spurs than points in it."""
    for circuit in sight.record.circuits:
        if circuit.arrangement != "ring":
            continue
        points = [p for p in sight.points_on(circuit) if p.kind in COUNTED]
        spurs = refs_of(p for p in points if p.connection in ("spur", "spur_off_spur"))
        ring = refs_of(p for p in points if p.connection == "in_ring")
        unknown = refs_of(p for p in points if p.connection == "unknown")
        if len(spurs) > len(ring) + len(unknown):
            yield Found(
                (circuit.ref, *spurs),
                f"{sight.name(circuit.ref)} has {len(spurs)} spurs and {len(ring)} "
                "points in the ring.",
                (figure("Spurs", len(spurs)), figure("In the ring", len(ring))),
            )
        elif len(spurs) + len(unknown) > len(ring):
            needs = tuple(Need(ref=r, what="how it is joined") for r in unknown)
            if needs:
                yield CannotTell((circuit.ref, *unknown), needs)
