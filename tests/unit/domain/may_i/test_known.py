"""What the record answers, what goes with an answer, and how a job is found."""

from __future__ import annotations

import pytest

from app.domain.may_i import (
    GROUPS,
    JOBS,
    NATIONS,
    allowed,
    isolation_work,
    jobs_found,
    known_of,
    left_to_others,
    may_i,
    others_to_ask,
)
from app.domain.may_i.groups import ALSO
from tests import builders as b


def test_a_room_says_the_place_and_the_home_the_rest() -> None:
    record = b.home(
        b.room("R1", kind="kitchen", name="Kitchen"),
        b.socket("P1", room="R1"),
        nation="scotland",
        dwelling="house",
        storeys=3,
    )
    for ref in ("R1", "P1"):
        found = known_of(record, ref)
        assert found.nation == "scotland"
        assert found.answers == {"building": "high_house", "place": "kitchen"}
        assert "Kitchen" in found.source["place"]
    assert "place" not in known_of(record, "nowhere").answers


def test_a_home_that_says_nothing_answers_nothing() -> None:
    found = known_of(b.home())
    assert (found.nation, found.answers, found.within) == (None, {}, {})


def test_a_bathroom_leaves_open_only_what_is_possible_there() -> None:
    record = b.home(b.room("R1", kind="bathroom", has_bath="yes"), nation="england")
    within = known_of(record, "R1").within
    settled = {"new_circuit": "no", "outdoor_wiring": "no"}
    found = may_i("england", JOBS["add-socket"], settled, within)
    assert found.verdict == "depends"
    assert [list(q.answers) for q in found.missing] == [
        ["bath_zone", "bathroom", "bath_void"]
    ]
    # In Wales the whole room counts, so nothing is left to ask.
    assert may_i("wales", JOBS["add-socket"], settled, within).rule == "WA10"


def test_what_is_possible_at_all_is_never_narrowed_to_nothing() -> None:
    fan = may_i("england", JOBS["bath-fan"], {}, {"place": ("kitchen",)})
    assert fan.verdict == "depends"
    assert list(fan.missing[0].answers) == ["bath_zone", "bathroom", "bath_void"]


def test_every_job_stands_in_one_group_and_can_be_found() -> None:
    listed = [code for codes in GROUPS.values() for code in codes]
    assert sorted(listed) == sorted(JOBS)
    assert set(ALSO) <= set(JOBS)
    for job in JOBS.values():
        found = [each for _, jobs in jobs_found(job.title) for each in jobs]
        assert job in found


@pytest.mark.parametrize(
    ("query", "code"),
    [("car", "vehicle-charger"), ("fuse box", "replace-board"), ("EV", None)],
)
def test_a_job_is_found_by_other_words(query: str, code: str | None) -> None:
    found = [job.code for _, jobs in jobs_found(query) for job in jobs]
    assert (code or "vehicle-charger") in found
    assert found[-1] == "something-else"
    assert len(found) < 12


def test_nothing_found_still_leaves_something_else() -> None:
    assert [g for g, _ in jobs_found("zzz")] == ["None of these"]


def test_whether_one_may_is_another_question_than_whom_to_tell() -> None:
    for nation in NATIONS:
        told = may_i(nation, JOBS["rewire"], {})
        assert allowed(told).sentence.startswith("Yes, on your side of the meter")
        assert allowed(told).basis
        theirs = may_i(nation, JOBS["supply-fuse"], {})
        assert allowed(theirs).sentence.startswith("No.")
        assert allowed(theirs).rule == theirs.rule


@pytest.mark.parametrize(
    ("nation", "dwelling", "tenure", "said"),
    [
        ("england", "flat", "owner", ["EN6", ""]),
        ("wales", "flat", "owner", [""]),
        ("england", "house", "owner", []),
        ("scotland", "house", "rents", [""]),
        ("northern_ireland", "house", "let", [""]),
    ],
)
def test_who_else_has_a_say(
    nation: str, dwelling: str, tenure: str, said: list[str]
) -> None:
    found = others_to_ask(nation, dwelling, tenure)  # type: ignore[arg-type]
    assert [each.rule for each in found] == said
    assert all(each.basis for each in found)


def test_a_let_home_names_the_rules_of_its_nation() -> None:
    bases = {others_to_ask(nation, "house", "let")[0].basis for nation in NATIONS}
    assert len(bases) == 4


def test_what_is_left_to_a_trade() -> None:
    assert "All of it" in left_to_others(JOBS["supply-fuse"], {})[0]
    assert (
        "All of it"
        in left_to_others(JOBS["something-else"], {"work": "network_side"})[0]
    )
    assert (
        "electrician" in left_to_others(JOBS["add-socket"], {"new_circuit": "yes"})[0]
    )
    assert "network" in left_to_others(JOBS["solar"], {})[1]
    for job in JOBS.values():
        assert left_to_others(job, {})


@pytest.mark.parametrize(
    ("code", "work"),
    [
        ("add-socket", "sockets"),
        ("replace-light", "lighting"),
        ("replace-shower", "any"),
        ("supply-fuse", ""),
        ("plug-or-fuse", ""),
    ],
)
def test_the_plan_for_switching_off_suits_the_job(code: str, work: str) -> None:
    assert isolation_work(JOBS[code], {}) == work
