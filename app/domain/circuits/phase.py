"""On which phase a circuit is, or on all three."""

from __future__ import annotations

from app.domain.circuits.guard import Guard
from app.domain.phases import phases
from app.domain.record import Circuit, Device, Record

THREE = ("l1", "l2", "l3")
ONE_LINE = ("line", "line_and_neutral")
SINGLE = "It is taken as single-phase: the phase of its way is not recorded."
NO_ONE = "It is taken as single-phase: its ways are recorded on different phases."
NO_TABLE = "it is three-phase, and no table here is for that"


def phase_of(record: Record, circuit: Circuit, guard: Guard | None) -> str:
    """Return the phase of a circuit: ``l1`` to ``l3``, ``all``, or ``unknown``.

    Three ways of one phase each make three, several of the same phase make that; else
    its way says it, or what guards it, by its phase or by breaking three lines.  A way
    that breaks one line is not on three.
    """
    ways = [record.find(Device, ref) for ref in circuit.ways]
    if sorted(way.phase for way in ways if way) == list(THREE):
        return "all"
    if len(ways) != 1:
        return _of_several(record, circuit)
    way = ways[0]
    found = own_phase(way)
    if found != "unknown" or way is None:
        return found
    before = own_phase(_beside(way, guard))
    return "unknown" if before == "all" and way.poles in ONE_LINE else before


def on_different(record: Record, circuit: Circuit) -> bool:
    """Return whether a circuit has ways of different phases, and not of all three."""
    found = phases(record, circuit.ways)
    return "unknown" not in found and 1 < len({*found}) < len(THREE)


def _of_several(record: Record, circuit: Circuit) -> str:
    found = {*phases(record, circuit.ways)}
    return found.pop() if len(found) == 1 else "unknown"


def own_phase(device: Device | None) -> str:
    """Return the phase of a device, or all of them where it breaks three lines."""
    if device is None:
        return "unknown"
    of_three = device.phase == "unknown" and device.poles.startswith("three_line")
    return "all" if of_three else device.phase


def _beside(way: Device | None, guard: Guard | None) -> Device | None:
    """Return what guards a circuit, if it stands on the board of its way."""
    item = guard.item if guard else None
    same = way is not None and isinstance(item, Device) and item.board == way.board
    return item if same and isinstance(item, Device) else None
