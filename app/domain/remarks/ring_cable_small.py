"""The cable of a ring final circuit is small.

Looks at:
    The line conductor of each ring.
Why it matters:
    Each leg carries a good part of 32 A when the load sits at one end.
What to do:
    Ask an electrician.
Source:
    BS 7671:2018+A2:2022, 433.1.204: 2.5 mm² at least (one source seen); 1.5 mm² for
    mineral insulated cable (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="ring-cable-small", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each ring in a smaller cable."""
    for circuit in sight.record.circuits:
        if circuit.arrangement != "ring":
            continue
        least = Decimal("1.5") if circuit.cable == "mineral" else Decimal("2.5")
        if not circuit.line_mm2:
            yield lacks(circuit.ref, "the size of the line conductor")
        elif circuit.line_mm2 < least:
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)} is a ring in {circuit.line_mm2} mm².",
                (
                    figure("Line conductor", circuit.line_mm2, "mm²"),
                    figure("At least", least, "mm²"),
                ),
            )
