"""One box holds two circuits.

Looks at:
    Points in whose box conductors of another circuit are noted.
Why it matters:
    With the one off, the other is still live behind the same plate.
What to do:
    Switch off both before the plate comes off, and mark the inside of the plate.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="two-circuits-in-one-box",
    rank="knowing",
    group="switching",
    always_tells="Only what is noted as being in a box is looked at.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point with a second circuit in its box."""
    for point in sight.record.points:
        ties = sight.record.ties_of(point.ref)
        others = dict.fromkeys(t.tied_to for t in ties if t.role == "present")
        own = dict.fromkeys(t.tied_to for t in ties if t.role == "feeds")
        if set(others) - set(own):
            yield Found(
                (point.ref, *others),
                f"In the box of {sight.name(point.ref)} conductors of "
                f"{sight.names(others)} are too.",
            )
