"""Points in a room with a bath or shower without a 30 mA RCD.

Looks at:
    Every RCD before each point of such a room.
Why it matters:
    Wet skin carries more current.
What to do:
    Ask an electrician for an RCD or RCBO at the board.
Source:
    BS 7671:2018+A2:2022, 701.411.3.3 (one source seen).
Not retrospective:
    Asked of new work since 1 July 2008; before that the room had its metal parts
    bonded together instead.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._cover import without_cover
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="bathroom-without-30-ma", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with points in such rooms."""
    yield from without_cover(sight, "bathroom")
