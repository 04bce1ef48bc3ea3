"""What would be missed hangs several boards away.

Looks at:
    Points marked as missed if they go off, fed through two boards or more.
Why it matters:
    Somebody who works at a board far from the home takes away its water, its fence or
    someone's alarm without a thought.
What to do:
    Write it on the label of each way in between.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="missed-behind-many-boards", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each such point with the boards that its supply passes."""
    loose = []
    for point in sight.record.points:
        if not point.care:
            continue
        steps = sight.before(point.ref)
        boards = dict.fromkeys(step.board for step in steps if step.board)
        if not steps:
            loose.append(point.ref)
        if len(boards) > 1:
            ways = [s.ref for s in steps if s.sort == "point" or s.board]
            yield Found(
                (point.ref, *(b for b in boards if b), *ways),
                f"{sight.name(point.ref)} passes {len(boards)} boards: "
                f"{sight.names(b for b in boards if b)}.",
            )
    if loose:
        yield lacking(tuple(loose), "what feeds it")
