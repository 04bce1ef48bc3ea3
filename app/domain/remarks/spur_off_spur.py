"""A spur hangs on a spur.

Looks at:
    How each socket-outlet is joined, and what it is tied behind.
Why it matters:
    The first leg carries both, and it was meant for one socket.
What to do:
    Use no heaters there. Ask an electrician to bring it into the ring, or to put a
    fused connection unit before it.
Source:
    IET On-Site Guide, appendix H, and BS 7671:2018+A2:2022, appendix 15 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.record import Point
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, is_socket, refs_of

KIND = RemarkKind(code="spur-off-spur", rank="electrician", group="points")

SPURS = ("spur", "spur_off_spur")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each socket on a spur that is itself on a spur."""
    for point in sight.record.points:
        if not is_socket(point):
            continue
        behind = [
            p for p in _fed_from(sight, point) if is_socket(p) or p.connection in SPURS
        ]
        first = next((p for p in behind if p.connection in SPURS), None)
        if point.connection == "spur_off_spur" or (
            first and point.connection in (*SPURS, "unknown")
        ):
            refs = refs_of([first]) if first else refs_of(behind)
            on = f" hangs on {sight.names(refs)}" if refs else " hangs on another spur"
            yield Found((point.ref, *refs), f"{sight.name(point.ref)}{on}.")
        elif behind and behind[0].connection == "unknown":
            yield CannotTell(
                (point.ref, behind[0].ref),
                (Need(ref=behind[0].ref, what="how it is joined, ring or spur"),),
            )


def _fed_from(sight: Sight, point: Point) -> list[Point]:
    feeders = feeders_of(sight.net, point.ref)
    found = (sight.record.find(Point, ref) for ref in feeders)
    return [feeder for feeder in found if feeder]
