"""Much is drawn at once in off-peak hours.

Looks at:
    What hangs on circuits that have a supply in off-peak hours only, all of it taken as
    on together.
Why it matters:
    All of it begins at the same minute, on top of whatever else is on.
What to do:
    Run no shower, cooker or charger when it begins, or ask about what comes on when.
Source:
    IET On-Site Guide, table A2: storage heating and heated tanks, no allowance.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.circuits import Subject
from app.domain.record import Circuit
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
)
from app.domain.remarks._sight import VOLTS, Sight, refs_of

KIND = RemarkKind(code="night-load", rank="knowing", group="network")

THIRD, THREE_PHASES = 3, 3


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each main fuse of which the night takes a third or more."""
    circuits = {c.ref: c for c in sight.record.circuits if _at_night(sight, c)}
    if not circuits:
        return
    watts = [circuit.connected_w for circuit in circuits.values()]
    current = sum((_amps(sight, c) for c in circuits.values()), Decimal(0))
    for cutout in sight.intake_of("cutout"):
        rated = cutout.rated_current_a
        if not rated or not all(watts):
            lacking_it = refs_of(c for c in circuits.values() if not c.connected_w)
            needs = [Need(ref=ref, what="the connected load") for ref in lacking_it]
            needs += [] if rated else [Need(ref=cutout.ref, what="the rating")]
            yield CannotTell((cutout.ref, *lacking_it), tuple(needs))
        elif current * THIRD >= rated:
            yield Found(
                (cutout.ref, *circuits),
                f"{sight.names(circuits)} draw about {round(current)} A together.",
                (
                    figure("Drawn at night", current, "A", calculated=True),
                    figure("Main fuse", rated, "A"),
                ),
            )


def _amps(sight: Sight, circuit: Circuit) -> Decimal:
    """Return what a circuit draws, of a three-phase one in each phase."""
    phases = THREE_PHASES if Subject(sight.net, circuit).three_phase else 1
    return (circuit.connected_w or Decimal(0)) / (phases * VOLTS)


def _at_night(sight: Sight, circuit: Circuit) -> bool:
    return any(step.when == "off_peak" for step in sight.before(circuit.ref))
