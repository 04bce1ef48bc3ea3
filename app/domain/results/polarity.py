"""What a paper says of the polarity of a circuit, or of the supply itself."""

from __future__ import annotations

from app.domain.record import Record, Result
from app.domain.results.over_time import results_of


def polarity_wrong(record: Record, ref: str | None) -> Result | None:
    """Return what says that line and neutral are swapped at a thing.

    A later result that says the contrary clears it; one without a day stands, for
    nobody knows what came after it.

    Args:
        record: The home.
        ref: What was tested; None: the supply of the home.
    """
    told = [r for r in results_of(record, ref) if r.polarity != "unknown"]
    right = [r.tested_on for r in told if r.polarity == "correct" and r.tested_on]
    for result in told:
        later = result.tested_on and any(day > result.tested_on for day in right)
        if result.polarity == "wrong" and not later:
            return result
    return None
