"""An RCD was measured slower than it should be.

Looks at:
    The newest time at IΔn that was copied for each circuit or RCD, and whether the RCD
    that was measured, there or before it, is time-delayed.
Why it matters:
    An RCD that is slow may not trip in time to save a life.
What to do:
    Ask whoever signed the paper, and have it measured again.
Source:
    BS EN 61008-1 and 61009-1: at IΔn 300 ms for a general RCD, 500 ms for a
    time-delayed one, type S; none of 30 mA or less is time-delayed (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.rcd_times import DELAYED_MS, GENERAL_MS
from app.domain.record import Circuit, Device, Result
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
)
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.over_time import latest
from app.domain.results.rcd_times import longest_at

KIND = RemarkKind(code="rcd-slow", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each thing whose RCD took too long."""
    things: tuple[Circuit | Device, ...] = (
        *sight.record.circuits,
        *sight.record.devices,
    )
    for thing in things:
        result = latest(sight.record, thing.ref, "rcd_ms")
        if result and result.rcd_ms and result.rcd_ms > GENERAL_MS:
            yield from _slow(sight, thing, result)


def _slow(sight: Sight, thing: Circuit | Device, result: Result) -> Iterator[Outcome]:
    """Yield what is to be said of a time that is long for a general RCD."""
    longest, ms = longest_at(sight.net, thing.ref), result.rcd_ms or 0
    if longest is None and ms <= DELAYED_MS:
        yield _open(sight, thing)
    elif ms > (longest or DELAYED_MS):
        yield Found(
            (thing.ref,),
            f"{sight.name(thing.ref)}: {ms} ms at IΔn, of {longest or DELAYED_MS} ms "
            f"at most ({source_of(sight.record, result)}).",
            (figure("Time at IΔn", ms, "ms"),),
        )


def _open(sight: Sight, thing: Circuit | Device) -> CannotTell:
    """Return what is missing before a time can be judged."""
    steps = [step.ref for step in sight.rcds(thing.ref)]
    what = "whether it is time-delayed, type S" if steps else "which RCD is before it"
    refs = dict.fromkeys(steps or [thing.ref])
    return CannotTell((thing.ref,), tuple(Need(ref=ref, what=what) for ref in refs))
