"""A board has an opening without a blank.

Looks at:
    Whether every opening of each board is closed.
Why it matters:
    A finger or a child's toy reaches live metal through it.
What to do:
    Keep everyone away from it, put nothing in it, and call an electrician: a blank is
    fitted with the board's supply off.
Source:
    BS 7671:2018+A2:2022, 416.2 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="opening-without-blank", rank="call", group="call")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board with an open place."""
    for board in sight.record.boards:
        if board.blanks_missing == "yes":
            yield Found(
                (board.ref,),
                f"{sight.name(board.ref)} has an opening without a blank.",
            )
    unseen = refs_of(b for b in sight.record.boards if b.blanks_missing == "unknown")
    if unseen:
        yield lacking(unseen, "a look for an opening without a blank")
