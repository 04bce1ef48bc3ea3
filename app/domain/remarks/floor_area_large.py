"""A socket circuit serves a large floor area.

Looks at:
    The floor area of each socket circuit, its arrangement and the rating of its way.
Why it matters:
    The customary area keeps what is plugged in within what the circuit carries.
What to do:
    Keep large heaters off it. Ask an electrician when it trips or warms.
Source:
    IET On-Site Guide, table H2.1: a ring on 32 A, 100 m² (one source seen); a radial on
    32 A 75 m² and on 20 A 50 m² (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import Circuit
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="floor-area-large", rank="knowing", group="circuits")

RING_M2, RADIAL_32_M2, RADIAL_20_M2 = Decimal(100), Decimal(75), Decimal(50)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each socket circuit above the customary area, and those not measured."""
    unknown = []
    for circuit in sight.record.circuits:
        most = _most(sight, circuit)
        if circuit.use != "sockets" or most is None:
            continue
        if circuit.floor_area_m2 is None:
            unknown.append(circuit.ref)
        elif circuit.floor_area_m2 > most:
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)} serves {circuit.floor_area_m2} m².",
                (
                    figure("Floor area", circuit.floor_area_m2, "m²"),
                    figure("Customary", most, "m²"),
                ),
            )
    if unknown:
        yield lacking(tuple(unknown), "the floor area served")


def _most(sight: Sight, circuit: Circuit) -> Decimal | None:
    if circuit.arrangement == "ring":
        return RING_M2
    guard = sight.guard(circuit)
    rated = guard.rated if guard else None
    if circuit.arrangement != "radial" or rated is None:
        return None
    return RADIAL_20_M2 if rated.value <= 20 else RADIAL_32_M2
