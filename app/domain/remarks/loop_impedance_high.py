"""The loop impedance of a circuit is high for its device.

Looks at:
    Ze, the length and the sizes of each circuit, worked out warm at its far end,
    against what its device needs to open in time; with an electrode (TT) and an RCD
    before it, against what the RCD needs. What leans on a Ze that nobody measured is
    not told.
Why it matters:
    In a fault to earth the current may be too small to open the device quickly.
What to do:
    Ask for a reading of Zs at the far end. A measured figure goes before this one.
Source:
    BS 7671:2018+A2:2022, tables 41.2 to 41.5, 411.5.3; from BS EN 60898 the multiple of
    the rating; the fuse tables for the most part from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._figures import by_part
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="loop-impedance-high", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit beyond the limit of its device."""
    for circuit in sight.record.circuits:
        yield from by_part(sight, circuit, "zs", sure=True)
