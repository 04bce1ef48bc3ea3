"""A board is hot, broken, wet or loose.

Looks at:
    What is seen of the condition of each board.
Why it matters:
    A loose terminal heats until something burns; water and bare metal give shocks.
What to do:
    Leave it closed. If its main switch is cool and you can reach it without touching
    anything else, switch it off. Call an electrician today. Smoke or fire: get out and
    ring 999.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import POINT_CONDITIONS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="board-hot-or-damaged", rank="call", group="call")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each board that should not be left as it is."""
    for board in sight.record.boards:
        if board.condition not in ("sound", "unknown"):
            seen = POINT_CONDITIONS[board.condition].lower()
            yield Found((board.ref,), f"{sight.name(board.ref)} was seen: {seen}.")
    unseen = refs_of(b for b in sight.record.boards if b.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at the condition")
