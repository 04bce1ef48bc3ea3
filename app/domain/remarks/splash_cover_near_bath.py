"""A fitting near a bath or a shower has no cover against splashing.

Looks at:
    Lights, fans and heaters within 0.6 m of a bath or shower, and the IP code printed
    on them.
Why it matters:
    Water gets in, and the fitting or its screws become live.
What to do:
    Ask an electrician for one made for the place. Until then spray nothing at it.
Source:
    BS 7671:2018+A2:2022, 701.512.2: IPX4 in zones 1 and 2, as far as 0.6 m.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking, lacks
from app.domain.remarks._sight import Sight, in_wet_rooms, water_digit

KIND = RemarkKind(code="splash-cover-near-bath", rank="electrician", group="points")

NEAR_M = Decimal("0.6")
FITTINGS = ("light", "extractor", "heater", "shower", "water_heater")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each fitting near the water without the cover."""
    unmeasured = []
    for point in in_wet_rooms(sight):
        if point.kind not in FITTINGS or point.current == "extra_low":
            continue
        if point.from_bath_m is None:
            unmeasured.append(point.ref)
        elif point.from_bath_m <= NEAR_M:
            digit = water_digit(point.ip)
            if digit is None:
                yield lacks(point.ref, "the IP code printed on it")
            elif digit < 4:
                yield Found(
                    (point.ref,),
                    f"{sight.name(point.ref)}, {point.from_bath_m} m from the water, "
                    f"says {point.ip}.",
                    (figure("Distance", point.from_bath_m, "m"),),
                )
    if unmeasured:
        yield lacking(tuple(unmeasured), "the distance from the bath or shower")
