"""A cooker draws more than its way is rated for.

Looks at:
    The load of each cooker circuit after the household allowance, and the rating of its
    way.
Why it matters:
    A way that is too small trips on the evening when everything is on; a cable that is
    too small heats.
What to do:
    Ask an electrician.
Source:
    IET On-Site Guide, table A2: 10 A, 30 % of the rest, 5 A for a socket.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._demand import over_rating
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="cooker-over-rating", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each cooker above its way."""
    for circuit in sight.record.circuits:
        if circuit.use == "cooker":
            yield from over_rating(sight, circuit)
