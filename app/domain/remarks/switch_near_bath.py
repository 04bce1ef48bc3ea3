"""A wall switch is near a bath or a shower.

Looks at:
    Light switches within 0.6 m of a bath or shower; pull cords do not count.
Why it matters:
    It is used with wet hands.
What to do:
    Ask an electrician for a pull cord, or to move it.
Source:
    BS 7671:2018+A2:2022, 701.512.3 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import Sight, in_wet_rooms

KIND = RemarkKind(code="switch-near-bath", rank="electrician", group="points")

NEAR_M = Decimal("0.6")
SWITCHES = ("switch", "two_way_switch", "appliance_switch", "fused_connection_unit")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each switch near the water."""
    unmeasured = []
    for point in in_wet_rooms(sight):
        if point.kind not in SWITCHES or point.current == "extra_low":
            continue
        if point.from_bath_m is None:
            unmeasured.append(point.ref)
        elif point.from_bath_m <= NEAR_M:
            yield Found(
                (point.ref,),
                f"{sight.name(point.ref)} is {point.from_bath_m} m from the water.",
                (figure("Distance", point.from_bath_m, "m"),),
            )
    if unmeasured:
        yield lacking(tuple(unmeasured), "the distance from the bath or shower")
