"""What to switch off next, in three manners."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from app.domain.trace.code import rounds_for
from app.domain.trace.state import (
    NONE,
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
OpenSets = Mapping[str, frozenset[str]]
_OPEN = ("several_fit", "found", "unaffected")


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
    fixed = next(fixed_rounds(survey, manner, known), None)
    if fixed is not None:
        return _made(survey, "tell_apart", fixed, worth_looking(manner, known))
    open_ones = open_sets(survey, known)
    split = _halving(survey, open_ones, likely or {})
    if split is not None:
        along = (p for p, state in known.items() if looked_at_along(state))
        parted = (p for p, s in open_ones.items() if _parts(survey, (s,), split))
        points = (*parted, *along)
        return _made(survey, "tell_apart", split, points)
    return _confirming(survey, known)


def open_sets(survey: Survey, known: Mapping[str, PointState]) -> OpenSets:
    """Return what fits each point that more rounds could narrow down.

    All that is never switched off counts as one, for no round can part it.
    """
    may, fitting = frozenset(survey.switchable), candidates(survey)
    found = {}
    for point, state in known.items():
        fits = fitting[point]
        parted = fits & may | (frozenset({NONE}) if fits - may else frozenset())
        if _may_narrow(state) and len(parted) > 1:
            found[point] = parted
    return found


def _may_narrow(state: PointState) -> bool:
    """Return whether a round narrows a point down whatever is seen of it."""
    return state.status == "several_fit" and not state.own_battery


def looked_at_along(state: PointState) -> bool:
    """Return whether a point with a battery of its own may yet be found.

    It asks for no rounds but the fixed ones, since its staying on would tell nothing,
    and is looked at in what others ask for.
    """
    waits = state.status == "not_testable" and bool(state.kept_on_in)
    return state.own_battery and (waits or state.status == "several_fit")


def unsure(state: PointState) -> bool:
    """Return whether one way, or none, may be so of a point but is not confirmed."""
    settled = state.confirmed or state.as_sure_as_can_be
    return state.status in _OPEN and not settled


def worth_looking(manner: Manner, known: Mapping[str, PointState]) -> set[str]:
    """Return the points for a fixed round; self-checking wants each every time."""
    worth: Callable[[PointState], bool] = {
        "one_at_a_time": unsure,
        "halving": lambda _state: False,
        "self_checking": lambda state: state.status != "not_testable",
    }[manner]
    fixed = manner != "halving"
    return {
        point
        for point, state in known.items()
        if worth(state) or (fixed and looked_at_along(state))
    }


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


def fixed_rounds(
    survey: Survey, manner: Manner, known: Mapping[str, PointState]
) -> Iterator[frozenset[str]]:
    """Yield the fixed rounds of a manner in which a point is still to be looked at.

    Halving has none.
    """
    worth = worth_looking(manner, known)
    looked: dict[frozenset[str], Counter[str]] = {}
    for look in survey.looks:
        looked.setdefault(survey.dead(look.off), Counter()).update(tuple(look.seen))
    times: Counter[frozenset[str]] = Counter()
    for off in _all_fixed(survey, manner):
        dead = survey.dead(off)
        times[dead] += 1
        seen = looked.get(dead, Counter())
        if any(seen[point] < times[dead] for point in worth):
            yield off


def _all_fixed(survey: Survey, manner: Manner) -> Iterator[frozenset[str]]:
    ways = survey.switchable
    if manner == "one_at_a_time":
        yield from (frozenset({way}) for way in ways)
    if manner == "self_checking":
        for numbers in rounds_for(len(ways)):
            yield frozenset(ways[n] for n in numbers)


def _halving(
    survey: Survey, open_ones: OpenSets, likely: Mapping[str, str]
) -> frozenset[str] | None:
    """Split every set of candidates that is still open as evenly as can be."""
    sets = Counter(open_ones.values())
    weights = Counter(
        way for point, way in likely.items() if way in open_ones.get(point, ())
    )
    split = _split(survey, sets, weights)
    choices = [split, *(g.ways for g in survey.groups if _allowed(survey, g.ways))]
    useful = [ways for ways in choices if _parts(survey, sets, ways)]
    if not useful and sets:
        useful = [frozenset({w}) for w in survey.switchable]
        useful = [ways for ways in useful if _parts(survey, sets, ways)]
    return min(useful, key=lambda ways: _cost(survey, sets, ways), default=None)


def _split(
    survey: Survey, sets: Counter[frozenset[str]], weights: Counter[str]
) -> frozenset[str]:
    off: set[str] = set()
    on: set[str] = set()
    for fits in sorted(sets, key=lambda f: (len(f), sorted(f))):
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
    survey: Survey, sets: Iterable[frozenset[str]], ways: frozenset[str]
) -> bool:
    """Return whether a round would part some set of candidates."""
    dead = survey.dead(ways)
    return any(fits & dead and fits - dead for fits in sets)


def _cost(
    survey: Survey, sets: Counter[frozenset[str]], ways: frozenset[str]
) -> tuple[int, int, int]:
    """Return the rounds to come; then the candidates left; then the touches."""
    dead = survey.dead(ways)
    left = [max(len(fits & dead), len(fits - dead)) for fits in sets]
    whole = sum(n * number for n, number in zip(left, sets.values(), strict=True))
    return (max(left) - 1).bit_length(), whole, len(_switches(survey, ways))


def _confirming(survey: Survey, known: Mapping[str, PointState]) -> NextRound | None:
    """Return the look that tells most points found from what else might be so.

    A way is looked at with only it off and only it on; what is on none of the ways,
    with everything off.
    """
    every = frozenset(survey.switchable)
    by_way: dict[str | None, list[str]] = {}
    rivals_of = rivals(survey, known)
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
