"""What feeds some points is known only from a label.

Looks at:
    How the ties of each circuit's points are known.
Why it matters:
    Labels are wrong in many homes, and a guess that is printed looks like knowledge.
What to do:
    Switch the way off once and see what goes dead, before anyone relies on it.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Tie
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="known-by-label-only",
    rank="record",
    group="look",
    always_tells="How a tie is known is always said.",
)


WEAK = ("0", "1")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield, by circuit, the points whose feed nobody has seen."""
    by: dict[str, list[str]] = {}
    for tie in sight.record.ties:
        if tie.role == "feeds" and tie.grade in WEAK and _both_there(sight, tie):
            by.setdefault(tie.tied_to, []).append(tie.point)
    for ref, points in by.items():
        yield Found(
            (ref, *dict.fromkeys(points)),
            f"Tied to {sight.name(ref)} by a label or a guess: {sight.names(points)}.",
        )


def _both_there(sight: Sight, tie: Tie) -> bool:
    return tie.point in sight.record.by_ref and tie.tied_to in sight.record.by_ref
