"""The cables from the solar panels are live in any daylight.

Looks at:
    Solar panels, and points that are marked as direct current.
Why it matters:
    No switch in the home takes them off: only the dark does. Direct current draws an
    arc that does not go out by itself.
What to do:
    Leave them alone, and the plugs on the roof with them. Mark the cable where it
    enters.
Source:
    BS 7671:2018+A2:2022, 712 (from memory); advice of the fire services.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="panels-live-by-day", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the panels, with the points on their side."""
    for source in sight.record.sources:
        if source.kind == "solar" and source.present == "yes":
            fed = {p.ref: p for p in sight.points_below(source.ref)}
            dc = refs_of(p for p in fed.values() if p.current == "dc")
            yield Found(
                (source.ref, *(dc or fed)),
                f"{sight.name(source.ref)} keep their cables live by day"
                f"{', up to ' + sight.names(dc or fed) if fed else ''}.",
            )
        if source.kind == "solar" and source.present == "unknown":
            yield lacks(source.ref, "whether there are any")
