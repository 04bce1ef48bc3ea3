"""Work: from plan to done to paper, and the doubt that it puts on what was known."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from app.domain.record import Record
from tests.pages import CheckedClient

Stored = Callable[..., Record]
LIST = "/homes/H1/works/"
TODAY = date.today()  # noqa: DTZ011


def planned(here: CheckedClient) -> str:
    here.save("/homes/H1/new/works", name="Socket moved", about_1="P1")
    return f"{LIST}W3/"


def test_an_empty_list_says_what_it_is_for(here: CheckedClient) -> None:
    page = here.see(LIST)
    assert "No work is written down yet." in page.main
    assert "Write down work" in page.links


def test_from_plan_to_done_to_paper(here: CheckedClient, stored: Stored) -> None:
    url = planned(here)
    page = here.see(url)
    assert page.links["What to switch off for it"].endswith("isolate/plan?ref=P1")
    after = here.save(
        f"{url}done",
        press="Write it down",
        done_by="registered",
        told="yes",
        paper="minor_works",
        number="17",
    )
    assert after.undo == "Done: Socket moved (W3)."
    (work,), (paper,) = stored().works, stored().papers
    assert (work.state, work.done_on, work.told) == ("done", TODAY, "yes")
    assert (paper.kind, paper.work, paper.about) == ("minor_works", "W3", ("P1",))
    assert "It puts a doubt on 1 tie" in after.main
    assert "work since" in here.see("/homes/H1/points/P1/").main
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored().papers == ()


def test_a_day_to_come_is_refused(here: CheckedClient) -> None:
    url = f"{planned(here)}done"
    tomorrow = (TODAY + timedelta(days=1)).isoformat()
    page = here.submit(url, press="Write it down", done_on=tomorrow, number="17")
    assert page.status == 422
    assert "still to come" in page.error("done_on")
    assert page.value("number", "Write it down") == "17"
    page = here.submit(url, press="Write it down", number="1" * 121)
    assert "at most" in page.error("number")


def test_work_changed_meanwhile_is_not_ended_unseen(
    here: CheckedClient, stored: Stored
) -> None:
    url = planned(here)
    old = here.see(f"{url}done")
    here.save(f"{url.removesuffix('/')}/edit", note="Wait.")
    page = here.submit_on(old, press="Write it down", told="no")
    assert page.status == 409
    assert "It was changed since this page was shown." in page.main
    assert stored().works[0].state == "planned"


def test_what_the_plan_for_switching_off_cannot_take_is_said(
    here: CheckedClient,
) -> None:
    here.save("/homes/H1/new/works", name="New way", about_1="W1", about_2="MET")
    page = here.see(f"{LIST}W3/")
    plan = page.links["What to switch off for it"]
    assert plan.endswith("isolate/plan?ref=B1")
    assert here.see(plan).status == 200
    assert "for the whole board of" in page.main
    assert "No plan for switching off covers Meter" in page.main


def test_there_is_no_plan_for_what_none_can_be_made_for(here: CheckedClient) -> None:
    here.save("/homes/H1/new/works", name="New meter", about_1="MET")
    assert "What to switch off for it" not in here.see(f"{LIST}W3/").links


def test_work_that_is_not_there_is_not_found(here: CheckedClient) -> None:
    assert here.see(f"{LIST}W9/", 404).h1
