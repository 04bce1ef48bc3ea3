"""A fuse or circuit-breaker is larger than its cable carries.

Looks at:
    The rating of the fuse or circuit-breaker that guards each circuit: its way, or what
    is before that where the way is only a switch; of a rewirable fuse the wire too. The
    size of the cable, how it is laid, what lies beside it, how warm it is there, and
    how long it runs within insulation. Rings have a rule of their own.
Why it matters:
    The cable overheats inside the wall before the device opens.
What to do:
    Use less on that circuit and ask an electrician, who sees how it is really laid.
Source:
    BS 7671:2018+A2:2022, 433.1.1, tables 4D1A to 4D5, 4B1, 4C1 and 52.2 (for the most
    part from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._figures import by_part
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="device-over-cable", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit whose device is beyond its cable."""
    for circuit in sight.record.circuits:
        yield from by_part(sight, circuit, "overload")
