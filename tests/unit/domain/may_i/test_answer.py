"""What is not answered is not guessed; each turning question turns what it should."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.may_i import (
    JOBS,
    NATIONS,
    PLACES,
    QUESTIONS,
    Nation,
    allowed,
    may_i,
    side_by_side,
)
from app.domain.may_i.answer import building_of

SETTLED = {"separating_wall": "no", "building_change": "no", "building": "low_house"}
ELSEWHERE = {"place": "elsewhere", "new_circuit": "no", "outdoor_wiring": "no"}


@pytest.mark.parametrize(
    ("nation", "job", "question", "verdicts"),
    [
        ("england", "add-socket", "new_circuit", {"yes": "notice", "no": "no_notice"}),
        (
            "england",
            "add-socket",
            "place",
            {
                "elsewhere": "no_notice",
                "kitchen": "no_notice",
                "bath_zone": "notice",
                "bathroom": "no_notice",
                "bath_void": "ask",
                "pool_room": "notice",
                "outdoors": "no_notice",
                "outbuilding": "no_notice",
            },
        ),
        (
            "wales",
            "add-socket",
            "place",
            {
                "elsewhere": "no_notice",
                "kitchen": "notice",
                "bath_zone": "notice",
                "bathroom": "notice",
                "bath_void": "notice",
                "pool_room": "notice",
                "outdoors": "notice",
                "outbuilding": "no_notice",
            },
        ),
        ("wales", "add-socket", "outdoor_wiring", {"yes": "notice", "no": "no_notice"}),
        (
            "wales",
            "outside-light",
            "outdoor_wiring",
            {"yes": "notice", "no": "no_notice"},
        ),
        ("england", "replace-shower", "bigger", {"yes": "notice", "no": "no_notice"}),
        (
            "scotland",
            "add-socket",
            "separating_wall",
            {"yes": "warrant", "no": "no_warrant"},
        ),
        ("scotland", "solar", "building_change", {"yes": "ask", "no": "no_warrant"}),
        (
            "scotland",
            "rewire",
            "building",
            {"low_house": "no_warrant", "high_house": "warrant", "flat": "warrant"},
        ),
        (
            "scotland",
            "add-socket",
            "building",
            {"low_house": "no_warrant", "high_house": "ask", "flat": "ask"},
        ),
    ],
)
def test_a_turning_question_turns_the_verdict(
    nation: Nation, job: str, question: str, verdicts: dict[str, str]
) -> None:
    rest = {k: v for k, v in {**ELSEWHERE, **SETTLED}.items() if k != question}
    open_one = may_i(nation, JOBS[job], rest)
    assert open_one.verdict == "depends"
    assert [q.code for q in open_one.missing] == [question]
    assert set(open_one.may_be) == set(verdicts.values())
    answered = {
        code: may_i(nation, JOBS[job], {**rest, question: code}) for code in verdicts
    }
    assert {code: answer.verdict for code, answer in answered.items()} == verdicts
    for code, answer in answered.items():
        words = (QUESTIONS[question].text, QUESTIONS[question].answers[code])
        assert words in answer.decided_by


WITH_CABLE = {"new_cable": "yes", "outdoor_wiring": "no"}
MOVED = ("replace-socket", "replace-switch", "replace-light", "repair-cable")


@pytest.mark.parametrize("job", [*MOVED, "replace-thermostat"])
def test_with_new_cable_what_is_replaced_or_mended_goes_by_its_place(job: str) -> None:
    nobody_said = may_i("england", JOBS[job], WITH_CABLE)
    assert (nobody_said.verdict, nobody_said.because) == (
        "depends",
        "It turns on what is not said yet: Where is it?",
    )
    near = may_i("england", JOBS[job], {**WITH_CABLE, "place": "bath_zone"})
    assert (near.verdict, near.rule) == ("notice", "EN4")
    bathroom = {"place": ("bath_zone", "bathroom", "bath_void")}
    by_record = may_i("england", JOBS[job], WITH_CABLE, bathroom)
    assert by_record.verdict == "depends"
    assert list(by_record.missing[0].answers) == [*bathroom["place"]]
    # In Wales the whole room counts.
    assert may_i("wales", JOBS[job], WITH_CABLE, bathroom).rule == "WA10"


def test_a_light_of_a_bathroom_may_be_out_of_reach_of_the_water() -> None:
    light, known = JOBS["replace-bath-light"], {"new_cable": "yes"}
    assert may_i("england", light, known).verdict == "depends"
    near = may_i("england", light, {**known, "place": "bath_zone"})
    far = may_i("england", light, {**known, "place": "bathroom"})
    assert (near.verdict, far.verdict) == ("notice", "no_notice")
    assert may_i("england", light, {"new_cable": "no"}).verdict == "no_notice"


@pytest.mark.parametrize("nation", NATIONS)
def test_where_nobody_asks_for_the_place_no_place_turns_anything(
    nation: Nation,
) -> None:
    placeless = [job for job in JOBS.values() if not {"place"} & {*job.asks, *job.sets}]
    assert len(placeless) > 5
    for job in placeless:
        first = may_i(nation, job, SETTLED)
        for place in PLACES:
            there = replace(job, sets={**job.sets, "place": place})
            found = may_i(nation, there, SETTLED)
            assert (found.verdict, found.rule) == (first.verdict, first.rule), job.code
            assert found.confidence == first.confidence, job.code
        assert "special location" not in first.because


def test_what_the_record_says_otherwise_of_a_place_is_asked() -> None:
    outside, in_kitchen = JOBS["outside-light"], {"place": ("kitchen",)}
    known = {"outdoor_wiring": "no", "new_circuit": "no"}
    asked = may_i("wales", outside, known, in_kitchen)
    assert asked.verdict == "depends"
    assert list(asked.missing[0].answers) == ["kitchen", "outdoors"]
    verdicts = [
        may_i("wales", outside, {**known, "place": place}, in_kitchen).verdict
        for place in ("kitchen", "outdoors")
    ]
    assert verdicts == ["notice", "no_notice"]
    by_bath = {"place": ("bath_zone",)}
    assert may_i("england", outside, known, by_bath).verdict == "depends"
    garden = {"place": ("elsewhere", "outdoors")}
    assert may_i("wales", outside, known, garden).verdict == "no_notice"


def test_every_question_turns_some_verdict_somewhere() -> None:
    turning = {
        question.code
        for job in JOBS.values()
        for nation in NATIONS
        for question in may_i(nation, job, {}).missing
    }
    assert turning == set(QUESTIONS)


jobs = st.sampled_from(sorted(JOBS))
nations = st.sampled_from(sorted(NATIONS))
answers = st.fixed_dictionaries(
    {},
    optional={
        code: st.sampled_from(sorted(q.answers)) for code, q in QUESTIONS.items()
    },
)


@given(jobs, nations, answers, answers)
def test_a_verdict_is_the_same_however_the_rest_is_answered(
    job: str, nation: Nation, known: dict[str, str], more: dict[str, str]
) -> None:
    first = may_i(nation, JOBS[job], known)
    later = may_i(nation, JOBS[job], {**more, **known})
    if first.missing:
        assert first.verdict == "depends"
        assert later.verdict in (*first.may_be, "depends")
    else:
        assert later.verdict == first.verdict
        assert first.verdict != "depends"


@given(jobs, nations, answers, answers, answers)
def test_what_is_only_narrowed_gives_no_verdict_that_an_answer_within_would_turn(
    job: str,
    nation: Nation,
    known: dict[str, str],
    one: dict[str, str],
    other: dict[str, str],
) -> None:
    within = {code: {one[code], other[code]} for code in one.keys() & other.keys()}
    first = may_i(nation, JOBS[job], known, within)
    inside = {
        code: answer
        for code, answer in one.items()
        if code in within and answer in JOBS[job].limits.get(code, within[code])
    }
    later = may_i(nation, JOBS[job], {**inside, **known}, within)
    if first.missing:
        assert first.verdict == "depends"
        assert len(first.may_be) > 1
        assert later.verdict in (*first.may_be, "depends")
    else:
        assert later.verdict == first.verdict


NETWORK_SIDE = sorted(
    code for code, job in JOBS.items() if job.sets.get("work") == "network_side"
)


@given(st.sampled_from([*NETWORK_SIDE, "something-else"]), nations, answers)
def test_nothing_allows_work_on_the_network_side(
    job: str, nation: Nation, known: dict[str, str]
) -> None:
    on_it = {**known, "work": "network_side"}
    answer = may_i(nation, JOBS[job], on_it)
    assert answer.verdict == "not_yours"
    assert allowed(JOBS[job], answer, on_it).sentence.startswith(
        "No. It belongs to the network"
    )
    assert "network" in answer.decides


def test_all_four_stand_side_by_side() -> None:
    four = side_by_side(JOBS["move-kitchen-socket"], {"new_circuit": "no"})
    assert [(column.title, column.answer.verdict) for column in four] == [
        ("England", "no_notice"),
        ("Wales", "notice"),
        ("Scotland, house of one or two storeys", "depends"),
        ("Scotland, flat or higher house", "depends"),
        ("Northern Ireland", "no_regime"),
    ]


def test_where_someone_has_to_be_told_there_is_a_way_of_telling() -> None:
    for job in JOBS.values():
        for nation, (rules, _) in NATIONS.items():
            answer = may_i(nation, job, {})
            told = {"notice", "warrant"} & set(answer.may_be)
            assert bool(answer.routes) == bool(told)
            assert rules.checked.year == 2026


@pytest.mark.parametrize(
    ("dwelling", "storeys", "building"),
    [
        ("flat", 1, "flat"),
        ("maisonette", None, "flat"),
        ("house", 2, "low_house"),
        ("house", 3, "high_house"),
        ("bungalow", None, "low_house"),
        ("house", None, None),
        ("other", 2, None),
        ("unknown", 2, None),
    ],
)
def test_the_building_comes_from_the_home(
    dwelling: str, storeys: int | None, building: str | None
) -> None:
    assert building_of(dwelling, storeys) == building


def test_what_comes_out_the_same_claims_nothing_that_is_not_known() -> None:
    fan = JOBS["bath-fan"]
    near = may_i("england", fan, {"place": "bath_zone"})
    assert (near.verdict, near.rule) == ("notice", "EN3 or EN4")
    assert "A new circuit is installed. Or: A circuit is added" in near.because
    wales = may_i("wales", fan, {})
    assert (wales.verdict, wales.rule) == ("notice", "WA10")
    assert "bathroom" in wales.because
    assert "a circuit is new" not in wales.because
    anywhere = may_i("wales", JOBS["floor-heating"], {})
    assert "special installation" in anywhere.because
    assert "kitchen" not in anywhere.because


def test_what_the_record_says_is_named_as_what_decided() -> None:
    known = {"place": "bath_zone", "new_circuit": "no"}
    found = may_i("england", JOBS["bath-fan"], known, {"place": ("bath_zone",)})
    words = QUESTIONS["place"].answers["bath_zone"]
    assert (QUESTIONS["place"].text, words) in found.decided_by
