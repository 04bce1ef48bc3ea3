"""Rewirable fuses are in use.

Looks at:
    Fuses of the rewirable kind (BS 3036).
Why it matters:
    They act slowly on a small overload, and whoever mends one can put in wire of any
    thickness.
What to do:
    Touch a carrier only with the board's main switch off. Keep card of the right wire
    beside the board, or ask an electrician about a new board.
Source:
    BS 7671:2018+A2:2022, 533.1.1.3 prefers other kinds (from memory).
Not retrospective:
    They may stay where they are sound and rightly wired.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="rewirable-fuses", rank="knowing", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the rewirable fuses of each board."""
    for board in sight.record.boards:
        devices = sight.record.devices_of(board.ref)
        fuses = refs_of(d for d in devices if d.kind == "fuse_rewirable")
        unsaid = refs_of(d for d in devices if d.kind == "unknown")
        if fuses:
            yield Found(
                (board.ref, *fuses),
                f"{sight.name(board.ref)} has {len(fuses)}: {sight.names(fuses)}.",
            )
        elif unsaid:
            yield lacking(unsaid, "what kind of device it is")
