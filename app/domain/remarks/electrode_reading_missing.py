"""No reading of the earth electrode is on record.

Looks at:
    Earth electrodes, where the home or one of its boards is earthed by one (TT).
Why it matters:
    On a rod the fuses cannot clear a fault to earth; the RCD does, if the rod is good.
What to do:
    Look in the last electrician's document for the reading, or ask for one.
Source:
    BS 7671:2018+A2:2022, 411.5.3 and table 41.5.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="electrode-reading-missing", rank="electrician", group="earthing"
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the electrodes without a reading, or that the electrode is not recorded."""
    record = sight.record
    boards = [board for board in record.boards if board.earthing == "tt"]
    electrodes = sight.intake_of("earth_electrode")
    if record.home.earthing == "unknown" and electrodes:
        yield lacks(sight.home, "the earthing arrangement, for there is an electrode")
    if record.home.earthing != "tt" and not boards:
        return
    for electrode in electrodes:
        if electrode.resistance_ohm is None:
            yield Found(
                (electrode.ref, *refs_of(boards)),
                f"No reading of {sight.name(electrode.ref)} is recorded.",
            )
    if not electrodes:
        where = refs_of(boards) or (sight.home,)
        yield Found(where, "It is earthed by an electrode that is not recorded.")
