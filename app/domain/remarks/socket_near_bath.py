"""A socket-outlet is near a bath or a shower.

Looks at:
    Socket-outlets in rooms with a bath or a shower, and how far they are from it;
    shaver units do not count.
Why it matters:
    An appliance on a lead reaches the water.
What to do:
    Plug nothing in there. Ask an electrician to take it away.
Source:
    BS 7671:2018+A2:2022, 701.512.3: 2.5 m from the edge of zone 1 (from memory); 3 m in
    earlier editions.
Not retrospective:
    None was allowed in such a room before 2008 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import Sight, in_wet_rooms, is_socket

KIND = RemarkKind(code="socket-near-bath", rank="electrician", group="points")

LEAST_M, EARLIER_M = Decimal("2.5"), Decimal(3)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each socket nearer to the water than the rule lets it be."""
    unmeasured = []
    for point in in_wet_rooms(sight):
        if not is_socket(point):
            continue
        if point.from_bath_m is None:
            unmeasured.append(point.ref)
        elif point.from_bath_m < EARLIER_M:
            yield Found(
                (point.ref,),
                f"{sight.name(point.ref)} is {point.from_bath_m} m from the bath or "
                "shower.",
                (
                    figure("Distance", point.from_bath_m, "m"),
                    figure("At least, in this edition", LEAST_M, "m"),
                    figure("At least, in earlier editions", EARLIER_M, "m"),
                ),
            )
    if unmeasured:
        yield lacking(tuple(unmeasured), "the distance from the bath or shower")
