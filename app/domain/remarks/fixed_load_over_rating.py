"""A fixed heater draws more than its way is rated for.

Looks at:
    The load of each circuit for water heating, space heating, storage heating or a heat
    pump, at 230 V, and the rating of its way, fuse or circuit-breaker and switches.
Why it matters:
    Heaters draw their full current for hours.
What to do:
    Ask an electrician.
Source:
    BS 7671:2018+A2:2022, 433.1.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._demand import over_rating
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="fixed-load-over-rating", rank="electrician", group="circuits")

USES = ("water_heating", "space_heating", "storage_heating", "heat_pump")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each such circuit above its way."""
    for circuit in sight.record.circuits:
        if circuit.use in USES:
            yield from over_rating(sight, circuit)
