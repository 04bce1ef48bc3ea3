"""The lights and the sockets of a storey go off together.

Looks at:
    Storeys whose lights and sockets all hang on one RCD.
Why it matters:
    When it trips there is no light, and no lamp to plug in either.
What to do:
    Keep a torch on that storey. Ask an electrician about splitting them when the board
    is next worked on.
Source:
    BS 7671:2018+A2:2022, 314.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Point
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, is_socket, refs_of

KIND = RemarkKind(code="storey-dark-with-its-sockets", rank="knowing", group="rcd")

STOREYS = ("cellar", "ground", "first", "second", "third")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each storey that one RCD takes off whole."""
    for storey in STOREYS:
        rooms = [
            r for r in sight.record.rooms
            if r.storey == storey and r.kind not in ("outbuilding", "garage")
        ]  # fmt: skip
        points = [p for r in rooms for p in sight.record.points_of(r.ref)]
        lights = [p for p in points if p.kind == "light"]
        sockets = [p for p in points if is_socket(p)]
        if not rooms or not lights or not sockets:
            continue
        loose = refs_of(p for p in (*lights, *sockets) if not sight.before(p.ref))
        common = _common(sight, [p for p in (*lights, *sockets) if p.ref not in loose])
        if common and loose:
            yield lacking(loose, "the circuit that feeds it")
        elif common:
            yield Found(
                (common, *refs_of(rooms)),
                f"{sight.name(common)} takes off the lights and the sockets of "
                f"{sight.names(refs_of(rooms))} together.",
            )


def _common(sight: Sight, points: list[Point]) -> str | None:
    shared: set[str] | None = None
    for point in points:
        rcds = {s.ref for s in sight.rcds(point.ref) if s.sort == "device"}
        shared = rcds if shared is None else shared & rcds
    return min(shared, default=None) if shared else None
