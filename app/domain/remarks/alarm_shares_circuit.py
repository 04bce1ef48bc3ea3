"""A smoke or heat alarm goes off with something else.

Looks at:
    The circuit and the RCD of each mains alarm, and what else is on them.
Why it matters:
    Sharing a lighting circuit has a good side: a dead circuit is noticed. But switching
    that circuit off takes the mains from the alarm, and on an RCD that sockets share,
    a fault does too.
What to do:
    Know it before you switch off. Press the test button of each alarm afterwards.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.record import Circuit
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, counted, is_mains, refs_of

KIND = RemarkKind(code="alarm-shares-circuit", rank="knowing", group="switching")

ALARMS = ("smoke_alarm", "heat_alarm")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the alarms of each circuit or RCD that they share."""
    alarms = [p for p in sight.record.points if p.kind in ALARMS and is_mains(p)]
    alarm_refs = {point.ref for point in alarms}
    loose = refs_of(p for p in alarms if not feeders_of(sight.net, p.ref))
    if loose:
        yield lacking(loose, "what feeds it")
    for circuit in sight.record.circuits:
        on = sight.points_on(circuit)
        here = refs_of(p for p in on if p.ref in alarm_refs)
        others = refs_of(p for p in on if p.ref not in alarm_refs)
        if here and others:
            yield Found(
                (circuit.ref, *here),
                f"{sight.name(circuit.ref)} feeds {sight.names(here)} and "
                f"{counted(len(others), 'other point')}.",
            )
        elif here:
            yield from _by_rcd(sight, circuit, here)


def _by_rcd(sight: Sight, circuit: Circuit, here: tuple[str, ...]) -> Iterator[Outcome]:
    for step in sight.rcds(circuit.ref):
        others = [c for c in sight.circuits_below(step.ref) if c.use == "sockets"]
        if others:
            yield Found(
                (circuit.ref, step.ref, *here),
                f"{sight.name(step.ref)} is before {sight.names(here)} and before "
                f"{sight.names(refs_of(others))}.",
            )
            return
