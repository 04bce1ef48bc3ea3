"""A vehicle charger draws more than its way is rated for.

Looks at:
    The load of each charger circuit at 230 V, shared by the phases of a three-phase
    one, and the rating of its way.
Why it matters:
    A charger draws its full current for hours; nothing evens it out.
What to do:
    Ask whoever fitted it to set it lower; an electrician looks at the cable.
Source:
    BS 7671:2018+A2:2022, 722.311.201 (from memory): no diversity.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._demand import over_rating
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="charger-over-rating", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each charger above its way."""
    for circuit in sight.record.circuits:
        if circuit.use == "vehicle":
            yield from over_rating(sight, circuit)
