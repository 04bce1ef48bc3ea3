"""Circuits on more than one way: phases of one supply, or something not right."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.record import Circuit, Device, Record

# What follows where they are no phases.  BS 7671:2018+A2:2022, 314.4 and 433.1, from
# memory.
TWO_GUARD_ONE = (
    "two ways feed one cable, and neither guards it against overload. An electrician "
    "should look."
)


def phases(record: Record, ways: Iterable[str]) -> list[str]:
    """Return the phase of each way, or unknown: of what is no device as well."""
    devices = (record.find(Device, ref) for ref in ways)
    return [
        device.phase if device and device.phase in ("l1", "l2", "l3") else "unknown"
        for device in devices
    ]


def each_its_own(record: Record, ways: Iterable[str]) -> bool:
    """Return whether each way is known to be on a phase that no other is on."""
    found = phases(record, ways)
    return "unknown" not in found and len({*found}) == len(found)


def may_be_phased(circuit: Circuit | None) -> bool:
    """Return whether a circuit can have ways on a phase each.

    A ring joins its two ends: on two phases it joins these.  From memory.
    """
    return circuit is not None and circuit.arrangement != "ring"
