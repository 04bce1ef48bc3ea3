"""May I?: from a job to an answer, with its questions, its rule, and a plan."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.may_i import JOBS
from app.domain.record import Record
from tests import builders as b
from tests.pages import CheckedClient, values_of

Keep = Callable[[Record], int]
Stored = Callable[..., Record]
FAN = "/homes/H1/may-i/bath-fan/"


@pytest.fixture
def bathroom(keep: Keep) -> Callable[..., None]:
    """Keep a home with a bathroom, of which a nation may be known."""

    def with_facts(**facts: object) -> None:
        bath = b.room(
            "R1", name="Bathroom", kind="bathroom", has_bath="yes", has_shower="no"
        )
        fan = b.point(
            "P1",
            kind="extractor",
            room="R1",
            from_bath_m="0.4",
            height_m="2.1",
        )
        far = b.point("P2", kind="shaver_unit", room="R1", from_bath_m="1.5")
        keep(b.home(bath, fan, far, **facts))

    return with_facts


def test_every_job_is_listed_and_found_by_a_word(here: CheckedClient) -> None:
    page = here.see("/homes/H1/may-i/")
    assert {job.title for job in JOBS.values()} <= set(page.links)
    found = here.see("/homes/H1/may-i/?q=car")
    assert "Vehicle charge point" in found.links
    assert "Replace a socket" not in found.links
    assert "Something else" in found.links
    assert "No job of the list holds" in here.see("/homes/H1/may-i/?q=zzz").main


def test_nothing_is_said_before_the_nation_is_known(here: CheckedClient) -> None:
    page = here.see(FAN)
    assert "Nothing can be said before the nation is known" in page.main
    assert "No one has to be told" not in page.main
    assert "/homes/H1/edit" in page.links.values()
    answered = here.see(f"{FAN}?nation=wales")
    assert "By the rules of Wales." in answered.main


def test_a_bathroom_fan_differs_between_wales_and_england(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    query = "?at=P2&new_circuit=no"
    england = visitor.see(f"{FAN}{query}")
    assert "No one has to be told" in england.main
    assert "EN5" in england.main
    wales = visitor.see(f"{FAN}{query}&nation=wales")
    assert "Building control has to be told" in wales.main
    assert "WA10" in wales.main


def test_the_record_says_how_close_to_the_bath(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    near = visitor.see(f"{FAN}?at=P1&new_circuit=no")
    assert "EN4" in near.main
    assert "by the record: Extractor" in near.main
    open_one = visitor.see(f"{FAN}?at=R1&new_circuit=no")
    assert "It depends" in open_one.main
    choices = [
        e.get("value") for e in open_one.all("input") if e.get("type") == "radio"
    ]
    assert choices == ["bath_zone", "bathroom", "bath_void"]


def test_what_a_person_says_goes_before_the_record(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    page = visitor.see("/homes/H1/may-i/add-socket/?at=P2&place=kitchen&new_circuit=no")
    assert "Kitchen, or the part of a room" in page.main
    assert "by the record" not in page.main


def test_a_cable_mended_with_new_cable_in_a_bathroom_is_asked_how_near_the_water(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    url = "/homes/H1/may-i/repair-cable/?new_cable=yes"
    room = visitor.see(f"{url}&at=R1")
    assert "outside a special location" not in room.main
    assert "Where is it?" in room.main
    assert "EN4" in visitor.see(f"{url}&at=P1").main
    page = visitor.see("/homes/H1/may-i/shed-socket/?at=P1&new_circuit=no")
    choices = [e.get("value") for e in page.all("input") if e.get("type") == "radio"]
    assert choices == ["bath_zone", "outbuilding"]
    answered = visitor.see(
        "/homes/H1/may-i/shed-socket/?at=P1&new_circuit=no&place=outbuilding"
    )
    assert "In a detached shed, garage or greenhouse" in answered.main


def test_open_questions_are_asked_with_their_why_and_answered_by_the_form(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    page = visitor.see(f"{FAN}?at=P2")
    assert "It depends" in page.main
    assert "No one has to be told; or: Building control has to be told" in page.main
    assert "one circuit made into two" in page.main
    (form,) = [f for f in page.all("form") if f.get("class") == "turning"]
    assert (form.get("method"), form.get("action")) == ("get", FAN)
    assert values_of(form) == {"at": ["P2"]}
    answered = visitor.see(f"{FAN}?at=P2&new_circuit=yes")
    assert "EN3" in answered.main
    assert f"{FAN}?at=P2" in answered.links.values()


def test_something_else_asks_first_what_is_done(here: CheckedClient) -> None:
    page = here.see("/homes/H1/may-i/something-else/?nation=wales")
    names = {e.get("name") for e in page.all("input") if e.get("type") == "radio"}
    assert names == {"work"}
    then = here.see("/homes/H1/may-i/something-else/?nation=wales&work=plug_in")
    assert "WA1" in then.main


@pytest.mark.parametrize("nation", ["england", "wales", "scotland"])
def test_an_answer_shows_rule_source_day_and_who_decides(
    here: CheckedClient, nation: str
) -> None:
    page = here.see(f"/homes/H1/may-i/new-shower/?nation={nation}&building=low_house")
    assert "ooked up on 25 November 2026" in page.main
    assert "decides, not this record" in page.main
    assert "Not looked up" in page.main
    assert "the work at the board is an electrician's" in page.main
    assert "BS 7671" in page.main


def test_what_is_not_yours_leads_to_whom_to_call(here: CheckedClient) -> None:
    page = here.see("/homes/H1/may-i/supply-fuse/?nation=wales")
    assert "Not yours to do" in page.main
    assert "Yes, on your side" not in page.main
    assert "/homes/H1/call/" in page.links.values()
    assert not [to for to in page.links.values() if "isolate/plan" in to]


def test_an_answer_leads_to_what_to_switch_off(here: CheckedClient) -> None:
    page = here.see("/homes/H1/may-i/replace-light/?nation=england&at=P2&new_cable=no")
    links = page.links.values()
    assert "/homes/H1/isolate/plan?ref=P2&job=lighting" in links
    here.see("/homes/H1/isolate/plan?ref=P2&job=lighting")


def test_all_four_nations_and_both_scottish_buildings_stand_side_by_side(
    here: CheckedClient,
) -> None:
    page = here.see(
        "/homes/H1/may-i/rewire/nations?separating_wall=no&building_change=no"
    )
    rows = [" ".join(" ".join(r.itertext()).split()) for r in page.all("tr")][1:]
    assert len(rows) == 5
    for row, rule in zip(rows, ("EN3", "WA10", "SC3", "SC4", "NI1"), strict=True):
        assert rule in row
        assert "looked up on 25 November 2026" in row
    flat = page.links["Scotland, flat or higher house"]
    assert "SC4" in here.see(flat).main


def test_a_flat_in_a_high_building_names_its_rule(
    keep: Keep, visitor: CheckedClient
) -> None:
    keep(b.home(nation="england", dwelling="flat", tenure="rents"))
    page = visitor.see("/homes/H1/may-i/replace-socket/?new_cable=no")
    assert "EN6" in page.main
    assert "Ask the landlord first, in writing. Yes, on your side" in page.main
    assert "What the building shares is not yours" in page.main


def test_work_is_planned_with_the_answer_as_it_stood_and_can_be_undone(
    visitor: CheckedClient, bathroom: Callable[..., None], stored: Stored
) -> None:
    bathroom(nation="wales")
    url = f"{FAN}?at=P1&new_circuit=no"
    page = visitor.save(url, press="Plan this work")
    (work,) = stored().works
    assert (work.state, work.about, work.told) == ("planned", ("P1",), "no")
    assert work.job == "Add an extractor fan in a bathroom"
    assert work.name == "Add an extractor fan in a bathroom: Extractor fan"
    assert "by the rules of Wales as looked up on 25 November 2026" in work.note
    assert "Building control has to be told (rule WA10)" in work.note
    assert page.h1 == work.name
    assert "Planned already: Add an extractor fan" in visitor.see(url).main
    visitor.go_on(visitor.submit_on(page, press="Undo"))
    assert stored().works == ()


def test_a_plan_that_is_sent_twice_counts_once(
    visitor: CheckedClient, bathroom: Callable[..., None], stored: Stored
) -> None:
    bathroom(nation="england")
    page = visitor.see(f"{FAN}?at=P1&new_circuit=no")
    for _ in range(2):
        sent = visitor.submit_on(page, press="Plan this work")
        assert visitor.go_on(sent).h1 == stored().works[0].name
    assert len(stored().works) == 1
    visitor.save(f"{FAN}?at=P1&new_circuit=no", press="Plan this work")
    assert len(stored().works) == 2


def test_planned_work_leads_back_to_what_was_asked(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="wales")
    page = visitor.save(f"{FAN}?at=P1&new_circuit=no", press="Plan this work")
    asked = [to for to in page.links.values() if "bath-fan" in to]
    assert asked == [f"{FAN}?at=P1"]


def test_work_can_be_planned_while_it_depends(
    visitor: CheckedClient, bathroom: Callable[..., None], stored: Stored
) -> None:
    bathroom(nation="england")
    visitor.save(FAN, press="Plan this work")
    (work,) = stored().works
    assert (work.about, work.told) == ((), "unknown")
    assert "It depends. It turns on what is not said yet" in work.note


def test_nothing_is_planned_without_a_nation(
    here: CheckedClient, stored: Stored
) -> None:
    sent = here.send(f"{FAN}plan", {"once": "x"})
    assert sent.status == 422
    assert stored().works == ()


@pytest.mark.parametrize(
    "query", ["?nation=atlantis", "?place=nowhere&nation=england", "?at=ZZ"]
)
def test_what_makes_no_sense_in_an_address_is_left_out(
    here: CheckedClient, query: str
) -> None:
    page = here.see(f"{FAN}{query}")
    assert "nowhere" not in page.main
    here.see("/homes/H1/may-i/no-such-job/", 404)


def test_a_point_leads_to_the_jobs_and_is_what_they_are_about(
    visitor: CheckedClient, bathroom: Callable[..., None]
) -> None:
    bathroom(nation="england")
    page = visitor.see("/homes/H1/points/P1/")
    jobs = visitor.see(
        next(to for to in page.links.values() if "may-i" in to and "at=" in to)
    )
    assert "About: Extractor fan" in jobs.main
    answer = visitor.see(jobs.links["Add an extractor fan in a bathroom"])
    assert "Close to a bath or shower by the record" in answer.main
