"""A board's enclosure is of plastic.

Looks at:
    The enclosure of each board, and where it stands.
Why it matters:
    A terminal that heats can set plastic alight. Under stairs a fire cuts off the way
    out.
What to do:
    Nothing by itself. Keep things that burn away from it and have metal fitted when the
    board is next changed.
Source:
    BS 7671:2008+A3:2015, 421.1.201, kept in BS 7671:2018+A2:2022.
Not retrospective:
    Asked of boards fitted in homes since 1 January 2016. Sources differ on how much an
    older one matters.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="enclosure-not-metal", rank="knowing", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board in plastic."""
    for board in sight.record.boards:
        if board.enclosure == "plastic":
            room = sight.room(board)
            where = f", in {room.name}" if room else ""
            yield Found((board.ref,), f"{sight.name(board.ref)} is of plastic{where}.")
    unseen = refs_of(b for b in sight.record.boards if b.enclosure == "unknown")
    if unseen:
        yield lacking(unseen, "what the enclosure is made of")
