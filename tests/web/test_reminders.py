"""Reminders: done in one press, on another day, failed; the file for a calendar."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from icalendar import Calendar

from app.domain.record import Device, Record
from tests.pages import CheckedClient

Stored = Callable[..., Record]
LIST = "/homes/H1/reminders/"
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
    form = {"on": TODAY.isoformat(), "outcome": "worked"}
    here.save(f"{LIST}inspection/done", form, press="Write it down")
    assert {o.kind for o in stored().occasions} == {"rcd_button", "inspection"}


def test_a_day_of_ones_own_is_set_from_the_list(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see(LIST)
    label = "Set another day, or switch it off: Press the test button, RCD RCD"
    here.save(page.links[label], next_on="2030-01-02")
    (reminder,) = stored().reminders
    assert (reminder.kind, reminder.about) == ("rcd_button", "RCD")
    assert "Next on 2 January 2030." in here.see(LIST).main


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
