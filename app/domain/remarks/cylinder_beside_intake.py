"""Hot water and the intake share a room.

Looks at:
    Rooms that hold items of the intake and also a water heater or a boiler.
Why it matters:
    A leak there wets the intake, which no switch of yours turns off; and whoever works
    on the water heater works beside things that stay live.
What to do:
    Look for drips now and then. Tell whoever comes to the water heater that the intake
    beside it stays live. Water on the intake: keep away and call.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="cylinder-beside-intake", rank="knowing", group="switching")

INTAKE = ("cutout", "meter", "tails", "contactor", "time_switch")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each room with a water heater beside the intake."""
    intake = sight.intake_of(*INTAKE)
    hot = [p for p in sight.record.points if p.kind == "water_heater"]
    for room in sight.record.rooms:
        here = refs_of(i for i in intake if i.room == room.ref)
        heaters = refs_of(p for p in hot if p.room == room.ref)
        if here and heaters:
            yield Found(
                (room.ref, *here, *heaters),
                f"{sight.name(room.ref)} holds {sight.names(heaters)} and "
                f"{sight.names(here)}.",
            )
    unplaced = refs_of(i for i in intake if i.room is None)
    if unplaced and hot:
        yield lacking(unplaced, "the room")
