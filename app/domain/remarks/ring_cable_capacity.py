"""The cable of a ring final circuit carries too little where it is laid.

Looks at:
    The cable of each ring, how it is laid and what surrounds it.
Why it matters:
    A leg of a ring has to carry 20 A; deep in insulation 2.5 mm² does not.
What to do:
    Ask an electrician. Keep heaters apart from each other on that ring.
Source:
    BS 7671:2018+A2:2022, 433.1.204 (one source seen), table 4D5 (for the most part from
    memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._figures import by_part
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="ring-cable-capacity", rank="electrician", group="circuits")

# BS 7671:2018+A2:2022, 433.1.204 (one source seen).
LEAST_A = Decimal(20)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each ring whose cable carries less than the rule wants."""
    for circuit in sight.record.circuits:
        part = sight.figures(circuit).part("ring")
        if part is None:
            continue
        capacity = part.found
        if capacity.outcome == "cannot_tell":
            yield from by_part(sight, circuit, "ring")
        elif capacity.value < LEAST_A:
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)}: its cable carries {capacity.shown} as it "
                "is laid.",
                (
                    figure("It carries", capacity.value, "A", calculated=True),
                    figure("At least", LEAST_A, "A"),
                ),
            )
