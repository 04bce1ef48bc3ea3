"""A point is hot, broken, wet or loose.

Looks at:
    What is seen of the condition of each point.
Why it matters:
    A loose wire heats until the plate scorches; a broken one bares live metal.
What to do:
    Do not use or touch it. Switch its circuit off at the board, then call an
    electrician. Smoke or fire: get out and ring 999.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import POINT_CONDITIONS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="point-hot-or-damaged", rank="call", group="call")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point that should not be used as it is."""
    for point in sight.record.points:
        if point.condition not in ("sound", "unknown"):
            seen = POINT_CONDITIONS[point.condition].lower()
            yield Found((point.ref,), f"{sight.name(point.ref)} was seen: {seen}.")
    unseen = refs_of(p for p in sight.record.points if p.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at the condition")
