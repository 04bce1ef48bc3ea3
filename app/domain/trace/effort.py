"""How many rounds and readings a manner still asks for, said before one begins."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from app.domain.trace.plan import (
    Manner,
    OpenSets,
    fixed_rounds,
    looked_at_along,
    next_round,
    open_sets,
    unsure,
    worth_looking,
)
from app.domain.trace.state import PointState, states
from app.domain.trace.survey import Survey

# Looks that a way found may still need, by the manner that found it, on boards of which
# none hangs off another: only it off and only it on, each once where the rounds already
# differ in one place, else twice.
_LOOKS_EACH: dict[Manner, int] = {
    "one_at_a_time": 2,
    "halving": 4,
    "self_checking": 0,
}
_LOOKS_AT_MOST = 4
_LOOKS_AT_NONE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How many rounds and readings a manner still needs, at best and at worst.

    Every point asked about is taken to be looked at.  ``best`` is for points of which
    none depends on two ways.

    Attributes:
        manner: Which manner.
        finding_best: Fewest rounds until no more can be narrowed down.
        finding_worst: Most rounds until then.
        rounds_best: Fewest rounds in all, the confirming looks included.
        rounds_worst: Most rounds in all.
        readings_best: Fewest readings in all.
        readings_worst: Most readings in all.
    """

    manner: Manner
    finding_best: int = 0
    finding_worst: int = 0
    rounds_best: int = 0
    rounds_worst: int = 0
    readings_best: int = 0
    readings_worst: int = 0


def effort(survey: Survey, manner: Manner) -> Effort:
    """Return what a manner still needs from here on."""
    if next_round(survey, manner) is None:
        return Effort(manner=manner)
    known = states(survey)
    fixed = tuple(fixed_rounds(survey, manner, known))
    sets = open_sets(survey, known)
    best, each_best = _at_best(survey, manner, sets, len(fixed))
    worst = len(fixed) + _splits_at_worst(survey, fixed, set(sets.values()))
    looking = worth_looking(manner, known)
    along = {point for point, state in known.items() if looked_at_along(state)}
    open_ones = [
        state
        for state in known.values()
        if not state.own_battery and (unsure(state) or _could_be_surer(state))
    ]
    each = _looks_each(survey, manner, known)
    if manner == "self_checking":
        each_best = len(fixed) * len(looking)
    return Effort(
        manner=manner,
        finding_best=best,
        finding_worst=worst,
        rounds_best=best,
        rounds_worst=worst + _looks_at_worst(open_ones, each),
        readings_best=each_best,
        readings_worst=worst * len(looking | set(sets) | along)
        + max(each, _LOOKS_AT_NONE) * len(open_ones),
    )


def _could_be_surer(state: PointState) -> bool:
    return state.status in ("found", "unaffected") and not state.steady


def _flat(survey: Survey) -> bool:
    """Return whether no way hangs off another."""
    return all(way.parent is None for way in survey.ways)


def _apart(survey: Survey, sets: Collection[frozenset[str]]) -> bool:
    """Return whether all that is open can be halved at once."""
    return _flat(survey) and sum(map(len, sets)) == len(frozenset().union(*sets))


def _at_best(
    survey: Survey, manner: Manner, open_ones: OpenSets, fixed: int
) -> tuple[int, int]:
    """Return the fewest rounds until all is narrowed down, and the fewest readings."""
    sets = set(open_ones.values())
    if manner == "self_checking":
        return fixed, 0
    if manner == "one_at_a_time" and _flat(survey):
        least = {fits: min(len(fits) - 1, fixed) for fits in sets}
    elif manner == "halving" and _apart(survey, sets):
        least = {fits: len(fits).bit_length() - 1 for fits in sets}
    else:
        least = dict.fromkeys(sets, 1)
    readings = sum(least[fits] for fits in open_ones.values())
    return max(least.values(), default=0), readings


def _splits_at_worst(
    survey: Survey, fixed: Collection[frozenset[str]], sets: Collection[frozenset[str]]
) -> int:
    """Return the most rounds of splitting after the fixed ones.

    Where all can be halved at once it is the power of two.  Else each round parts what
    no round before it parted, so that there are fewer than there are candidates.
    """
    if not fixed and _apart(survey, sets):
        return max(((len(fits) - 1).bit_length() for fits in sets), default=0)
    darks = [survey.dead(off) for off in fixed]
    parts = _joined(sets)
    cells = {
        (n, tuple(way in dark for dark in darks))
        for n, part in enumerate(parts)
        for way in part
    }
    return sum(map(len, parts)) - len(cells)


def _joined(sets: Collection[frozenset[str]]) -> list[frozenset[str]]:
    """Return the sets, those that share something put together."""
    parts: list[frozenset[str]] = []
    for fits in sets:
        touching = [part for part in parts if part & fits]
        parts = [part for part in parts if part not in touching]
        parts.append(fits.union(*touching))
    return parts


def _looks_each(survey: Survey, manner: Manner, known: Mapping[str, PointState]) -> int:
    """Return how many looks at most a way still needs to be sure of it.

    Self-checking looks at every point in each of its rounds, whatever was seen before.
    """
    fresh = not any(look.seen for look in survey.looks)
    if manner == "self_checking":
        fresh = not any(state.ignored for state in known.values())
    return _LOOKS_EACH[manner] if _flat(survey) and fresh else _LOOKS_AT_MOST


def _looks_at_worst(open_ones: Collection[PointState], each: int) -> int:
    if not open_ones:
        return 0
    ways = {way for s in open_ones for way in s.candidates or (s.way,) if way}
    return each * min(len(ways), len(open_ones)) + _LOOKS_AT_NONE
