"""What to switch off next, in three manners, and how much each still asks for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from app.domain.trace.code import rounds_for
from app.domain.trace.state import (
    Explanation,
    PointState,
    candidates,
    rivals,
    states,
)
from app.domain.trace.survey import Survey

Manner = Literal["one_at_a_time", "halving", "self_checking"]
MANNERS: dict[Manner, str] = {
    "one_at_a_time": "One at a time",
    "halving": "Halving",
    "self_checking": "Self-checking",
}
Purpose = Literal["tell_apart", "confirm"]
# Looks that a way found may still need, by the manner that found it: only it off and
# only it on, each once where the rounds already differ in one place, else twice.
_LOOKS_EACH: dict[Manner, int] = {
    "one_at_a_time": 2,
    "halving": 4,
    "self_checking": 0,
}
_LOOKS_AT_NONE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class NextRound:
    """A round worth making.

    Attributes:
        purpose: Whether it tells ways apart or confirms what was found.
        ways: The ways that are to be without supply.
        switches: What to switch off by hand: ways, and devices that take several.
        points: The points worth looking at, in the order of the walk.
    """

    purpose: Purpose
    ways: frozenset[str]
    switches: tuple[str, ...]
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How many rounds and readings a manner still needs, at best and at worst.

    ``best`` is for points of which none depends on two ways.

    Attributes:
        manner: Which manner.
        finding_best: Fewest rounds until every point is found.
        finding_worst: Most rounds until then.
        rounds_best: Fewest rounds in all, the confirming looks included.
        rounds_worst: Most rounds in all.
        readings_best: Fewest readings in all.
        readings_worst: Most readings in all.
    """

    manner: Manner
    finding_best: int
    finding_worst: int
    rounds_best: int
    rounds_worst: int
    readings_best: int
    readings_worst: int


def next_round(
    survey: Survey, manner: Manner, likely: Mapping[str, str] | None = None
) -> NextRound | None:
    """Return the next round; None when switching off can show nothing more.

    Args:
        survey: All readings so far.
        manner: How to go about it.
        likely: The way that a label or the record suggests for a point; it decides
            between equally good rounds, and never what is found.
    """
    known = states(survey)
    tell_apart = {
        "one_at_a_time": _one_at_a_time,
        "halving": _halving,
        "self_checking": _self_checking,
    }[manner](survey, known, likely or {})
    if tell_apart is not None:
        points = _worth_looking(manner, known)
        return _made(survey, "tell_apart", tell_apart, points)
    return _confirming(survey)


def effort(survey: Survey, manner: Manner) -> Effort:
    """Return what a manner still needs from here on."""
    known = states(survey)
    open_ones = [s for s in known.values() if s.status in _OPEN and not s.steady]
    unsure = [state for state in open_ones if _unsure(state)]
    several = [state for state in unsure if state.status == "several_fit"]
    if manner == "halving":
        most = max((len(state.candidates) for state in several), default=1)
        finding = (most.bit_length() - 1, (most - 1).bit_length())
        looking = len(several)
    else:
        finding = (len(list(_offs(survey, manner, known))),) * 2
        looking = len(_worth_looking(manner, known))
    ways = {way for s in open_ones for way in s.candidates or (s.way,) if way}
    each = _LOOKS_EACH[manner if not survey.looks else "halving"]
    looks = each * min(len(ways), len(open_ones)) + _LOOKS_AT_NONE if open_ones else 0
    return Effort(
        manner=manner,
        finding_best=finding[0],
        finding_worst=finding[1],
        rounds_best=finding[0],
        rounds_worst=finding[1] + looks,
        readings_best=finding[0] * looking,
        readings_worst=finding[1] * looking
        + max(each, _LOOKS_AT_NONE) * len(open_ones),
    )


_OPEN = ("several_fit", "found", "unaffected")


def _unsure(state: PointState) -> bool:
    return state.status in _OPEN and not (state.confirmed or state.as_sure_as_can_be)


def _worth_looking(manner: Manner, known: Mapping[str, PointState]) -> set[str]:
    """Return the points to look at; self-checking wants each of them every time."""
    worth: Callable[[PointState], bool] = {
        "one_at_a_time": _unsure,
        "halving": lambda state: state.status == "several_fit",
        "self_checking": lambda state: state.status != "not_testable",
    }[manner]
    return {point for point, state in known.items() if worth(state)}


def _made(
    survey: Survey, purpose: Purpose, ways: frozenset[str], points: Iterable[str]
) -> NextRound:
    wanted = set(points)
    return NextRound(
        purpose=purpose,
        ways=survey.dead(ways),
        switches=_switches(survey, ways),
        points=tuple(point for point in survey.points if point in wanted),
    )


def _switches(survey: Survey, ways: frozenset[str]) -> tuple[str, ...]:
    """Return the fewest things to switch: a group where all of it is to be off."""
    left, chosen = set(ways), []
    for group in sorted(survey.groups, key=lambda g: -len(g.ways)):
        if len(group.ways & left) > 1 and group.ways <= survey.dead(ways):
            chosen.append(group.ref)
            left -= group.ways
    below = {w for w in left if (survey.above[w] - {w}) & ways}
    return (*chosen, *(w.ref for w in survey.ways if w.ref in left - below))


