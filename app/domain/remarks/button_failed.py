"""A test button did not trip its RCD.

Looks at:
    The last time that the button of each RCD was pressed, and what the newest paper
    says of it, for each circuit or RCD.
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

from app.domain.buttons import last_pressed, rcds_of
from app.domain.days import in_words
from app.domain.record import Circuit, Device, Record
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
    """Yield each RCD, or circuit behind one, whose button failed the last time."""
    record = sight.record
    for rcd in rcds_of(record):
        failed_on = _failed_on(record, rcd)
        if failed_on is not None:
            yield Found(
                (rcd.ref,),
                f"On {in_words(failed_on)} the button of {sight.name(rcd.ref)} "
                "did not trip it.",
            )
        elif said := _copied(record, rcd):
            yield Found((rcd.ref,), f"{sight.name(rcd.ref)}: {said}")
    for circuit in record.circuits:
        if said := _copied(record, circuit):
            yield Found((circuit.ref,), f"{sight.name(circuit.ref)}: {said}")


def _failed_on(record: Record, rcd: Device) -> date | None:
    """Return the day of a failure after which it was not seen to work."""
    days = [
        occasion.done_on
        for occasion in record.occasions
        if (occasion.kind, occasion.about) == ("rcd_button", rcd.ref)
        and occasion.outcome == "failed"
    ]
    failed_on = max(filter(None, days), default=None)
    worked_on = last_pressed(record, rcd)
    if failed_on is None or (worked_on is not None and worked_on > failed_on):
        return None
    return failed_on


def _copied(record: Record, thing: Circuit | Device) -> str:
    """Say that the newest paper that names its button says that it failed."""
    told = (r for r in results_of(record, thing.ref) if r.rcd_button != "unknown")
    newest = next(told, None)
    if newest is None or newest.rcd_button != "failed":
        return ""
    return f"the paper says that its button did not work ({source_of(record, newest)})."
