"""A socket-outlet outdoors without a 30 mA RCD.

Looks at:
    Every RCD before each socket-outlet outdoors.
Why it matters:
    Wet ground, bare feet and a cut lead: the place where an RCD saves most lives.
What to do:
    Do not use it until an electrician has fitted one, or use a plug-in RCD each time.
Source:
    BS 7671:2018+A2:2022, 411.3.3.
Not retrospective:
    Asked of sockets for use outdoors for longer than of others (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._cover import without_cover
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="outdoors-without-30-ma", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with such sockets."""
    yield from without_cover(sight, "outdoors")
