"""What is not answered is not guessed; each turning question turns what it should."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.may_i import (
    JOBS,
    NATIONS,
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
            "england",
            "replace-bath-light",
            "new_cable",
            {"yes": "notice", "no": "no_notice"},
        ),
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
    assert allowed(answer).sentence.startswith("No. It belongs to the network")
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
