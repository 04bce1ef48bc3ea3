"""Hidden truths of a survey, and what is seen when ways are switched off."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from hypothesis import strategies as st

from app.domain.trace.plan import Manner, next_round
from app.domain.trace.survey import Group, Look, Seen, Survey, Way

MOST_ROUNDS = 120


@dataclass(frozen=True)
class Fed:
    """How a point is really fed: none, one way, either of two, both of two."""

    ways: tuple[str, ...]
    needs_both_off: bool = False

    def is_dead(self, off: frozenset[str]) -> bool:
        hit = [way in off for way in self.ways]
        return bool(hit) and (all(hit) if self.needs_both_off else any(hit))


@dataclass(frozen=True)
class Truth:
    ways: tuple[str, ...]
    fed: dict[str, Fed]

    def survey(self) -> Survey:
        ways = tuple(Way(ref=ref) for ref in self.ways)
        return Survey(ways=ways, points=tuple(self.fed))


@st.composite
def truths(
    draw: Callable[[st.SearchStrategy[Any]], Any], *, pairs: bool = True
) -> Truth:
    rng = Random(draw(st.integers(0, 2**32)))  # noqa: S311
    return random_truth(
        rng, draw(st.integers(1, 24)), draw(st.integers(1, 80)), pairs=pairs
    )


def random_truth(rng: Random, ways: int, points: int, *, pairs: bool = True) -> Truth:
    refs = tuple(f"W{n}" for n in range(1, ways + 1))
    fed = {f"P{n}": _fed(rng, refs, pairs=pairs) for n in range(1, points + 1)}
    return Truth(refs, fed)


def _fed(rng: Random, ways: tuple[str, ...], *, pairs: bool) -> Fed:
    chance = rng.random()
    if chance < 0.1:
        return Fed(())
    if pairs and len(ways) > 1 and chance < 0.25:
        a, b = sorted(rng.sample(range(len(ways)), 2))
        return Fed((ways[a], ways[b]), needs_both_off=rng.random() < 0.5)
    return Fed((rng.choice(ways),))


def looked(
    truth: Truth, survey: Survey, off: frozenset[str], points: Iterable[str]
) -> Look:
    """A round, every reading of it right; half of the batteries keep a point on."""
    dead = survey.dead(off)
    seen: dict[str, Seen] = {
        p: "dead" if truth.fed[p].is_dead(dead) and not stays_on(survey, p) else "live"
        for p in points
    }
    return Look(ref=f"R{len(survey.looks) + 1}", off=off, seen=seen)


def stays_on(survey: Survey, point: str) -> bool:
    """Return whether the battery of a point keeps it on, by its number."""
    return point in survey.own_battery and int(point[1:]) % 2 == 0


def misread(look: Look, points: Iterable[str]) -> Look:
    """The round with the readings of some points turned over."""
    turned: dict[str, Seen] = {
        p: "live" if look.seen[p] == "dead" else "dead" for p in points
    }
    return replace(look, seen={**look.seen, **turned})


def tangled(rng: Random, truth: Truth) -> Survey:
    """Ways that hang off each other, some left on, groups, and rounds made by hand.

    Some points have a battery of their own. In the rounds made by hand not every point
    was looked at, and some lamps are blown.
    """
    ways: list[Way] = []
    for ref in truth.ways:
        parent = rng.choice(ways).ref if ways and rng.random() < 0.3 else None
        kept = "a stairlift" if rng.random() < 0.1 else ""
        ways.append(Way(ref=ref, parent=parent, leave_on=kept))
    survey = replace(truth.survey(), ways=tuple(ways))
    below = [survey.dead(_some(rng, truth.ways)) for _ in range(2)]
    groups = [Group(ref=f"G{n}", ways=b) for n, b in enumerate(below) if len(b) > 1]
    blown = [p for p in truth.fed if rng.random() < 0.1]
    own = frozenset(p for p in truth.fed if rng.random() < 0.2)
    survey = replace(survey, groups=tuple(groups), own_battery=own)
    for n in range(rng.randrange(4)):
        off = _some(rng, truth.ways) if n else frozenset[str]()
        seen = truth.fed if n == 0 else _some(rng, truth.fed)
        look = looked(truth, survey, off, seen)
        look = look if n else misread(look, blown)
        survey = replace(survey, looks=(*survey.looks, look))
    return survey


def _some(rng: Random, things: Iterable[str]) -> frozenset[str]:
    return frozenset(thing for thing in things if rng.random() < 0.5)


def carried_out(
    truth: Truth,
    manner: Manner,
    *,
    start: Survey | None = None,
    wrong: Callable[[Look], Iterable[str]] = lambda _look: (),
    until: Callable[[Survey], bool] = lambda _survey: False,
) -> Survey:
    """Make every round that a manner asks for, until it asks for none."""
    survey = start or truth.survey()
    for _ in range(MOST_ROUNDS):
        planned = next_round(survey, manner)
        if planned is None or until(survey):
            return survey
        look = looked(truth, survey, planned.ways, planned.points)
        survey = replace(survey, looks=(*survey.looks, misread(look, wrong(look))))
    raise AssertionError("the plan does not come to an end")
