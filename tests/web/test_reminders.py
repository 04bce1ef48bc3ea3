"""Reminders: done in one press, on another day, failed; the file for a calendar."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from icalendar import Calendar

from app.domain.record import Device, Paper, Record
from tests import builders as b
from tests.pages import CheckedClient

Stored = Callable[..., Record]
LIST = "/homes/H1/reminders/"
NEW = "/homes/H1/new/reminders"
TODAY = date.today()  # noqa: DTZ011


def test_a_press_says_that_it_was_done_today_and_can_be_undone(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.see(LIST)
    assert "No day is known" in page.main
    after = here.save(LIST, press="It tripped today: Press the test button, RCD RCD")
    assert "Press the test button: RCD" in after.undo
    rcd = stored().find(Device, "RCD")
    assert rcd is not None
    assert rcd.button_pressed_on == TODAY
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_one_that_failed_says_whom_to_call(here: CheckedClient) -> None:
    url = f"{LIST}rcd_button.RCD/done"
    after = here.save(
        url, press="Write it down", on=TODAY.isoformat(), outcome="failed"
    )
    assert "Call an electrician" in after.main


def test_a_day_to_come_is_refused_and_kept(here: CheckedClient) -> None:
    tomorrow = (TODAY + timedelta(days=1)).isoformat()
    url = f"{LIST}rcd_button.RCD/done"
    page = here.submit(url, press="Write it down", on=tomorrow, note="Loud.")
    assert page.status == 422
    assert "still to come" in page.error("on")
    assert page.value("on", "Write it down") == tomorrow
    assert page.value("note", "Write it down") == "Loud."
    page = here.submit(url, press="Write it down", note="x" * 4001)
    assert page.error("note") == "Enter 4000 characters at most."
    assert len(page.value("note", "Write it down")) == 4001
    page = here.submit(url, press="Write it down", on="soon")
    assert "Enter a day" in page.error("on")


def test_sent_twice_it_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = here.see(LIST)
    press = "It tripped today: Press the test button, RCD RCD"
    here.submit_on(page, press=press)
    here.submit_on(page, press=press)
    assert len(stored().occasions) == 1


def test_the_same_press_for_another_thing_counts_too(
    here: CheckedClient, stored: Stored
) -> None:
    here.save(LIST, press="It tripped today: Press the test button, RCD RCD")
    form = {"on": TODAY.isoformat(), "outcome": "in_order"}
    here.save(f"{LIST}inspection/done", form, press="Write it down")
    assert {o.kind for o in stored().occasions} == {"rcd_button", "inspection"}


INSPECTION = f"{LIST}inspection/done"


def test_an_inspection_says_what_its_report_asks_for_and_names_the_next(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.see(LIST)
    assert "Write down what the report says: Have the installation inspected" in (
        page.links
    )
    form = here.see(INSPECTION)
    assert "It worked" not in form.main
    assert "Next inspection recommended by" in form.main
    assert "Next inspection" not in here.see(f"{LIST}rcd_button.RCD/done").main
    typed = {"on": "2024-06-01", "outcome": "in_order", "again_by": "2029-06-01"}
    after = here.save(INSPECTION, typed, press="Write it down")
    assert "asks for nothing to be put right" in after.undo
    assert "Last done on 1 June 2024. Recommended by 1 June 2029." in after.main
    home = stored().home
    assert (home.inspected_on, home.inspect_again_by) == (
        date(2024, 6, 1),
        date(2029, 6, 1),
    )
    facts = here.see("/homes/H1/").main
    assert "Last inspection report 1 June 2024" in facts
    assert "Next inspection recommended by 1 June 2029" in facts
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_a_paper_that_is_the_later_report_is_what_the_home_shows(
    here: CheckedClient,
) -> None:
    typed = {"on": "2024-06-01", "outcome": "in_order"}
    here.save(INSPECTION, typed, press="Write it down")
    paper = {"kind": "condition_report", "dated": "2025-07-01"}
    here.save("/homes/H1/new/papers", paper, inspect_again_by="2028-07-01")
    assert "Last inspection report 1 July 2025" in here.see("/homes/H1/").main
    said = "Last done on 1 July 2025. Recommended by 1 July 2028."
    assert said in here.see(LIST).main
    older = {**typed, "again_by": "2029-06-01"}
    page = here.submit(INSPECTION, older, press="Write it down")
    assert page.status == 422
    assert "A later report, of 1 July 2025" in page.error("again_by")
    assert page.value("again_by", "Write it down") == "2029-06-01"


def test_a_report_that_asks_for_something_stays_on_top_until_work_is_done(
    here: CheckedClient,
) -> None:
    typed = {"on": "2026-06-01", "outcome": "put_right", "again_by": "2031-06-01"}
    after = here.save(INSPECTION, typed, press="Write it down")
    said = "The report of 1 June 2026 asks for something to be put right"
    assert f"Now Have the installation inspected {said}" in after.main
    assert "it did not work" not in after.main.lower()
    work = {"name": "What the report asked for", "state": "done"}
    here.save("/homes/H1/new/works", work, done_on="2026-06-20")
    page = here.see(LIST)
    assert said not in page.main
    assert "Last done on 1 June 2026. Recommended by 1 June 2031." in page.main


def test_what_cannot_be_of_an_inspection_is_refused_and_kept(
    here: CheckedClient,
) -> None:
    typed = {"on": "2024-06-01", "again_by": "2023-06-01", "note": "Blue paper."}
    page = here.submit(INSPECTION, typed, press="Write it down")
    assert page.status == 422
    assert page.error("again_by") == "That day is before 1 June 2024."
    assert page.error("outcome") == "Say how it went."
    kept = {name: page.value(name, "Write it down") for name in typed}
    assert kept == typed


def test_a_day_to_come_of_a_document_is_said_and_put_right(
    keep: Callable[[Record], int], visitor: CheckedClient
) -> None:
    to_come = date(2199, 5, 3)
    paper = Paper(ref="Q1", kind="condition_report", dated=to_come)
    keep(b.home(nation="england", tenure="owner").having(papers=(paper,)))
    said = "3 May 2199 is written down, a day still to come: it counts as no day."
    assert f"No day is known. {said}" in visitor.see(LIST).main
    home = visitor.see("/homes/H1/")
    assert "Last inspection report 3 May 2199" not in home.main
    page = visitor.see(home.links["Put right what cannot be as written"])
    assert "3 May 2199 as “its date”, a day that is still to come" in page.main
    visitor.save("/homes/H1/papers/Q1/edit", dated="2024-05-03")
    assert "still to come" not in visitor.see("/homes/H1/open-questions/").main
    assert "Last done on 3 May 2024." in visitor.see(LIST).main


def test_an_alarm_that_did_not_work_goes_before_all_else(
    here: CheckedClient,
) -> None:
    here.save("/homes/H1/new/points?kind=smoke_alarm", kind="smoke_alarm")
    failed = {"on": TODAY.isoformat(), "outcome": "failed"}
    here.save(f"{LIST}rcd_button.RCD/done", failed, press="Write it down")
    step = "Call an electrician: the test button of RCD RCD failed"
    assert step in here.see("/homes/H1/").links
    after = here.save(f"{LIST}alarm_test/done", failed, press="Write it down")
    assert "Nobody may be woken: replace it or have it mended today." in after.main
    step = "Replace the alarm that did not work, or have it mended today"
    assert here.see("/homes/H1/").links[step] == LIST
    assert step in here.see("/homes/").main


def test_a_day_of_ones_own_is_set_from_the_list(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see(LIST)
    label = "Set another day, or switch it off: Press the test button, RCD RCD"
    here.save(page.links[label], next_on="2030-01-02")
    (reminder,) = stored().reminders
    assert (reminder.kind, reminder.about) == ("rcd_button", "RCD")
    assert "Next on 2 January 2030." in here.see(LIST).main


def test_a_reminder_of_ones_own_stands_in_the_list_and_nothing_of_it_fails(
    here: CheckedClient, stored: Stored
) -> None:
    after = here.save(NEW, name="Check the outdoor socket", next_on="2026-01-02")
    assert (after.h1, after.undo) == (
        "Reminders",
        "Added reminder Check the outdoor socket (E1).",
    )
    done = next(to for text, to in after.links.items() if text.startswith("Another"))
    assert not [text for text in after.links if "failed: Check" in text]
    page = here.see(done)
    assert "It did not work" not in page.main
    earlier = (TODAY - timedelta(days=3)).isoformat()
    here.go_on(here.submit_on(page, {"on": earlier}, press="Write it down"))
    (time,) = stored().occasions
    assert (time.reminder, time.outcome) == ("E1", "done")


def test_a_reminder_of_nothing_asks_for_words(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.submit(NEW, next_on="2030-01-02")
    assert (page.status, page.error("name")) == (422, "Enter what to do.")
    assert page.value("next_on") == "2030-01-02"
    assert stored().reminders == ()


@pytest.mark.parametrize(
    ("about", "what"), [("R1", "room"), ("C1", "circuit"), ("GRID", "source")]
)
def test_a_button_is_asked_for_where_there_can_be_one(
    here: CheckedClient, stored: Stored, about: str, what: str
) -> None:
    page = here.submit(NEW, kind="rcd_button", about=about)
    assert page.status == 422
    sentence = f"A {what} has no test button. Choose the RCD that has it."
    assert page.error("about") == sentence
    assert stored().reminders == ()
    for fit in ("RCD", "B1", ""):
        here.save(NEW, kind="rcd_button", about=fit)


def test_what_is_not_there_is_not_found(here: CheckedClient) -> None:
    assert here.see(f"{LIST}rcd_button.W1/done", 404).h1


def test_the_file_for_a_calendar(here: CheckedClient) -> None:
    hostile = "Look; behind,\\ it BEGIN:VALARM"
    here.save("/homes/H1/new/reminders", name=hostile, next_on="2030-01-31", every="6")
    answer = here.get(f"{LIST}calendar.ics")
    assert answer.mimetype == "text/calendar"
    calendar = Calendar.from_ical(answer.get_data())
    (event,) = calendar.walk("VEVENT")
    assert str(event["summary"]).startswith(hostile)
    assert event.decoded("dtstart") == date(2030, 1, 31)
    # On the 31st, and in a month without one on its last day.
    assert event["rrule"].to_ical() == (
        b"FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=28,29,30,31;BYSETPOS=-1"
    )
    assert len(event.walk("VALARM")) == 1
