"""Some points stay live when the main switch is off.

Looks at:
    What a source that runs without the network feeds.
Why it matters:
    They carry on in a power cut and with everything else off, from the battery or the
    generator.
What to do:
    Mark each of these points. To work on one, switch off the source at its own switch
    too; its instructions say how.
Source:
    BS 7671:2018+A2:2022, 514.15.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.protection import ELSEWHERE
from app.domain.record import Board, Source
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, is_mains, refs_of

KIND = RemarkKind(code="live-without-the-network", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each such source with the points it keeps live."""
    for source in sight.sources():
        if source.kind in ELSEWHERE:
            continue
        points = refs_of(p for p in sight.points_below(source.ref) if is_mains(p))
        if not points:
            continue
        if source.runs_without_network == "unknown":
            yield lacks(source.ref, "whether it can feed while the network is off")
        elif source.runs_without_network == "yes":
            boards = [b.ref for b in sight.record.boards if _fed(sight, b, source)]
            yield Found(
                (source.ref, *points, *boards),
                f"{sight.name(source.ref)} keeps {sight.names(points)} live.",
            )


def _fed(sight: Sight, board: Board, source: Source) -> bool:
    below = sight.below(source.ref)
    return any(d.ref in below for d in sight.record.devices_of(board.ref))
