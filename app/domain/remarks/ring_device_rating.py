"""A ring final circuit is not behind 30 or 32 A.

Looks at:
    The rating of the way of each ring final circuit.
Why it matters:
    A ring relies on its two legs sharing the load behind a device of that size.
What to do:
    Ask an electrician. A larger device has to go; a smaller one may be there for a
    reason, such as a ring that was broken.
Source:
    BS 7671:2018+A2:2022, 433.1.204 (one source seen).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="ring-device-rating", rank="electrician", group="circuits")

RATINGS = (Decimal(30), Decimal(32))


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each ring behind another rating."""
    for circuit in sight.record.circuits:
        if circuit.arrangement != "ring":
            continue
        for way in sight.ways(circuit)[:1]:
            if not way.rated_current_a:
                yield lacks(way.ref, "the rated current")
            elif way.rated_current_a not in RATINGS:
                yield Found(
                    (circuit.ref, way.ref),
                    f"{sight.name(circuit.ref)} is a ring behind "
                    f"{way.rated_current_a} A.",
                    (figure("Rated current", way.rated_current_a, "A"),),
                )
