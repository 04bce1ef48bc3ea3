"""A point is guarded only by an RCD in a fused connection unit.

Looks at:
    Points whose only RCD of 30 mA or less is in another point.
Why it matters:
    Nobody at the board sees it, and its test button is forgotten.
What to do:
    Write beside it what it guards, and press its button when you press the others.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import POINT_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="local-rcd-only", rank="knowing", group="labels")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point with an RCD that something hangs on without another."""
    for guard in sight.record.points:
        if not guard.residual_current_ma or not POINT_KINDS[guard.kind].guards_onward:
            continue
        behind = sight.points_below(guard.ref)
        if sight.covers[guard.ref] == "unknown" and behind:
            yield lacks(guard.ref, "what feeds it, and the RCDs before it")
        elif sight.covers[guard.ref] == "no" and behind:
            refs = refs_of(behind)
            yield Found(
                (guard.ref, *refs),
                f"{sight.name(guard.ref)} alone guards {sight.names(refs)}.",
                (figure("IΔn", guard.residual_current_ma, "mA"),),
            )
