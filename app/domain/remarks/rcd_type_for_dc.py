"""An RCD is not of a type for what it feeds.

Looks at:
    RCDs before vehicle chargers, heat pumps, and the inverters of solar panels or
    batteries.
Why it matters:
    These can send a d.c. current that blinds an RCD of type AC, so that it guards
    nothing, for other circuits too.
What to do:
    Ask an electrician. The maker's instructions say which type is needed; a charger may
    have its own d.c. detection.
Source:
    BS 7671:2018+A2:2022, 531.3.3 (one source seen); 722.531.3.101 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.chain import Step
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="rcd-type-for-dc", rank="electrician", group="rcd")

USES = ("vehicle", "heat_pump", "generation", "battery")
KINDS = ("vehicle_charger", "heat_pump", "inverter")
ENOUGH = ("F", "B")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit with such a load behind an RCD of type AC."""
    for circuit in sight.record.circuits:
        on = sight.points_on(circuit)
        if circuit.use not in USES and not any(p.kind in KINDS for p in on):
            continue
        for step in sight.rcds(circuit.ref)[:1]:
            if step.rcd_type == "AC":
                yield Found(
                    (circuit.ref, step.ref),
                    f"{sight.name(circuit.ref)} hangs on {sight.name(step.ref)}, "
                    "which is of type AC.",
                )
            elif step.rcd_type not in ENOUGH:
                yield CannotTell((circuit.ref, step.ref), (_need(step),))


def _need(step: Step) -> Need:
    if step.rcd_type == "A":
        return Need(ref=step.ref, what="which type the maker of what it feeds asks for")
    return Need(ref=step.ref, what="the type")
