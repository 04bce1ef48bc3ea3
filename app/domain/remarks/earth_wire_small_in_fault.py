"""A protective conductor is small for the fault current.

Looks at:
    The size of each protective conductor against what the fault current of its device
    would need. What leans on a Ze that nobody measured is not told.
Why it matters:
    It can melt before the device opens, and then nothing is earthed.
What to do:
    Ask an electrician; the data of the device's maker may show that it is enough.
Source:
    BS 7671:2018+A2:2022, 543.1.3, the adiabatic equation, tables 54.2 to 54.6.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._figures import by_part
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="earth-wire-small-in-fault", rank="electrician", group="circuits"
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit whose protective conductor may be too small."""
    for circuit in sight.record.circuits:
        if circuit.has_cpc != "no":
            yield from by_part(sight, circuit, "adiabatic", sure=True)
