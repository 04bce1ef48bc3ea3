"""A board is of wood, or open at the back.

Looks at:
    The enclosure of each board.
Why it matters:
    Old boards on wood have live parts that only the wall or the wood closes off; wood
    burns.
What to do:
    Keep the front shut and keep things away from it. Ask an electrician about a new
    board.
Source:
    BS 7671:2008+A3:2015, 421.1.201, and 416.2 (from memory).
Not retrospective:
    Asked of boards fitted in homes since 1 January 2016.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="enclosure-open-or-wood", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board on wood or without a back."""
    for board in sight.record.boards:
        if board.enclosure == "wood":
            yield Found(
                (board.ref,),
                f"{sight.name(board.ref)} is of wood, or open at the back.",
            )
    unseen = refs_of(b for b in sight.record.boards if b.enclosure == "unknown")
    if unseen:
        yield lacking(unseen, "what the enclosure is made of")
