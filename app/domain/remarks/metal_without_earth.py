"""A metal plate or fitting stands on a circuit without an earth.

Looks at:
    Points of metal on circuits without a protective conductor.
Why it matters:
    One loose wire makes the whole plate live, and nothing opens.
What to do:
    Do not touch the plate or use the switch; switch its circuit off at the board if you
    can. Call an electrician.
Source:
    BS 7671:2018+A2:2022, 411.3.1.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, is_mains, refs_of

KIND = RemarkKind(code="metal-without-earth", rank="call", group="call")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each metal point without an earth, and those that may be one."""
    for circuit in sight.record.circuits:
        points = [p for p in sight.points_on(circuit) if is_mains(p)]
        metal = refs_of(point for point in points if point.metal == "yes")
        unseen = refs_of(point for point in points if point.metal == "unknown")
        if circuit.has_cpc == "no" and metal:
            yield Found(
                (circuit.ref, *metal),
                f"{sight.names(metal)}: of metal, and {sight.name(circuit.ref)} has no "
                "protective conductor.",
            )
        elif circuit.has_cpc == "no" and unseen:
            needs = tuple(Need(ref=r, what="whether it is of metal") for r in unseen)
            yield CannotTell((circuit.ref, *unseen), needs)
        elif metal and circuit.has_cpc == "unknown" and not circuit.cpc_mm2:
            need = Need(ref=circuit.ref, what="whether it has a protective conductor")
            yield CannotTell((circuit.ref, *metal), (need,))
