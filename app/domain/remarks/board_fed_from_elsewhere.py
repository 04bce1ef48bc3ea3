"""A board's own switch leaves the cable to it live.

Looks at:
    Boards that are fed from a way of another board.
Why it matters:
    With its own switch off, the incoming cable and the terminals it ends at stay live.
    The switch that takes them off is somewhere else.
What to do:
    Write on the board where it is fed from. To work on the board itself, that way has
    to be off and locked.
Source:
    Common practice, no source; 514.8.1 of BS 7671:2018+A2:2022 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="board-fed-from-elsewhere", rank="knowing", group="labels")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board that hangs on a way of another board."""
    first = refs_of(sight.first_boards())
    for board in sight.record.boards:
        heads = sight.heads(board)
        way = next((s for d in heads for s in sight.before(d.ref) if s.board), None)
        if way is not None:
            other = sight.record.find(Board, way.board)
            where = f" on {sight.name(other.ref)}" if other else ""
            yield Found(
                (board.ref, way.ref, *([other.ref] if other else [])),
                f"{sight.name(board.ref)} is fed from {sight.name(way.ref)}{where}.",
            )
        elif board.ref in first and not any(sight.before(d.ref) for d in heads):
            yield lacks(board.ref, "what it is fed from")
