"""A survey by switching off: the ways, the points, and what was seen in each round."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

Seen = Literal["dead", "live"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """Something that can be switched off and feeds points.

    Attributes:
        ref: Its reference.
        parent: The way that it hangs off, for one on a board fed from another way.
        poles: How many conductors it breaks: 1, 2, or None where that is not known.
        leave_on: Why it is never to be switched off to find out; empty if it may be.
    """

    ref: str
    parent: str | None = None
    poles: int | None = None
    leave_on: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A device that takes several ways with it, such as an RCD or a main switch."""

    ref: str
    ways: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One round: what was off, and what was seen.

    A point that was not looked at stands nowhere in it.

    Attributes:
        ref: Reference of the round.
        off: The ways that were switched off; none in a baseline.
        night: Whether it was in the hours of a timed supply.
        seen: What each point did.
        disputed: Points of which two people saw different things; they count as not
            looked at.
    """

    ref: str
    off: frozenset[str]
    seen: Mapping[str, Seen]
    night: bool = False
    disputed: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Survey:
    """Ways in the order of the boards, points in that of the walk, rounds as made.

    Points of ``own_battery`` have one, so that of them only going off tells anything;
    those of ``perhaps_battery`` often have one, and nobody said.
    """

    ways: tuple[Way, ...]
    points: tuple[str, ...]
    looks: tuple[Look, ...] = ()
    groups: tuple[Group, ...] = ()
    own_battery: frozenset[str] = frozenset()
    perhaps_battery: frozenset[str] = frozenset()

    @cached_property
    def by_ref(self) -> dict[str, Way]:
        """The ways by their references."""
        return {way.ref: way for way in self.ways}

    @cached_property
    def above(self) -> dict[str, frozenset[str]]:
        """For each way, itself and every way that it hangs off."""
        return {way.ref: self._above(way) for way in self.ways}

    @cached_property
    def switchable(self) -> tuple[str, ...]:
        """The ways that may be switched off: none that takes a way left on with it."""
        kept = {above for w in self.ways if w.leave_on for above in self.above[w.ref]}
        return tuple(way.ref for way in self.ways if way.ref not in kept)

    @cached_property
    def patterns(self) -> dict[str, int]:
        """For each way the rounds in which it was without supply, a bit a round."""
        return {
            ref: sum(1 << n for n, look in enumerate(self.looks) if above & look.off)
            for ref, above in self.above.items()
        }

    def dead(self, off: frozenset[str]) -> frozenset[str]:
        """Return all ways without supply when some are switched off."""
        return frozenset(ref for ref, above in self.above.items() if above & off)

    def _above(self, way: Way) -> frozenset[str]:
        found: list[str] = []
        here: Way | None = way
        while here is not None and here.ref not in found:
            found.append(here.ref)
            here = self.by_ref.get(here.parent or "")
        return frozenset(found)
