"""What can trip in a home, and all that hangs on each."""

from __future__ import annotations

from typing import Literal

from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.labels.printed import printed
from app.domain.network import Network, downstream
from app.domain.record import Board, Device, IntakeItem, Record, Room
from app.domain.record._field import Model, field
from app.domain.record.choices import CARE, POLES
from app.domain.tripped.suspects import (
    Suspect,
    circuits_below,
    suspect_of,
    suspects,
)

Breaks = Literal["both", "line", "unknown"]
Moves = Device | IntakeItem
# A device that nobody has made out may be any of them.
_ANY = ("unknown", "other")


class WayBelow(Model):
    """A way below what has moved, to be switched off by itself."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    board: str = field("Board", "")
    feeds: str = field("What it feeds", "")
    breaks: Breaks = field("Whether it breaks line and neutral", "unknown")
    fuse: bool = field("A fuse, which is not drawn for this", default=False)


class Hanging(Model):
    """A device that can trip, and what hangs on it."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    kind: str = field("What it is", ...)
    printed: str = field("What is printed on it", "")
    board: str = field("Board", "")
    room: str = field("Where it is", "")
    button: bool = field("Has a test button", default=False)
    suspects: tuple[Suspect, ...] = field("What hangs on it, likeliest first", ())
    ways: tuple[WayBelow, ...] = field("Ways below it, the nearest", ())
    borrowed: tuple[Suspect, ...] = field("Only line or only neutral is behind it", ())
    missed: tuple[str, ...] = field("Missed while it is off", ())


def candidates(record: Record, answer: str) -> tuple[Moves, ...]:
    """Return what of a record may have moved, by what it looked like.

    Args:
        record: The record.
        answer: The screen chosen: ``rcd`` (it has a test button), ``breaker``,
            ``fuse`` (a fuse, or nobody can tell).
    """
    if answer == "rcd":
        return tuple(d for d in record.devices if has_button(d) or d.kind in _ANY)
    if answer == "breaker":
        fits = (d for d in record.devices if _trips(d) and not has_button(d))
        return tuple(d for d in fits if not is_fuse(d))
    both: tuple[Moves, ...] = (*record.devices, *record.intake)
    movable = [d for d in both if _trips(d)]
    return tuple(sorted(movable, key=lambda d: not is_fuse(d)))


def can_trip(record: Record) -> tuple[Moves, ...]:
    """Return everything of one's own that trips or blows, in the record's order."""
    both: tuple[Moves, ...] = (*record.intake, *record.devices)
    return tuple(d for d in both if _trips(d) and d.kind not in _ANY)


def has_button(item: Moves) -> bool:
    """Return whether a device has a test button: it opens on leakage, or on arcing."""
    if not isinstance(item, Device):
        return False
    leaks = "earth_leakage" in DEVICE_KINDS[item.kind].protects
    return leaks or item.kind == "afdd" or item.residual_current_ma is not None


def is_fuse(item: Moves) -> bool:
    """Return whether it is a fuse, which blows and is not switched."""
    return item.kind.startswith("fuse_") or item.kind == "switch_fuse"


def hanging(net: Network, item: Moves) -> Hanging:
    """Return what hangs on one thing that can trip."""
    board = net.record.find(Board, getattr(item, "board", None))
    room = net.record.find(Room, board.room if board else getattr(item, "room", None))
    found = suspects(net, item.ref)
    is_device = isinstance(item, Device)
    return Hanging(
        ref=item.ref,
        title=item.title,
        kind=(DEVICE_KINDS if is_device else INTAKE_KINDS)[item.kind].label,
        printed=printed(item) if isinstance(item, Device) else "",
        board=board.name if board else "",
        room=room.name if room else "",
        button=has_button(item),
        suspects=found,
        ways=tuple(_below(net, way) for way in nearest_ways(net, item.ref)),
        borrowed=borrowed(net, item.ref),
        missed=missed(found),
    )


def nearest_ways(net: Network, device: str) -> tuple[Device, ...]:
    """Return the ways below a device that no other way is above."""
    ways = circuits_below(net, device)
    behind = {ref for way in ways for ref in downstream(net, way.ref)}
    return tuple(way for way in ways if way.ref not in behind)


def borrowed(net: Network, device: str) -> tuple[Suspect, ...]:
    """Return points of which only the line, or only the neutral, is behind a device.

    What goes out by it and returns elsewhere looks like leakage to an RCD.
    """
    line, neutral = (downstream(net, device, role) for role in ("line", "neutral"))
    apart = line ^ neutral
    return tuple(suspect_of(net, p) for p in net.record.points if p.ref in apart)


def missed(found: tuple[Suspect, ...]) -> tuple[str, ...]:
    """Return what is missed while these are off, what matters most first."""
    lines = [
        (list(CARE).index(care), f"{CARE[care]}: {where(suspect)}")
        for suspect in found
        for care in suspect.care
    ]
    return tuple(line for _, line in sorted(lines, key=lambda pair: pair[0]))


def where(suspect: Suspect) -> str:
    """Return a point's name with its room, where the name does not say it."""
    room = suspect.room or ""
    said = not room or room.casefold() in suspect.title.casefold()
    return suspect.title if said else f"{suspect.title}, {room}"


def breaks(device: Device) -> Breaks:
    """Return whether a way is recorded as breaking line and neutral."""
    if device.poles == "unknown":
        return "unknown"
    return "both" if "neutral" in device.poles else "line"


def breaks_in_words(way: WayBelow) -> str:
    """Return what a way breaks, as the record says it."""
    words = {"both": POLES["line_and_neutral"], "line": POLES["line"]}
    known = words.get(way.breaks)
    return f"breaks {known.lower()}" if known else "what it breaks is not recorded"


def _trips(item: Moves) -> bool:
    """Whether it opens by itself; what is sealed and not one's own is left alone."""
    if isinstance(item, IntakeItem):
        return item.kind == "switch_fuse"
    opens = bool(DEVICE_KINDS[item.kind].protects) or has_button(item)
    return opens or item.kind in _ANY


def _below(net: Network, way: Device) -> WayBelow:
    board = net.record.find(Board, way.board)
    names = [circuit.title for circuit in net.record.circuits_of(way.ref)]
    return WayBelow(
        ref=way.ref,
        title=way.title,
        board=board.name if board else "",
        feeds=", ".join(names),
        breaks=breaks(way),
        fuse=is_fuse(way),
    )
