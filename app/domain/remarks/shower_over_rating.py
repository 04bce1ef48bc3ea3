"""A shower draws more than its way is rated for.

Looks at:
    The load of each shower circuit, and the rating of its way. Plates often give the
    kilowatts at 240 V: a shower that is over at 230 V only is not judged.
Why it matters:
    Showers are swapped for larger ones, and the cable and the way stay. Both then run
    hot.
What to do:
    Use the shower's lower setting and ask an electrician, who looks at the cable too.
Source:
    BS 7671:2018+A2:2022, 433.1.1 (from memory). A heater of P at 240 V takes P / 240 V
    there, and less at 230 V.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.circuits import Working
from app.domain.record import Circuit
from app.domain.remarks._demand import over_rating
from app.domain.remarks._kind import Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="shower-over-rating", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each shower above its way."""
    for circuit in sight.record.circuits:
        if circuit.use == "shower":
            yield from _of(sight, circuit)


def _of(sight: Sight, circuit: Circuit) -> Iterator[Outcome]:
    part = sight.figures(circuit).part("load")
    guard = sight.guard(circuit)
    rated = [each.value for _, each in guard.limits()] if guard else []
    if part and part.sign == "beyond" and isinstance(part.found, Working) and rated:
        at_240 = part.found.value * 230 / 240
        if at_240 <= min(rated):
            yield lacks(circuit.ref, "whether its plate gives the kW at 230 V or 240 V")
            return
    yield from over_rating(sight, circuit)
