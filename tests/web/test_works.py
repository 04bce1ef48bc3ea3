"""Work: from plan to done to paper, and the doubt that it puts on what was known."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

import pytest

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


@pytest.mark.parametrize(
    ("job", "asked"),
    [("", False), ("rubbish", False), ("Add a socket to an existing circuit", True)],
)
def test_only_a_job_that_is_known_was_asked_about(
    here: CheckedClient, job: str, asked: bool
) -> None:
    here.save("/homes/H1/new/works", name="Socket moved", job=job)
    page = here.see(f"{LIST}W3/")
    assert ("Asked: may I?, not yet" in page.main) != asked
    assert ("rubbish" in page.main) == (job == "rubbish")


def test_a_later_look_lifts_the_doubt_of_work_without_a_day(
    here: CheckedClient, stored: Stored
) -> None:
    url = planned(here)
    after = here.save(f"{url}done", press="Write it down", done_on="")
    assert (stored().works[0].done_on, stored().works[0].done_before) == (None, TODAY)
    assert "Done no later than" in after.main
    assert "Look again, and write the new day." in after.main
    here.save("/homes/H1/ties/T-P1-C1-feeds/edit", seen_on=TODAY.isoformat())
    assert "puts a doubt" not in here.see(url).main
    here.save(f"{url}edit", done_before="")
    assert "or by when it was done" in here.see(url).main


def test_work_that_names_nothing_says_that_it_puts_no_doubt(
    here: CheckedClient,
) -> None:
    here.save("/homes/H1/new/works", name="Rewired", state="done")
    assert "It names nothing that it touched" in here.see(f"{LIST}W3/").main


def test_a_day_to_come_is_refused(here: CheckedClient) -> None:
    url = f"{planned(here)}done"
    tomorrow = (TODAY + timedelta(days=1)).isoformat()
    page = here.submit(url, press="Write it down", done_on=tomorrow, number="17")
    assert page.status == 422
    assert "still to come" in page.error("done_on")
    assert page.value("number", "Write it down") == "17"
    page = here.submit(url, press="Write it down", paper="minor_works", dated=tomorrow)
    assert page.error("dated") == "That day is still to come. Enter one that has come."
    assert page.value("dated", "Write it down") == tomorrow
    page = here.submit(url, press="Write it down", number="1" * 121)
    assert "at most" in page.error("number")


@pytest.mark.parametrize("typed", [{"number": "17"}, {"dated": "2026-03-01"}])
def test_what_is_typed_of_a_paper_is_never_dropped(
    here: CheckedClient, stored: Stored, typed: dict[str, str]
) -> None:
    url = f"{planned(here)}done"
    page = here.submit(url, typed, press="Write it down")
    assert page.status == 422
    assert "Choose what the paper is" in page.error("paper")
    (name,) = typed
    assert page.value(name, "Write it down") == typed[name]
    assert stored().works[0].state == "planned"
    here.go_on(here.submit_on(page, press="Write it down", paper="unknown"))
    (paper,) = stored().papers
    assert str(getattr(paper, name)) == typed[name]
    assert paper.work == "W3"


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
