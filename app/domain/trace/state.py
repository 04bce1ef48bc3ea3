"""What the readings say of a point: found, several fit, more than one way, and so on.

Only readings count, never labels.  Simple explanations come first: the point hangs on
one way, or on none of these.  If exactly one fits it is found; if none fits, two ways
are tried: the point goes dead with either (line from one, neutral from the other), or
only with both (fed twice).  A point is confirmed when it is found and no two ways would
explain the readings as well.

Of a point with a battery of its own only going off counts: it stays on without supply.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache, cached_property
from itertools import combinations
from typing import Literal

from app.domain.trace.survey import Survey

Status = Literal[
    "found",
    "unaffected",
    "several_fit",
    "more_than_one_way",
    "contradiction",
    "not_testable",
]
STATUSES: dict[Status, str] = {
    "found": "Found",
    "unaffected": "On none of these ways",
    "several_fit": "Several fit",
    "more_than_one_way": "On more than one way",
    "contradiction": "The readings contradict each other",
    "not_testable": "Switching off cannot show it",
}
# Stands among the candidates for "on none of these ways".
NONE = ""
Pair = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Misread:
    """A round that, if this point was misread in it, would leave one way."""

    look: str
    way: str


@dataclass(frozen=True, slots=True)
class Explanation:
    """How a point may be fed: on no way, on one, on either or on both of two."""

    ways: tuple[str, ...]
    needs_both: bool = False

    def dead(self, off: frozenset[str]) -> bool:
        """Return whether the point would be dead with these ways without supply."""
        without = [way in off for way in self.ways]
        return bool(without) and (all if self.needs_both else any)(without)


@dataclass(frozen=True, slots=True, kw_only=True)
class PointState:
    """What is known of a point, and the readings that say so.

    Attributes:
        point: Its reference.
        status: Which of :data:`STATUSES`.
        way: The way found; None for any other status.
        confirmed: Whether no two ways would explain the readings as well.
        as_sure_as_can_be: Whether the pairs that are left are each a way and one that
            it hangs off, which look the same however often they are switched; or it
            has a battery of its own, so that nothing parts them.
        candidates: The ways that fit, `NONE` among them, when several do.
        steady: Whether the answer would stand if any one reading were wrong.
        either: Pairs with either of which the point would go dead.
        both: Pairs only with both of which it would.
        misread: Single readings that, if wrong, would leave one way.
        dead_in: Rounds in which it went dead, of those that count.
        live_in: Rounds in which it stayed live, of those that count.
        own_battery: Whether only its going off counts: it has a battery of its own.
        perhaps_battery: Whether it often has one, and nobody said: what stayed on may
            have done so by it.
        kept_on_in: Rounds in which it stayed on, which its battery can do.
        was_live: Whether it was seen on at each time of day at which it was seen dead;
            else it may have been dead all along.
        ignored: Rounds that tell nothing: it was dead with everything on.
        disputed: Rounds in which two people saw different things.
    """

    point: str
    status: Status
    way: str | None = None
    confirmed: bool = False
    as_sure_as_can_be: bool = False
    steady: bool = False
    candidates: tuple[str, ...] = ()
    either: tuple[Pair, ...] = ()
    both: tuple[Pair, ...] = ()
    misread: tuple[Misread, ...] = ()
    dead_in: tuple[str, ...] = ()
    live_in: tuple[str, ...] = ()
    own_battery: bool = False
    perhaps_battery: bool = False
    kept_on_in: tuple[str, ...] = ()
    was_live: bool = True
    ignored: tuple[str, ...] = ()
    disputed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Readings:
    """The readings of a point that count, a bit a round."""

    looked: int
    dead: int
    ignored: int
    kept_on: int


def states(survey: Survey) -> dict[str, PointState]:
    """Return what is known of each point, in the order of the walk."""
    explain = _Explaining(survey)
    return {point: _state(survey, explain, point) for point in survey.points}


def candidates(survey: Survey) -> dict[str, frozenset[str]]:
    """Return the simple explanations that still fit each point, `NONE` among them."""
    explain = _Explaining(survey)
    return {
        point: frozenset(explain.simple(readings.looked, readings.dead))
        for point in survey.points
        for readings in [_readings(survey, point)]
    }


def rivals(
    survey: Survey, known: Mapping[str, PointState]
) -> dict[str, tuple[Explanation, ...]]:
    """Return what else would fit each point found, were one reading at most wrong."""
    explain = _Explaining(survey)
    found = {}
    for point, state in known.items():
        if state.status in ("found", "unaffected") and not state.own_battery:
            readings = _readings(survey, point)
            own = Explanation((state.way,) if state.way else ())
            near = explain.near(readings.looked, readings.dead)
            found[point] = tuple(each for each in near if each != own)
    return found


class _Explaining:
    """Which explanations fit a pattern of readings; each pattern is worked out once."""

    def __init__(self, survey: Survey) -> None:
        self.patterns = survey.patterns
        self.above = survey.above
        self.simple = cache(self._simple)
        self.either = cache(self._either)
        self.both = cache(self._both)
        self.near = cache(self._near)

    def _simple(self, looked: int, dead: int) -> tuple[str, ...]:
        none = (NONE,) if not dead else ()
        fitting = (w for w, off in self.patterns.items() if off & looked == dead)
        return (*none, *fitting)

    def _either(self, looked: int, dead: int) -> tuple[Pair, ...]:
        inside = [w for w, off in self.patterns.items() if not off & looked & ~dead]
        return tuple(
            (a, b)
            for a, b in combinations(inside, 2)
            if (self.patterns[a] | self.patterns[b]) & looked == dead
        )

    def _both(self, looked: int, dead: int) -> tuple[Pair, ...]:
        over = [w for w, off in self.patterns.items() if off & looked & dead == dead]
        return tuple(
            (a, b)
            for a, b in combinations(over, 2)
            if self.patterns[a] & self.patterns[b] & looked == dead
        )

    @cached_property
    def _every(self) -> tuple[tuple[Explanation, int], ...]:
        """Every explanation, with the rounds in which the point would be dead."""
        off = self.patterns
        pairs = [pair for pair in combinations(off, 2) if not self.hangs_off(pair)]
        return (
            (Explanation(()), 0),
            *((Explanation((way,)), bits) for way, bits in off.items()),
            *((Explanation((a, b)), off[a] | off[b]) for a, b in pairs),
            *(
                (Explanation((a, b), needs_both=True), off[a] & off[b])
                for a, b in pairs
            ),
        )

    def _near(self, looked: int, dead: int) -> tuple[Explanation, ...]:
        """Return what fits if one reading at most is wrong."""
        return tuple(
            each
            for each, bits in self._every
            if ((bits & looked) ^ dead).bit_count() <= 1
        )

    def hangs_off(self, pair: Pair) -> bool:
        """Return whether one of a pair hangs off the other."""
        return pair[0] in self.above[pair[1]] or pair[1] in self.above[pair[0]]


def _state(survey: Survey, explain: _Explaining, point: str) -> PointState:
    readings = _readings(survey, point)
    seen = _seen(survey, point, readings)
    if readings.ignored | readings.kept_on and not readings.looked:
        return seen
    looked, dead = readings.looked, readings.dead
    simple = explain.simple(looked, dead)
    if len(simple) > 1:
        return replace(seen, status="several_fit", candidates=simple)
    either, both = explain.either(looked, dead), explain.both(looked, dead)
    seen = replace(seen, either=either, both=both)
    if simple:
        return replace(
            seen,
            status="found" if simple[0] else "unaffected",
            way=simple[0] or None,
            confirmed=not (either or both or (not simple[0] and seen.perhaps_battery)),
            as_sure_as_can_be=seen.own_battery
            or (not simple[0] and seen.perhaps_battery)
            or all(map(explain.hangs_off, (*either, *both))),
            steady=len(explain.near(looked, dead)) == 1,
        )
    return replace(
        seen,
        status="more_than_one_way" if either or both else "contradiction",
        misread=tuple(_misread(survey, explain, readings)),
    )


def _readings(survey: Survey, point: str) -> _Readings:
    """Return what counts: a context whose baseline was dead tells nothing.

    Nor does it that a point with a battery of its own stayed on.
    """
    dark = {
        look.night
        for look in survey.looks
        if not look.off and look.seen.get(point) == "dead"
    }
    looked = dead = ignored = kept_on = 0
    for n, look in enumerate(survey.looks):
        seen = look.seen.get(point)
        if seen is None:
            continue
        if look.night in dark:
            ignored |= 1 << n
            continue
        if seen == "live" and point in survey.own_battery:
            kept_on |= 1 << n
            continue
        looked |= 1 << n
        dead |= (seen == "dead") << n
    return _Readings(looked, dead, ignored, kept_on)


def _seen(survey: Survey, point: str, readings: _Readings) -> PointState:
    """Return the readings of a point, before anything is made of them."""

    def refs(bits: int) -> tuple[str, ...]:
        return tuple(look.ref for n, look in enumerate(survey.looks) if bits >> n & 1)

    return PointState(
        point=point,
        status="not_testable",
        dead_in=refs(readings.dead),
        live_in=refs(readings.looked & ~readings.dead),
        own_battery=point in survey.own_battery,
        perhaps_battery=point in survey.perhaps_battery,
        kept_on_in=refs(readings.kept_on),
        was_live=_was_live(survey, readings),
        ignored=refs(readings.ignored),
        disputed=tuple(look.ref for look in survey.looks if point in look.disputed),
    )


def _was_live(survey: Survey, readings: _Readings) -> bool:
    """Return whether some look saw a point on at each time at which it was dead."""

    def times(bits: int) -> set[bool]:
        return {look.night for n, look in enumerate(survey.looks) if bits >> n & 1}

    on = readings.looked & ~readings.dead | readings.kept_on
    return times(readings.dead) <= times(on)


def _misread(
    survey: Survey, explain: _Explaining, readings: _Readings
) -> Iterator[Misread]:
    """Yield each reading that, turned over, would leave exactly one way."""
    for n, look in enumerate(survey.looks):
        if readings.looked >> n & 1:
            left = explain.simple(readings.looked, readings.dead ^ 1 << n)
            if len(left) == 1 and left[0]:
                yield Misread(look=look.ref, way=left[0])
