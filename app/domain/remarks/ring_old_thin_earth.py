"""A ring final circuit has the thin protective conductor of old cable.

Looks at:
    Rings in cable with a protective conductor of 1 mm².
Why it matters:
    Such cable was sold until about 1982. Its protective conductor heats more in a
    fault, and its resistance is higher.
What to do:
    Ask for the ring's end-to-end readings and its loop impedance at the next
    inspection.
Source:
    IET On-Site Guide, table I1, lists 2.5/1.0 mm² as old cable; the year from memory.
Not retrospective:
    It may stay where the readings are in range.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="ring-old-thin-earth", rank="knowing", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each ring with 2.5 mm² beside 1 mm²."""
    for circuit in sight.record.circuits:
        if circuit.arrangement != "ring" or circuit.has_cpc == "no":
            continue
        if circuit.cpc_mm2 is None:
            yield lacks(circuit.ref, "the size of the protective conductor")
        elif 0 < circuit.cpc_mm2 <= 1:
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)}: protective conductor of "
                f"{circuit.cpc_mm2} mm².",
                (figure("Protective conductor", circuit.cpc_mm2, "mm²"),),
            )