def _offs(
    survey: Survey, manner: Manner, known: Mapping[str, PointState]
) -> Iterator[frozenset[str]]:
    """Yield the fixed rounds of a manner in which a point is still to be looked at."""
    worth = _worth_looking(manner, known)
    looked: dict[frozenset[str], Counter[str]] = {}
    for look in survey.looks:
        looked.setdefault(survey.dead(look.off), Counter()).update(tuple(look.seen))
    times: Counter[frozenset[str]] = Counter()
    ways = survey.switchable
    if manner == "one_at_a_time":
        rounds: Iterable[frozenset[str]] = (frozenset({way}) for way in ways)
    else:
        numbered = rounds_for(len(ways))
        rounds = (frozenset(ways[n] for n in numbers) for numbers in numbered)
    for off in rounds:
        dead = survey.dead(off)
        times[dead] += 1
        seen = looked.get(dead, Counter())
        if any(seen[point] < times[dead] for point in worth):
            yield off


def _one_at_a_time(
    survey: Survey, known: Mapping[str, PointState], _likely: Mapping[str, str]
) -> frozenset[str] | None:
    return next(_offs(survey, "one_at_a_time", known), None)


def _self_checking(
    survey: Survey, known: Mapping[str, PointState], _likely: Mapping[str, str]
) -> frozenset[str] | None:
    return next(_offs(survey, "self_checking", known), None)


def _halving(
    survey: Survey, _known: Mapping[str, PointState], likely: Mapping[str, str]
) -> frozenset[str] | None:
    """Split every set of candidates that is still open as evenly as can be."""
    fitting = candidates(survey)
    open_sets = Counter(fits for fits in fitting.values() if len(fits) > 1)
    weights = Counter(way for point, way in likely.items() if way in fitting[point])
    split = _split(survey, open_sets, weights)
    choices = [split, *(g.ways for g in survey.groups if _allowed(survey, g.ways))]
    useful = [ways for ways in choices if _parts(survey, open_sets, ways)]
    return min(useful, key=lambda ways: _cost(survey, open_sets, ways), default=None)


def _split(
    survey: Survey, open_sets: Counter[frozenset[str]], weights: Counter[str]
) -> frozenset[str]:
    off: set[str] = set()
    on: set[str] = set()
    for fits in sorted(open_sets, key=lambda f: (-len(f), sorted(f))):
        free = [w for w in survey.switchable if w in fits and w not in off | on]
        free.sort(key=lambda way: -weights[way])
        want = len(fits) // 2 - len(fits & off)
        for way in free[1::2] + free[0::2]:
            if want > 0:
                off.add(way)
                want -= 1
            else:
                on.add(way)
    return frozenset(off)


def _allowed(survey: Survey, ways: frozenset[str]) -> bool:
    return ways <= set(survey.switchable)


def _parts(
    survey: Survey, open_sets: Counter[frozenset[str]], ways: frozenset[str]
) -> bool:
    """Return whether a round would part some set of candidates."""
    dead = survey.dead(ways)
    return any(fits & dead and fits - dead for fits in open_sets)


def _cost(
    survey: Survey, open_sets: Counter[frozenset[str]], ways: frozenset[str]
) -> tuple[int, int, int]:
    """Return the rounds to come; then the candidates left; then the touches."""
    dead = survey.dead(ways)
    left = [max(len(fits & dead), len(fits - dead)) for fits in open_sets]
    whole = sum(n * number for n, number in zip(left, open_sets.values(), strict=True))
    return (max(left) - 1).bit_length(), whole, len(_switches(survey, ways))


def _confirming(survey: Survey) -> NextRound | None:
    """Return the look that tells most points found from what else might be so.

    A way is looked at with only it off and only it on; what is on none of the ways,
    with everything off.
    """
    known, every = states(survey), frozenset(survey.switchable)
    by_way: dict[str | None, list[str]] = {}
    rivals_of = rivals(survey)
    for point in rivals_of:
        by_way.setdefault(known[point].way, []).append(point)
    best: tuple[frozenset[str], list[str]] = (every, [])
    for way, points in by_way.items():
        for off in _looks_at(survey, way, every):
            dead = survey.dead(off)
            parted = [p for p in points if _parted(known[p], rivals_of[p], dead)]
            if len(parted) > len(best[1]):
                best = (off, parted)
    return _made(survey, "confirm", *best) if best[1] else None


def _looks_at(
    survey: Survey, way: str | None, every: frozenset[str]
) -> Iterator[frozenset[str]]:
    if way is None:
        yield every
        return
    if way in every:
        yield frozenset({way})
    yield every - survey.above[way]


def _parted(
    state: PointState, others: Iterable[Explanation], dead: frozenset[str]
) -> bool:
    """Return whether a look would part what was found from something else."""
    own = Explanation((state.way,) if state.way else ()).dead(dead)
    return any(other.dead(dead) != own for other in others)
