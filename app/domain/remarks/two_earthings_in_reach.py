"""Points of two earthing systems are within reach of each other.

Looks at:
    Rooms whose points come from boards that are earthed differently.
Why it matters:
    Two metal things with different earths can differ in voltage in a fault, and one
    person can touch both.
What to do:
    Ask an electrician before anything more is added there.
Source:
    BS 7671:2018+A2:2022, 411.3.1.1 and 542.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board, Point, Room
from app.domain.record.choices import EARTHINGS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, is_mains

KIND = RemarkKind(code="two-earthings-in-reach", rank="electrician", group="earthing")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each room with points of two earthings."""
    if len(sight.record.boards) < 2:
        return
    of_board = {board.ref: _earthing(sight, board) for board in sight.record.boards}
    unsaid = [b.ref for b in sight.record.boards if of_board[b.ref] == "unknown"]
    if unsaid and "tt" in of_board.values():
        yield lacking(tuple(unsaid), "the earthing of what it feeds")
    for room in sight.record.rooms:
        here: dict[str, list[str]] = {}
        for point in sight.record.points_of(room.ref):
            for earthing in _earthings(sight, point, of_board):
                here.setdefault(earthing, []).append(point.ref)
        if len(here) > 1 and "tt" in here:
            yield _found(sight, room, here)


def _found(sight: Sight, room: Room, here: dict[str, list[str]]) -> Found:
    parts = [
        f"{EARTHINGS[e].split(',')[0]}: {sight.names(here[e])}" for e in sorted(here)
    ]
    points = dict.fromkeys(ref for refs in here.values() for ref in refs)
    return Found(
        (room.ref, sight.home, *points),
        f"In {sight.name(room.ref)}, {'; '.join(parts)}.",
    )


def _earthings(sight: Sight, point: Point, of_board: dict[str, str]) -> dict[str, None]:
    steps = sight.before(point.ref) if is_mains(point) else ()
    nearest = next((step.board for step in steps if step.board in of_board), None)
    found = of_board.get(nearest or "", "unknown")
    return {} if found == "unknown" else {found: None}


def _earthing(sight: Sight, board: Board) -> str:
    """Return how a board is earthed: its own arrangement, else that of the home."""
    own = board.earthing
    return sight.record.home.earthing if own == "supply" else own
