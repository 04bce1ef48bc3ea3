"""A board as it is usually built, for guesses that a person confirms.

Common practice, no source: an RCD hangs on the main switch, a way on the RCD to its
left, or on the main switch where none stands between.
"""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device

HEADS = ("main_switch", "isolator", "changeover")


def left_feeder(before: Iterable[Device], kind: str) -> str | None:
    """Return what a device of a kind would be fed from, given those to its left.

    None: the board's own feed.
    """
    groups = (*HEADS, "rcd") if kind not in (*HEADS, "rcd") else HEADS
    if kind in HEADS:
        return None
    heads = [device.ref for device in before if device.kind in groups]
    return heads[-1] if heads else None


def main_switches(devices: Iterable[Device]) -> tuple[Device, ...]:
    """Return the main switches, isolating and changeover switches among devices."""
    return tuple(device for device in devices if device.kind in HEADS)


def switch_name(device: Device) -> str:
    """Return what to look for on the board: the kind, and the words found on it."""
    kind = DEVICE_KINDS[device.kind].label
    return f"{kind} marked “{device.label_found}”" if device.label_found else kind
