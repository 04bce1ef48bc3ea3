"""Circuits come on by themselves at night.

Looks at:
    Circuits that have a supply in off-peak hours only.
Why it matters:
    By day they seem dead with their switches on, and wake when the clock says so, even
    while someone works on them.
What to do:
    Take them as live at any hour. Their own way has to be off and locked, whatever a
    tester says at noon.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="off-peak-wakes-by-itself", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield, for each thing that switches by the hour, what hangs on it."""
    timed: dict[str, list[str]] = {}
    for circuit in sight.record.circuits:
        for step in sight.before(circuit.ref):
            if step.when in ("off_peak", "unknown"):
                timed.setdefault(step.ref, []).append(circuit.ref)
    for ref, circuits in timed.items():
        step = next(s for s in sight.before(circuits[0]) if s.ref == ref)
        if step.when == "unknown":
            yield lacks(ref, "the hours at which it passes the supply on")
        else:
            yield Found(
                (ref, *circuits, *_boards(sight, circuits), *_clocks(sight)),
                f"{sight.name(ref)} feeds in off-peak hours only: "
                f"{sight.names(circuits)}.",
            )


def _boards(sight: Sight, circuits: list[str]) -> tuple[str, ...]:
    found = (sight.record.find(Circuit, ref) for ref in circuits)
    ways = (way for circuit in found if circuit for way in sight.ways(circuit))
    return tuple(dict.fromkeys(way.board for way in ways))


def _clocks(sight: Sight) -> tuple[str, ...]:
    return refs_of(sight.intake_of("time_switch"))
