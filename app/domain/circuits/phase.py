"""On which phase a circuit is, or on all three."""

from __future__ import annotations

from app.domain.circuits.guard import Guard
from app.domain.record import Circuit, Device, Record

THREE = ("l1", "l2", "l3")
SINGLE = "It is taken as single-phase: the phase of its way is not recorded."
NO_TABLE = "it is three-phase, and no table here is for that"


def phase_of(record: Record, circuit: Circuit, guard: Guard | None) -> str:
    """Return the phase of a circuit: ``l1`` to ``l3``, ``all``, or ``unknown``.

    Three ways of one phase each make three; else its way says it, or what guards it, by
    its phase or by breaking three lines.
    """
    ways = [record.find(Device, ref) for ref in circuit.ways]
    if sorted(way.phase for way in ways if way) == list(THREE):
        return "all"
    if len(ways) != 1:
        return "unknown"
    for device in (ways[0], _beside(ways[0], guard)):
        if device is not None and device.phase != "unknown":
            return device.phase
        if device is not None and device.poles.startswith("three_line"):
            return "all"
    return "unknown"


def _beside(way: Device | None, guard: Guard | None) -> Device | None:
    """Return what guards a circuit, if it stands on the board of its way."""
    item = guard.item if guard else None
    same = way is not None and isinstance(item, Device) and item.board == way.board
    return item if same and isinstance(item, Device) else None
