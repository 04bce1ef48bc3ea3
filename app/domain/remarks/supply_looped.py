"""The supply is looped with next door.

Looks at:
    Whether the supply is looped to or from a neighbour.
Why it matters:
    Two homes share one cable from the street, so less is left for a vehicle charger, a
    heat pump or a shower, and work at your cut-out takes next door off.
What to do:
    Tell the network before anything large is added; they can end the loop.
Source:
    Common practice of the networks, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="supply-looped", rank="knowing", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that the supply is shared with next door."""
    looped = sight.record.home.looped
    if looped == "yes":
        yield Found((sight.home,), "The supply is looped to or from next door.")
    if looped == "unknown":
        yield lacks(sight.home, "whether the supply is looped with next door")
