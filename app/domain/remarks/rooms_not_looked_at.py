"""Some rooms have not been looked at.

Looks at:
    How far each room was looked at.
Why it matters:
    What is in them is in no list, and stays live without anyone knowing.
What to do:
    Walk them. Where there is no way in, say so; it stays a question.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="rooms-not-looked-at",
    rank="record",
    group="look",
    always_tells="How far a room was looked at is always said.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the rooms that were not looked at whole, together."""
    away = refs_of(r for r in sight.record.rooms if r.looked_at != "all")
    if away:
        yield Found(away, f"Not looked at, or in part: {sight.names(away)}.")
