"""What to tell an electrician: from the answers given, and from the record."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from app.domain.network import Network
from app.domain.record import Device, IntakeItem, Item, Point
from app.domain.record.choices import EARTHINGS
from app.domain.tripped.hanging import (
    Hanging,
    Moves,
    WayBelow,
    breaks_in_words,
    hanging,
    where,
)
from app.domain.tripped.screens import Screen
from app.domain.tripped.suspects import suspect_of

# What the record cannot know, and whoever comes asks first.
TO_ADD = (
    "When it was, and what was running or had just been switched on.",
    "Rain, frost, or work on the house that day.",
    "What is left unplugged and what is left off.",
)
ALL_BREAK_BOTH = (
    "By the record every way here breaks line and neutral, so the fault may lie before "
    "them, or in the device itself."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """What of the record was named on a walk; empty where nobody knew.

    Attributes:
        device: What moved.
        way: The way that trips it, found by switching on one at a time.
        point: What trips it, found by plugging in one at a time.
    """

    device: str = ""
    way: str = ""
    point: str = ""


def story(net: Network, walked: tuple[Screen, ...], chosen: Chosen) -> tuple[str, ...]:
    """Return what to tell, a sentence each: the home, what moved, what was tried."""
    item = moved(net, chosen.device)
    hangs = hanging(net, item) if item else None
    return (
        f"{net.record.home.name}. {_earthing(net)}",
        *((_device(hangs),) if hangs else ()),
        *tried(walked),
        *_found(net, chosen),
        *(_borrowed(hangs) if hangs and hangs.button else ()),
        *(_neutrals(hangs) if hangs and walked_to(walked, "neutral") else ()),
    )


def tried(walked: tuple[Screen, ...]) -> tuple[str, ...]:
    """Return each question of a walk with the answer that was given."""
    return tuple(
        f"{(before.called or before.title).rstrip('?')}: "
        f"{before.choices[screen.code].lower()}."
        for before, screen in pairwise(walked)
        if screen.code != "tell"
    )


def walked_to(walked: tuple[Screen, ...], code: str) -> bool:
    """Return whether a walk has come by a screen."""
    return any(screen.code == code for screen in walked)


def moved(net: Network, ref: str) -> Moves | None:
    """Return what a reference names, if it is something that can move."""
    item = net.record.by_ref.get(ref)
    return item if isinstance(item, Device | IntakeItem) else None


def neutral_lines(ways: tuple[WayBelow, ...]) -> tuple[str, ...]:
    """Return what the record says of the ways, when it trips with all of them off."""
    one = [way for way in ways if way.breaks == "line"]
    open_ones = [way for way in ways if way.breaks == "unknown"]
    if ways and not one and not open_ones:
        return (ALL_BREAK_BOTH,)
    return tuple(f"{named(way)}: {breaks_in_words(way)}." for way in ways)


def named(way: WayBelow) -> str:
    """Return a way with what it feeds."""
    fed = f", {way.feeds}" if way.feeds else ""
    return f"{way.title}{fed}"


def _device(hangs: Hanging) -> str:
    on = ", ".join(filter(None, (hangs.board, hangs.room)))
    about = ", ".join(filter(None, (hangs.kind, hangs.printed, on)))
    points, ways = len(hangs.suspects), len(hangs.ways)
    counts = f"{points} {'point' if points == 1 else 'points'}"
    if ways:
        counts += f" on {ways} {'way' if ways == 1 else 'ways'}"
    return (
        f"It moved: {hangs.title} ({hangs.ref}; {about}). By the record {counts} "
        f"{'hangs' if points == 1 and not ways else 'hang'} on it."
    )


def _earthing(net: Network) -> str:
    earthing = net.record.home.earthing
    if earthing == "unknown":
        return "Its earthing is not recorded."
    return f"Earthing by the record: {EARTHINGS[earthing]}."


def _found(net: Network, chosen: Chosen) -> tuple[str, ...]:
    way = net.record.find(Device, chosen.way)
    point = net.record.find(Point, chosen.point)
    return (
        *((f"The way that trips it: {_called(way)}.",) if way else ()),
        *((f"What trips it: {where(suspect_of(net, point))}.",) if point else ()),
    )


def _borrowed(hangs: Hanging) -> tuple[str, ...]:
    if not hangs.borrowed:
        return ()
    names = "; ".join(where(suspect) for suspect in hangs.borrowed)
    return (
        f"By the record the neutral of these goes another way than the line: {names}.",
    )


def _neutrals(hangs: Hanging) -> tuple[str, ...]:
    lines = neutral_lines(hangs.ways)
    return (f"With every way off it still trips. {' '.join(lines)}",) if lines else ()


def _called(item: Item) -> str:
    return f"{item.title} ({item.ref})"
