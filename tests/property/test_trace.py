"""Tracing: no answer contradicts the truth, and a plan ends as soon as it says.

An exhaustive search over the explanations, written apart from the engine, must agree
with it on any readings at all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import combinations
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.domain.trace.effort import Effort, effort
from app.domain.trace.plan import MANNERS, Manner, next_round
from app.domain.trace.state import NONE, PointState, states
from app.domain.trace.survey import Look, Survey, Way
from tests.property.survey_truths import (
    Fed,
    Truth,
    carried_out,
    looked,
    misread,
    random_truth,
    tangled,
    truths,
)

manners = st.sampled_from(sorted(MANNERS))


def explained(survey: Survey, point: str) -> dict[str, Any]:
    """The answer by trying every explanation on every reading."""
    dark = {
        look.night
        for look in survey.looks
        if look.off == frozenset() and look.seen.get(point) == "dead"
    }
    read = [
        (look.ref, survey.dead(look.off), look.seen[point] == "dead")
        for look in survey.looks
        if point in look.seen and look.night not in dark
    ]
    if point in survey.own_battery:
        kept_on = [each for each in read if not each[2]]
        read = [each for each in read if each[2]]
        if kept_on and not read:
            return {"status": "not_testable"}
    if dark and not read:
        return {"status": "not_testable"}
    ways = [way.ref for way in survey.ways]
    simple = [Fed(()), *(Fed((way,)) for way in ways)]
    fits = [fed for fed in simple if _fits(fed, read)]
    pairs = [
        Fed(pair, both) for pair in combinations(ways, 2) for both in (False, True)
    ]
    two = [fed for fed in pairs if _fits(fed, read)]
    if len(fits) == 1:
        status = "found" if fits[0].ways else "unaffected"
        way = fits[0].ways[0] if fits[0].ways else None
        return {"status": status, "way": way, "confirmed": not two}
    if fits:
        names = {fed.ways[0] if fed.ways else NONE for fed in fits}
        return {"status": "several_fit", "candidates": names}
    return {
        "status": "more_than_one_way" if two else "contradiction",
        "either": {fed.ways for fed in two if not fed.needs_both_off},
        "both": {fed.ways for fed in two if fed.needs_both_off},
        "misread": _misread(simple, read),
    }


def _fits(fed: Fed, read: list[tuple[str, frozenset[str], bool]]) -> bool:
    return all(fed.is_dead(off) == dead for _, off, dead in read)


def _misread(
    simple: list[Fed], read: list[tuple[str, frozenset[str], bool]]
) -> set[tuple[str, str]]:
    found = set()
    for n, (ref, off, dead) in enumerate(read):
        turned = [*read[:n], (ref, off, not dead), *read[n + 1 :]]
        fits = [fed for fed in simple if _fits(fed, turned)]
        if len(fits) == 1 and fits[0].ways:
            found.add((ref, fits[0].ways[0]))
    return found


def as_data(state: PointState, keys: set[str]) -> dict[str, Any]:
    data = {
        "status": state.status,
        "way": state.way,
        "confirmed": state.confirmed,
        "candidates": set(state.candidates),
        "either": set(state.either),
        "both": set(state.both),
        "misread": {(each.look, each.way) for each in state.misread},
    }
    return {key: data[key] for key in keys}


@st.composite
def any_surveys(draw: Any) -> Survey:
    """Readings that need not make sense, on ways that may hang off each other."""
    count = draw(st.integers(1, 6))
    refs = [f"W{n}" for n in range(count)]
    ways = tuple(
        Way(ref=ref, parent=draw(st.none() | st.sampled_from(refs))) for ref in refs
    )
    points = ("P1", "P2")
    seen = st.dictionaries(st.sampled_from(points), st.sampled_from(("dead", "live")))
    offs = st.frozensets(st.sampled_from(refs))
    looks = tuple(
        Look(ref=f"R{n}", off=draw(offs), seen=draw(seen), night=draw(st.booleans()))
        for n in range(draw(st.integers(0, 7)))
    )
    own = draw(st.frozensets(st.sampled_from(points)))
    return Survey(ways=ways, points=points, looks=looks, own_battery=own)


@given(any_surveys())
def test_the_engine_agrees_with_trying_every_explanation(survey: Survey) -> None:
    for point, state in states(survey).items():
        want = explained(survey, point)
        assert as_data(state, set(want)) == want


@given(any_surveys(), manners)
def test_a_plan_never_switches_off_what_is_left_on(
    survey: Survey, manner: Manner
) -> None:
    kept = replace(
        survey,
        ways=tuple(
            replace(way, leave_on="a medical device") if way.ref == "W0" else way
            for way in survey.ways
        ),
    )
    planned = next_round(kept, manner)
    assert planned is None or "W0" not in planned.ways


@st.composite
def begun(draw: Any) -> tuple[Truth, Survey]:
    rng = Random(draw(st.integers(0, 2**32)))  # noqa: S311
    truth = random_truth(rng, draw(st.integers(1, 12)), draw(st.integers(1, 20)))
    return truth, tangled(rng, truth)


@given(begun(), manners)
def test_every_round_is_worth_making_and_what_was_said_of_it_holds(
    home: tuple[Truth, Survey], manner: Manner
) -> None:
    """Also with sub-boards, ways left on, blown lamps and rounds made by hand."""
    truth, start = home
    steps: list[tuple[Effort, int, int]] = []

    def watched(survey: Survey) -> bool:
        steps.append((effort(survey, manner), *made(survey)))
        planned = next_round(survey, manner)
        assert planned is not None
        assert planned.points
        assert planned.ways <= set(survey.switchable)
        assert switched(survey, planned.switches) == planned.ways
        return False

    end = carried_out(truth, manner, start=start, until=watched)
    rounds, readings = made(end)
    assert effort(end, manner) == Effort(manner=manner)
    for said, rounds_before, readings_before in steps:
        assert rounds - rounds_before <= said.rounds_worst
        assert readings - readings_before <= said.readings_worst


def switched(survey: Survey, refs: Iterable[str]) -> frozenset[str]:
    groups = {group.ref: group.ways for group in survey.groups}
    return survey.dead(frozenset(way for ref in refs for way in groups.get(ref, {ref})))


@given(begun(), manners)
def test_what_stays_open_is_what_no_round_can_part(
    home: tuple[Truth, Survey], manner: Manner
) -> None:
    truth, start = home
    end = carried_out(truth, manner, start=start)
    kept = {NONE, *(set(truth.ways) - set(end.switchable))}
    for point, state in states(end).items():
        fed = truth.fed[point]
        assert state.status != "contradiction"
        if point in end.own_battery:
            # Whatever keeps it on, it never ends as on none of these ways.
            assert state.status != "unaffected"
            continue
        assert set(state.candidates) <= kept
        if state.confirmed:
            assert fed.ways == ((state.way,) if state.way else ())
        elif state.status == "found" and len(fed.ways) == 2:
            ways = set(fed.ways)
            assert ways & kept or any(end.above[way] >= ways for way in ways)


@given(begun(), st.data())
def test_a_steady_answer_stands_against_any_one_wrong_reading_at_any_time(
    home: tuple[Truth, Survey], data: st.DataObject
) -> None:
    truth, start = home
    manner = data.draw(manners)
    many = data.draw(st.integers(0, 20))
    survey = carried_out(
        truth, manner, start=start, until=lambda s: len(s.looks) > many
    )
    wrong = data.draw(st.integers(0, max(len(survey.looks) - 1, 0)))
    looks = [
        misread(look, look.seen) if n == wrong and look.off else look
        for n, look in enumerate(survey.looks)
    ]
    for point, state in states(replace(survey, looks=tuple(looks))).items():
        fed = truth.fed[point]
        hangs = len(fed.ways) == 2 and any(
            survey.above[way] >= set(fed.ways) for way in fed.ways
        )
        if state.steady and not hangs:
            assert fed.ways == ((state.way,) if state.way else ())


@given(truths())
def test_halving_finds_each_point_in_the_fewest_rounds(truth: Truth) -> None:
    most = len(truth.ways).bit_length()  # ceil(log2(n + 1))
    survey = carried_out(truth, "halving", until=lambda s: len(s.looks) == most)
    for point, state in states(survey).items():
        fed = truth.fed[point]
        if len(fed.ways) < 2:
            assert state.status == ("found" if fed.ways else "unaffected")
            assert state.way == (fed.ways[0] if fed.ways else None)
        assert state.status != "several_fit"


@given(truths(), manners)
def test_with_every_reading_right_nothing_contradicts_the_truth(
    truth: Truth, manner: Manner
) -> None:
    survey = carried_out(truth, manner)
    for point, state in states(survey).items():
        fed = truth.fed[point]
        assert state.status != "contradiction"
        assert state.status != "several_fit"
        assert state.confirmed or state.status == "more_than_one_way"
        assert (state.status == "more_than_one_way") == (len(fed.ways) == 2)
        assert state.way == (fed.ways[0] if len(fed.ways) == 1 else None)
        if len(fed.ways) == 2:
            assert fed.ways in (state.both if fed.needs_both_off else state.either)


@given(truths())
def test_self_checking_never_takes_a_point_on_two_ways_for_found(truth: Truth) -> None:
    survey = truth.survey()
    while planned := next_round(survey, "self_checking"):
        look = looked(truth, survey, planned.ways, planned.points)
        survey = replace(survey, looks=(*survey.looks, look))
        if planned.purpose == "tell_apart":
            continue
        break
    for point, state in states(survey).items():
        if state.status == "found":
            assert len(truth.fed[point].ways) == 1


@given(truths(), manners)
def test_no_more_rounds_are_needed_than_was_said_beforehand(
    truth: Truth, manner: Manner
) -> None:
    said = effort(truth.survey(), manner)
    rounds, readings = made(carried_out(truth, manner))
    assert rounds <= said.rounds_worst
    assert readings <= said.readings_worst


@given(truths(pairs=False), manners)
def test_no_fewer_are_needed_where_no_point_is_on_two_ways(
    truth: Truth, manner: Manner
) -> None:
    said = effort(truth.survey(), manner)
    rounds, readings = made(carried_out(truth, manner))
    assert said.rounds_best <= rounds
    assert said.readings_best <= readings


def made(survey: Survey) -> tuple[int, int]:
    return len(survey.looks), sum(len(look.seen) for look in survey.looks)


@given(truths(), manners, st.data())
def test_a_wrong_confirmed_needs_two_wrong_readings(
    truth: Truth, manner: Manner, data: st.DataObject
) -> None:
    """Whatever the truth, once a manner has asked for all that it asks for."""
    point = data.draw(st.sampled_from(sorted(truth.fed)))
    turn = data.draw(st.integers(1, len(carried_out(truth, manner).looks)))
    survey = carried_out(truth, manner, wrong=only(point, turn))
    state = states(survey)[point]
    if state.confirmed:
        assert truth.fed[point].ways == ((state.way,) if state.way else ())


def only(point: str, turn: int) -> Callable[[Look], list[str]]:
    """One wrong reading: of this point, in the round of this number."""

    def wrong(look: Look) -> list[str]:
        return [point] if look.ref == f"R{turn}" and point in look.seen else []

    return wrong


@given(truths(), st.data())
@settings(max_examples=50)
def test_self_checking_withstands_one_wrong_reading_and_names_it(
    truth: Truth, data: st.DataObject
) -> None:
    """A point on one way is then a contradiction or two ways, and the reading named."""
    clean = carried_out(truth, "self_checking")
    single = [p for p, fed in truth.fed.items() if len(fed.ways) == 1]
    if not single:
        return
    point = data.draw(st.sampled_from(single))
    turn = data.draw(st.integers(1, len(clean.looks)))
    ref = f"R{turn}"
    survey = carried_out(truth, "self_checking", wrong=only(point, turn))
    state = states(survey)[point]
    if any(look.ref == ref and point in look.seen for look in survey.looks):
        assert state.status in ("contradiction", "more_than_one_way")
        named = {(each.look, each.way) for each in state.misread}
        assert (ref, truth.fed[point].ways[0]) in named


@pytest.mark.parametrize("manner", sorted(MANNERS))
def test_shares_found_wrong_with_one_reading_in_ten_wrong(manner: Manner) -> None:
    """Of 20 houses of 12 ways and 40 points each, once a manner has asked for all."""
    found, confirmed, points = wrong_shares(manner, Random(7), 20)  # noqa: S311
    assert points == 800
    assert found <= 0.03
    assert confirmed <= 0.02


def wrong_shares(manner: Manner, rng: Random, houses: int) -> tuple[float, float, int]:
    """Shares of all points that end as found, and as confirmed, with a wrong way."""
    found = confirmed = total = 0
    for _ in range(houses):
        truth = random_truth(rng, 12, 40)
        survey = carried_out(
            truth,
            manner,
            wrong=lambda look: [p for p in look.seen if rng.random() < 0.1],
        )
        for point, state in states(survey).items():
            total += 1
            if state.status == "found" and truth.fed[point].ways != (state.way,):
                found += 1
                confirmed += state.confirmed
    return found / total, confirmed / total, total
