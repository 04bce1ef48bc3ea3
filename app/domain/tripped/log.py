"""What has tripped before: an entry made from a walk, and the entries of a device."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.record import Circuit, Device, Point, Record, Trip
from app.domain.tripped.screens import Screen
from app.domain.tripped.story import Chosen

_MOVED = {
    "rcd": "rcd",
    "breaker": "breaker",
    "fuse": "breaker",
    "neutral-main": "main_switch",
    "nothing": "nothing",
}
_OUTCOMES = {
    "found": "found",
    "holds": "stays_on",
    "leave": "left_off",
    "neutral": "left_off",
    "fault": "left_off",
    "fuse": "left_off",
    "neutral-main": "left_off",
}


def entry(
    record: Record, walked: tuple[Screen, ...], chosen: Chosen, ref: str, at: str
) -> Trip:
    """Return a walk as an entry of the log.

    Args:
        record: The record; what was named and is not in it is left open.
        walked: The screens walked through.
        chosen: What of the record was named.
        ref: A reference that is free.
        at: When it was, as 2026-03-01T14:05:00Z.
    """
    codes = [screen.code for screen in walked]
    return Trip(
        ref=ref,
        happened_at=at,
        moved=_first(_MOVED, codes),
        device=chosen.device if chosen.device in record.by_ref else None,
        found=_found(record, chosen),
        outcome=_first(_OUTCOMES, codes[::-1]),
        trail=" ".join(codes[1:]),
    )


def earlier(record: Record, device: str | None) -> tuple[Trip, ...]:
    """Return the entries of a device, the newest first; those of no day come last."""
    trips = [trip for trip in record.trips if trip.device == device]
    return tuple(sorted(trips, key=lambda trip: trip.happened_at or "", reverse=True))


def how_often(trips: Iterable[Trip], first_day: str) -> str:
    """Say how often a device has tripped.

    Args:
        trips: Its entries.
        first_day: The day of the earliest, in words; empty where none is recorded.
    """
    count = len(tuple(trips))
    times = {1: "once", 2: "twice"}.get(count, f"{count} times")
    since = "on" if count == 1 else "since"
    return f"{times}, {since} {first_day}" if first_day else times


def _first(words: dict[str, str], codes: list[str]) -> str:
    return next((words[code] for code in codes if code in words), "unknown")


def _found(record: Record, chosen: Chosen) -> tuple[str, ...]:
    if record.find(Point, chosen.point):
        return (chosen.point,)
    if record.find(Device, chosen.way):
        circuits: tuple[Circuit, ...] = record.circuits_of(chosen.way)
        return tuple(circuit.ref for circuit in circuits)
    return ()
