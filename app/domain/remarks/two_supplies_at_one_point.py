"""A point has two supplies.

Looks at:
    Points that are fed through two circuits.
Why it matters:
    With one off, the other keeps it live.
What to do:
    Switch off both before anyone opens it, and write so beside it.
Source:
    BS 7671:2018+A2:2022, 514.11.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="two-supplies-at-one-point",
    rank="knowing",
    group="switching",
    always_tells="Only feeds that are recorded are counted.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point that two circuits feed."""
    for point in sight.record.points:
        circuits = sight.circuits_at.get(point.ref, ())
        if len(circuits) > 1:
            ways = (way for circuit in circuits for way in sight.ways(circuit))
            yield Found(
                (point.ref, *refs_of(circuits), *refs_of(ways)),
                f"{sight.name(point.ref)} is fed by {sight.names(refs_of(circuits))}.",
            )
