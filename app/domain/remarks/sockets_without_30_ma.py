"""Socket-outlets without a 30 mA RCD.

Looks at:
    Every RCD before each socket-outlet indoors.
Why it matters:
    What is plugged in can be damaged, wet or taken outdoors. An RCD of 30 mA opens
    before most shocks to earth kill; one of 100 mA or a delayed one does not.
What to do:
    Ask an electrician for an RCD or RCBO at the board. Until then use a plug-in RCD for
    whatever goes outdoors.
Source:
    BS 7671:2018+A2:2022, 411.3.3.
Not retrospective:
    Asked of new sockets up to 20 A since 1 July 2008, and up to 32 A since
    1 January 2019. Sources differ on how much an older one matters.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._cover import without_cover
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="sockets-without-30-ma", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with such sockets."""
    yield from without_cover(sight, "sockets")
