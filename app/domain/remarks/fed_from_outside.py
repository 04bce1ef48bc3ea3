"""Something is fed from outside the home.

Looks at:
    Points and sources that a neighbour, a landlord or the building feeds.
Why it matters:
    It stays live whatever you switch off, and nobody here can part it.
What to do:
    Write on it whose it is. Ask them before anyone opens it.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="fed-from-outside", rank="knowing", group="sources")

OUTSIDE = ("neighbour", "landlord", "other")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each outside source that is there, with what it feeds."""
    for source in sight.record.sources:
        if source.kind not in OUTSIDE:
            continue
        fed = refs_of(sight.points_below(source.ref))
        if source.present == "yes" and (fed or source.joins):
            yield Found(
                (source.ref, *fed),
                f"{sight.name(source.ref)} feeds "
                f"{sight.names(fed) if fed else 'what it joins'}.",
            )
        elif source.present == "yes":
            yield lacks(source.ref, "what it feeds")
        elif source.present == "unknown":
            yield lacks(source.ref, "whether it is there")
