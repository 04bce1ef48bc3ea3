"""A test button did not trip its RCD.

Looks at:
    The last time that a test button was pressed, and what papers say of it, for each
    circuit or RCD.
Why it matters:
    An RCD that does not trip by its own button may guard nobody.
What to do:
    Let an electrician test it before you rely on it.
Source:
    Manufacturers' instructions for RCDs, and BS 7671:2018+A2:2022, 514.12.2 (from
    memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from app.domain.buttons import last_failed, last_pressed
from app.domain.days import in_words
from app.domain.record import Circuit, Device
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.over_time import results_of

KIND = RemarkKind(
    code="button-failed",
    rank="electrician",
    group="rcd",
    always_tells="where no button is written down as failed there is nothing to tell",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each thing whose button failed the last time, by what is written down."""
    record = sight.record
    pressed = {o.about for o in record.occasions if o.kind == "rcd_button"}
    for about in sorted(pressed, key=lambda ref: ref or ""):
        failed_on = last_failed(record, about)
        if failed_on is not None:
            ref = about or sight.home
            yield Found(
                (ref,),
                f"On {in_words(failed_on)} a test button did not trip its RCD: "
                f"{sight.name(ref)}.",
            )
    things: tuple[Circuit | Device, ...] = (*record.circuits, *record.devices)
    for thing in things:
        if last_failed(record, thing.ref) is None and (said := _copied(sight, thing)):
            yield Found((thing.ref,), f"{sight.name(thing.ref)}: {said}")


def _copied(sight: Sight, thing: Circuit | Device) -> str:
    """Say that a paper says that its button failed, where nothing later says otherwise.

    A failure without a day stands: nobody knows what came after it.
    """
    record = sight.record
    told = [r for r in results_of(record, thing.ref) if r.rcd_button != "unknown"]
    worked = [r.tested_on for r in told if r.rcd_button == "worked"]
    seen = max(filter(None, (*worked, _seen_to_work(sight, thing))), default=None)
    for result in told:
        later = seen and result.tested_on and seen > result.tested_on
        if result.rcd_button == "failed" and not later:
            source = source_of(record, result)
            return f"the paper says that its button did not work ({source})."
    return ""


def _seen_to_work(sight: Sight, thing: Circuit | Device) -> date | None:
    """Return since when every button that it may have been is known to have worked."""
    if isinstance(thing, Device):
        return last_pressed(sight.record, thing)
    rcds = [sight.record.find(Device, step.ref) for step in sight.rcds(thing.ref)]
    days = [last_pressed(sight.record, rcd) for rcd in rcds if rcd]
    known = [day for day in days if day]
    return min(known) if known and len(known) == len(days) else None
