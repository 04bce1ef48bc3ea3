"""What feeds some points is not known.

Looks at:
    Points that are tied to nothing.
Why it matters:
    With every known way off they may still be live.
What to do:
    Take them as live. Find out in a round of switching off which way they go off with.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="fed-by-nobody-knows",
    rank="record",
    group="look",
    always_tells="A point is tied to something or it is not.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the points of each room that nothing is known to feed."""
    loose = [p for p in sight.record.points if not feeders_of(sight.net, p.ref)]
    if loose:
        yield Found(
            refs_of(loose),
            f"What feeds these is not recorded: {sight.names(refs_of(loose))}.",
        )
