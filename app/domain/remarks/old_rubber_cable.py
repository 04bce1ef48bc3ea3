"""A circuit runs in old rubber, cloth or lead cable.

Looks at:
    The kind of cable of each circuit.
Why it matters:
    Rubber goes hard and falls off the wire when it is moved, and bare wire is left.
What to do:
    Leave fittings closed. Have an electrician test it and plan its replacement.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import CABLES
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="old-rubber-cable", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit in such a cable."""
    for circuit in sight.record.circuits:
        if circuit.cable in ("rubber", "lead"):
            yield Found(
                (circuit.ref, *refs_of(sight.points_on(circuit))),
                f"{sight.name(circuit.ref)}: {CABLES[circuit.cable].lower()}.",
            )
    unknown = refs_of(c for c in sight.record.circuits if c.cable == "unknown")
    if unknown:
        yield lacking(unknown, "the kind of cable")
