"""A board is much newer than the wiring behind it.

Looks at:
    The year of each board, and the years in which its circuits were put in.
Why it matters:
    A new metal board says nothing of the cables behind it, nor of what was not
    rewired.
What to do:
    Ask whoever did the board for the certificate: it should say what was left as it
    was.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking, lacks
from app.domain.remarks._sight import Sight, year_of

KIND = RemarkKind(code="board-newer-than-wiring", rank="knowing", group="papers")

MUCH_YEARS = 15


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board with circuits from long before it."""
    for board in sight.record.boards:
        ways = sight.record.devices_of(board.ref)
        circuits = [c for w in ways for c in sight.record.circuits_of(w.ref)]
        if not circuits:
            continue
        years = {c.ref: year_of(c.installed) for c in circuits}
        dated = {ref: year for ref, year in years.items() if year is not None}
        unknown = tuple(ref for ref in years if ref not in dated)
        if board.year is None:
            yield lacks(board.ref, "the year, about")
            continue
        old = {
            ref: year for ref, year in dated.items() if board.year - year >= MUCH_YEARS
        }
        if old:
            yield _found(sight, board, old)
        elif unknown:
            yield lacking(unknown, "when it was put in (about)")


def _found(sight: Sight, board: Board, old: dict[str, int]) -> Found:
    figures = (
        figure("Year of the board", board.year or 0),
        figure("Earliest year among these circuits", min(old.values())),
    )
    return Found(
        (board.ref, *old),
        f"{sight.name(board.ref)} is of {board.year}; older are {sight.names(old)}.",
        figures,
    )
