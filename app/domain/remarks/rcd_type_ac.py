"""An RCD is of type AC.

Looks at:
    The type of each RCD, where it feeds more than plain heating elements.
Why it matters:
    Electronics draw currents with a d.c. part, which can keep type AC from opening.
What to do:
    Press its test button as usual. Have type A fitted when the board is next worked on.
Source:
    BS 7671:2018+A2:2022, 531.3.3 (one source seen).
Not retrospective:
    Type AC was usual before 2022, and may stay where nothing with a d.c. part hangs on
    it.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="rcd-type-ac", rank="knowing", group="rcd")

PLAIN = ("water_heating", "shower", "cooker", "storage_heating")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each RCD of type AC that feeds more than heating elements."""
    unread = []
    for rcd in sight.record.devices:
        residual = "earth_leakage" in DEVICE_KINDS[rcd.kind].protects
        if not (residual or rcd.residual_current_ma) or rcd.in_use == "spare":
            continue
        circuits = sight.circuits_below(rcd.ref)
        if circuits and all(circuit.use in PLAIN for circuit in circuits):
            continue
        if rcd.rcd_type == "AC":
            of = f"; it feeds {sight.names(refs_of(circuits))}" if circuits else ""
            yield Found((rcd.ref,), f"{sight.name(rcd.ref)} is of type AC{of}.")
        if rcd.rcd_type == "unknown":
            unread.append(rcd.ref)
    if unread:
        yield lacking(tuple(unread), "the type, which a small wave sign shows")
