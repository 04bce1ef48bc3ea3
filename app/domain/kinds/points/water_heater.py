"""Water heater or immersion heater: heats water in a tank or a small unit.

It shows as the round cap on a hot-water tank, or as a small heater at a sink. One tank
may have two heaters, one of them off-peak: record two points. Write down the kilowatts
printed, the switch or timer that works each, and its hours. Off at noon may come on at
night.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="water_heater",
    label="Water heater or immersion heater",
    order=170,
    symbol=(
        '<path d="M5 6a7 3 0 0 1 14 0v12a7 3 0 0 1-14 0z"/>'
        '<path d="M22 16H11a1.75 1.75 0 0 1 0-3.5h11"/>'
    ),
    group="fixed",
)
