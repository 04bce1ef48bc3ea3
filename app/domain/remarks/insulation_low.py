"""A paper has a low insulation resistance.

Looks at:
    The newest insulation resistance that was copied for each circuit.
Why it matters:
    Low insulation can let current leak where it warms or shocks, and it may go on
    falling.
What to do:
    Ask whoever signed the paper what was done about it, or have it measured again.
Source:
    BS 7671:2018+A2:2022, Table 64: 1 MΩ at 500 V (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import Result
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.over_time import results_of

KIND = RemarkKind(code="insulation-low", rank="electrician", group="circuits")

LEAST_MOHM = Decimal(1)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit whose newest reading is low."""
    missing = []
    for circuit in sight.record.circuits:
        own = [
            r for r in results_of(sight.record, circuit.ref) if _lowest(r) is not None
        ]
        if not own:
            missing.append(circuit.ref)
            continue
        lowest, under = _lowest(own[0]) or (None, False)
        if lowest is None:
            continue
        if vague := _vague(own[0]):
            # Less than 2 MΩ may be 1.9 or 0.1.
            words = f"its insulation resistance more exactly than less than {vague} MΩ"
            yield lacking((circuit.ref,), words)
        elif lowest < LEAST_MOHM or (under and lowest == LEAST_MOHM):
            said = "less than " if under else ""
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)}: measured {said}{lowest} MΩ "
                f"({source_of(sight.record, own[0])}).",
                (figure("Insulation resistance", lowest, "MΩ"),),
            )
    if missing:
        yield lacking(tuple(missing), "its insulation resistance, from a paper")


def _vague(result: Result) -> Decimal | None:
    """Return a value that the insulation is *less than*, and that may be enough."""
    lowest, under = _lowest(result) or (None, False)
    if lowest is not None and (lowest < LEAST_MOHM or (under and lowest == LEAST_MOHM)):
        return None
    both = (
        (result.live_live_mohm, result.live_live_over),
        (result.live_earth_mohm, result.live_earth_over),
    )
    return min(
        (value for value, sign in both if value and sign == "under"), default=None
    )


def _lowest(result: Result) -> tuple[Decimal, bool] | None:
    """Return the lower of the two readings, and whether it is *less than* that.

    One that is *more than* something says how low it is only where the other is open.
    """
    found = [
        (value, over == "under")
        for value, over in (
            (result.live_live_mohm, result.live_live_over),
            (result.live_earth_mohm, result.live_earth_over),
        )
        if value is not None and over != "over"
    ]
    both = (result.live_live_mohm, result.live_earth_mohm)
    over = [(value, False) for value in both if value is not None]
    return min(found or over, key=lambda each: (each[0], not each[1]), default=None)
