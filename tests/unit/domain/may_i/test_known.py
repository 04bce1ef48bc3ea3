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
from app.domain.record import Record
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
        light = JOBS["replace-light"]
        told = may_i(nation, light, {})
        mine = allowed(light, told, {})
        assert mine.sentence.startswith("Yes, on your side of the meter")
        assert mine.basis
        fuse = JOBS["supply-fuse"]
        theirs = may_i(nation, fuse, {})
        assert allowed(fuse, theirs, {}).sentence.startswith("No.")
        assert allowed(fuse, theirs, {}).rule == theirs.rule


def sentence_of(code: str, home: Record | None = None, **answers: str) -> str:
    job = JOBS[code]
    found = allowed(
        job, may_i("england", job, answers), answers, home.home if home else None
    )
    assert found.basis
    return found.sentence


@pytest.mark.parametrize(
    "code", ["replace-board", "replace-breaker", "breaker-to-rcbo", "rcbo-in-spare-way"]
)
def test_what_an_electrician_should_do_is_not_headed_by_yes(code: str) -> None:
    assert sentence_of(code) == "No law forbids it, but it is an electrician's work."


def test_a_circuit_of_its_own_leaves_the_board_to_an_electrician() -> None:
    words = "No law forbids it, but the work at the board is an electrician's."
    assert sentence_of("rewire") == words
    assert sentence_of("replace-shower", bigger="yes") == words
    assert sentence_of("replace-shower", bigger="no").startswith("Yes")


def test_a_tenant_asks_first_and_the_shared_parts_of_a_flat_are_not_ones_own() -> None:
    rented = b.home(tenure="rents", dwelling="flat")
    said = sentence_of("replace-switch", rented, new_cable="no")
    assert said.startswith("Ask the landlord first, in writing. Yes, on your side")
    assert said.endswith("What the building shares is not yours to work on.")
    assert "landlord" in sentence_of("replace-board", rented)
    assert "landlord" not in sentence_of("plug-or-fuse", rented)
    assert "landlord" not in sentence_of("supply-fuse", rented)
    own = sentence_of("replace-switch", b.home(tenure="owner", dwelling="house"))
    assert own.startswith("Yes")
    assert "shares" not in own


@pytest.mark.parametrize("code", ["add-socket", "add-spur", "replace-socket"])
def test_a_socket_is_kept_from_the_water(code: str) -> None:
    cable = {"new_cable": "yes"} if code == "replace-socket" else {}
    assert sentence_of(code, None, **cable, place="bath_zone").startswith("Not there: ")
    far = sentence_of(code, None, **cable, place="bathroom")
    assert far.startswith("A socket only at least 2.5 m from the edge of zone 1")
    assert sentence_of(code, None, **cable, place="elsewhere").startswith("Yes")


def cares_of(code: str, **answers: str) -> str:
    return " ".join(may_i("england", JOBS[code], answers).cares)


@pytest.mark.parametrize("code", ["add-socket", "add-spur", "replace-socket"])
def test_a_socket_in_a_bathroom_is_warned_of_by_clause(code: str) -> None:
    for known in ({}, {"place": "bathroom"}, {"place": "bath_zone"}):
        said = cares_of(code, **known)
        assert "no 230 V socket may be within 2.5 m of the edge of zone 1" in said
        assert "701.512.3" in said
        assert "701.411.3.3" in said
        assert "411.3.3)" in said
    dry = cares_of(code, place="kitchen")
    assert "701" not in dry
    assert "up to 32 A needs a 30 mA RCD" in dry
    outdoors = cares_of(code, place="outdoors")
    assert outdoors.startswith("Outdoors it needs a 30 mA RCD")
    assert "32 A" not in outdoors


def test_what_suits_a_bathroom_is_said_of_what_goes_there_only() -> None:
    assert "701.512.3" in cares_of("replace-switch", place="bathroom")
    assert "701" not in cares_of("replace-switch", place="elsewhere")
    assert "socket" not in cares_of("something-else", work="add", thing="other")
    in_bathroom = {"place": ("bath_zone", "bathroom")}
    smart = may_i("wales", JOBS["smart-switch"], {}, in_bathroom)
    assert "no wall switch" in smart.cares[0]
    kitchen = may_i("wales", JOBS["smart-switch"], {}, {"place": ("kitchen",)})
    assert len(kitchen.cares) == 1


@pytest.mark.parametrize(
    ("nation", "dwelling", "tenure", "said"),
    [
        ("england", "flat", "owner", ["EN6", ""]),
        ("wales", "flat", "owner", [""]),
        ("england", "house", "owner", []),
        ("scotland", "house", "rents", []),
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
