"""What was seen is older than later work.

Looks at:
    The day on which each tie was seen, against the year of the board and of the
    circuit, and against the work that is written down; and whether that work says
    where it was done.
Why it matters:
    Work on the board or the circuit may have moved the point since.
What to do:
    Look again: switch the way off once and see.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from app.domain.record import Board, Circuit
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
    lacks,
)
from app.domain.remarks._sight import Sight, year_of

KIND = RemarkKind(code="seen-before-later-work", rank="record", group="look")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield work that names nothing, and points seen before the latest work."""
    yield from _work_nowhere(sight)
    for circuit in sight.record.circuits:
        year = _last_work(sight, circuit)
        ties = [
            t for t in sight.record.ties_to(circuit.ref)
            if t.role == "feeds" and t.grade in "345"
        ]  # fmt: skip
        before = [t.point for t in ties if t.seen_on and year and t.seen_on.year < year]
        written = [t.point for t in ties if t.ref in sight.net.aged and t.seen_on]
        undated = [t.point for t in ties if not t.seen_on]
        if aged := tuple(dict.fromkeys((*before, *written))):
            yield Found(
                (circuit.ref, *aged),
                f"On {sight.name(circuit.ref)} {sight.names(aged)} were seen before "
                "the latest work on it, its board or the room.",
                (figure("Year of the latest work", year),) if before and year else (),
            )
        elif undated and (year or any(t.ref in sight.net.aged for t in ties)):
            needs = tuple(
                Need(ref=ref, what="the day it was seen")
                for ref in dict.fromkeys(undated)
            )
            yield CannotTell((circuit.ref, *dict.fromkeys(undated)), needs)


def _work_nowhere(sight: Sight) -> Iterator[Outcome]:
    """Yield work that was done nobody knows where, later than what was seen."""
    seen = [t.seen_on or date.min for t in sight.record.ties if t.grade in "345"]
    for work in sight.record.works:
        latest = work.no_later_than or date.max
        if work.state == "done" and not work.about and any(d < latest for d in seen):
            yield lacks(work.ref, "where it was done")


def _last_work(sight: Sight, circuit: Circuit) -> int | None:
    boards = (sight.record.find(Board, way.board) for way in sight.ways(circuit))
    years = [year_of(circuit.installed), *(b.year for b in boards if b)]
    return max((year for year in years if year), default=None)
