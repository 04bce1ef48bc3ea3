"""A point is not on the circuit that one would look for it on.

Looks at:
    Each point against the others of its room, its storey and its circuit.
Why it matters:
    It stays live when the way that everyone would choose is off.
What to do:
    Write it on the label of its way and, if you like, inside its plate. Prove it at the
    point before any work.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import POINT_KINDS
from app.domain.network import feeders_of
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="odd-one-out", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each odd one out, and the points that cannot be compared."""
    for odd in sight.odd:
        yield Found(
            (odd.point, *odd.circuits), f"{sight.name(odd.point)}: {odd.sentence}"
        )
    loose = refs_of(
        point for point in sight.record.points
        if POINT_KINDS[point.kind].group in ("sockets", "lights")
        and not feeders_of(sight.net, point.ref)
    )  # fmt: skip
    if loose:
        yield lacking(loose, "what feeds it")
