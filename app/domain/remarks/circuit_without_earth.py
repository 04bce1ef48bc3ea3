"""A circuit other than lighting has no protective conductor.

Looks at:
    Circuits that are not for lighting, and whether their cable has a protective
    conductor.
Why it matters:
    Whatever of metal is plugged in or fixed there becomes live in a fault.
What to do:
    Use nothing with a metal case on it. Ask an electrician.
Source:
    BS 7671:2018+A2:2022, 411.3.1.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="circuit-without-earth", rank="electrician", group="circuits")

EARTHED = ("sockets", "cooker", "shower", "water_heating", "space_heating", "fixed")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each such circuit."""
    for circuit in sight.record.circuits:
        if circuit.use == "lighting":
            continue
        if circuit.has_no_earth:
            yield Found(
                (circuit.ref, *refs_of(sight.points_on(circuit))),
                f"{sight.name(circuit.ref)} has no protective conductor.",
            )
        elif _not_said(circuit):
            yield lacks(circuit.ref, "whether its cable has a protective conductor")


def _not_said(circuit: Circuit) -> bool:
    asked = circuit.use in EARTHED and not circuit.cpc_mm2
    return asked and circuit.has_cpc == "unknown"
