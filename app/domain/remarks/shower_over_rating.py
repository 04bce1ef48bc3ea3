"""A shower draws more than its way is rated for.

Looks at:
    The load of each shower circuit, at 230 V, and the rating of its way.
Why it matters:
    Showers are swapped for larger ones, and the cable and the way stay. Both then run
    hot.
What to do:
    Use the shower's lower setting and ask an electrician, who looks at the cable too.
Source:
    BS 7671:2018+A2:2022, 433.1.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._demand import over_rating
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="shower-over-rating", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each shower above its way."""
    for circuit in sight.record.circuits:
        if circuit.use == "shower":
            yield from over_rating(sight, circuit)
