"""The earth electrode has a high resistance.

Looks at:
    The reading of each earth electrode, and the largest IΔn of the RCDs in the home.
Why it matters:
    Above 50 V divided by IΔn the metalwork can stay at a dangerous voltage. Above 200 Ω
    a rod may not hold its value when the ground dries or freezes.
What to do:
    Ask an electrician to read it again and better it.
Source:
    BS 7671:2018+A2:2022, table 41.5, 50 V / IΔn; the note on 200 Ω from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="electrode-resistance-high", rank="electrician", group="earthing"
)

NOT_STABLE_OHM = Decimal(200)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each reading above 200 Ω, or above what the RCDs take."""
    ratings = [d.residual_current_ma for d in sight.record.devices]
    largest = max((ma for ma in ratings if ma), default=None)
    most = min(NOT_STABLE_OHM, Decimal(50000) / largest) if largest else NOT_STABLE_OHM
    for electrode in sight.intake_of("earth_electrode"):
        reading = electrode.resistance_ohm
        if reading is None:
            yield lacks(electrode.ref, "the reading in ohms")
        elif reading > most:
            yield Found(
                (electrode.ref,),
                f"{sight.name(electrode.ref)} was read at {reading} Ω.",
                (
                    figure("Reading", reading, "Ω"),
                    figure("Remarked on above", most, "Ω", calculated=True),
                ),
            )
