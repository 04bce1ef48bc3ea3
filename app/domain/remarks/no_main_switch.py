"""A board has no switch of its own.

Looks at:
    What stands before the fuses and circuit-breakers of each board.
Why it matters:
    There is nothing on the board that takes it off in a hurry.
What to do:
    Find out what does take it off and write it on the board. Ask an electrician about a
    switch.
Source:
    BS 7671:2018+A2:2022, 462.1.201 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import fed_by
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, protective, refs_of

KIND = RemarkKind(code="no-main-switch", rank="electrician", group="board")

SWITCHES = ("main_switch", "isolator", "rcd", "changeover")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board with ways that no switch of that board goes before."""
    for board in sight.record.boards:
        heads = sight.heads(board)
        bare = refs_of(device for device in heads if protective(device))
        unsaid = refs_of(d for d in heads if d.kind in ("unknown", "other"))
        if not bare or len(bare) == 1 == len(heads):
            continue
        idle = refs_of(
            d for d in heads if d.kind in SWITCHES and not fed_by(sight.net, d.ref)
        )
        if unsaid:
            yield lacking(unsaid, "what kind of device it is")
        elif idle:
            yield lacking(idle, "what it feeds")
        else:
            yield Found(
                (board.ref, *bare),
                f"On {sight.name(board.ref)} no switch is recorded before "
                f"{sight.names(bare)}.",
            )
