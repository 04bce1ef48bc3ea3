"""An RCD was measured slower than it should be.

Looks at:
    The newest time at IΔn that was copied for each circuit or RCD.
Why it matters:
    An RCD that is slow may not trip in time to save a life.
What to do:
    Ask whoever signed the paper, and have it measured again.
Source:
    BS EN 61008 and 61009: 300 ms at IΔn for a general RCD; one that is time-delayed may
    take up to 500 ms (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.failed import longest_ms
from app.domain.record import Circuit, Device
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.over_time import latest

KIND = RemarkKind(
    code="rcd-slow",
    rank="electrician",
    group="rcd",
    always_tells="where no time was copied from a paper there is nothing to remark on",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each thing whose RCD took too long."""
    things: tuple[Circuit | Device, ...] = (
        *sight.record.circuits,
        *sight.record.devices,
    )
    for thing in things:
        result = latest(sight.record, thing.ref, "rcd_ms")
        if result is None or result.rcd_ms is None:
            continue
        if result.rcd_ms > longest_ms(thing):
            yield Found(
                (thing.ref,),
                f"{sight.name(thing.ref)}: {result.rcd_ms} ms at IΔn "
                f"({source_of(sight.record, result)}).",
                (figure("Time at IΔn", result.rcd_ms, "ms"),),
            )
