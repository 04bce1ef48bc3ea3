"""A ring final circuit is not behind 30 or 32 A.

Looks at:
    The rating of the fuse or circuit-breaker that guards each ring final circuit: its
    way, or what is before that where the way is only a switch.
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
        guard = sight.guard(circuit)
        rated = guard.rated if guard else None
        if guard is None:
            yield lacks(circuit.ref, "which fuse or circuit-breaker guards it")
        elif rated is None:
            yield lacks(guard.item.ref, "the rated current")
        elif rated.value not in RATINGS:
            yield Found(
                (circuit.ref, guard.item.ref),
                f"{sight.name(circuit.ref)} is a ring behind {guard.shown}.",
                (figure("Rated current", rated.value, "A"),),
            )
