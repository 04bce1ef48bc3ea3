"""A board has no circuit chart.

Looks at:
    Whether a chart hangs in or beside each board.
Why it matters:
    It tells the next person what each way feeds, before anything is opened.
What to do:
    Print the chart from this record and fix it inside the door, never on a cover that
    comes off.
Source:
    BS 7671:2018+A2:2022, 514.9.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="chart-missing", rank="record", group="labels")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the boards without a chart, together."""
    boards = sight.record.boards
    bare = refs_of(board for board in boards if board.chart == "no")
    unseen = refs_of(board for board in boards if board.chart == "unknown")
    if bare:
        yield Found(bare, f"No chart is there for {sight.names(bare)}.")
    if unseen:
        yield lacking(unseen, "a look for a chart inside the door")
