"""What is to be done again: its day, its state, and what doing it changes.

The six months of a test button are BS 7671:2018+A2:2022, 514.12.2 (from memory); five
years for a home that is let are SI 2020/312 and its like in the other nations.
"""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from app.domain.days import later
from app.domain.faults import faults
from app.domain.record import Device, Occasion, Paper, Record, Reminder, Work
from app.domain.remarks import remarks
from app.domain.reminders import Due, done, dues
from app.domain.reported import home_as_reported
from tests.builders import board, device, home, point, street

TODAY = date(2026, 11, 25)


def house(**fields: Any) -> Record:
    rcd = device("RCD", kind="rcd", residual_current_ma=30, **fields)
    alarm = point("P1", kind="smoke_alarm")
    return home(street(board("B1", rcd)), alarm, tenure="owner", nation="england")


def of(record: Record, key: str, today: date = TODAY) -> Due:
    (found,) = [due for due in dues(record, today) if due.key == key]
    return found


def report(ref: str, dated: date | None, again_by: date | None) -> Paper:
    kind = "condition_report"
    return Paper(ref=ref, kind=kind, dated=dated, inspect_again_by=again_by)


@pytest.mark.parametrize(
    ("start", "number", "unit", "expected"),
    [
        (date(2026, 8, 31), 6, "month", date(2027, 2, 28)),
        (date(2027, 8, 31), 6, "month", date(2028, 2, 29)),
        (date(2024, 2, 29), 1, "year", date(2025, 2, 28)),
        (date(2026, 12, 25), 1, "week", date(2027, 1, 1)),
        (date(2026, 12, 31), 1, "day", date(2027, 1, 1)),
        (date(9999, 12, 1), 50, "day", date.max),
        (date(9999, 12, 1), 2, "month", date.max),
    ],
)
def test_days_later(start: date, number: int, unit: str, expected: date) -> None:
    assert later(start, number, unit) == expected


def test_a_button_without_a_day_asks_for_one() -> None:
    due = of(house(), "rcd_button.RCD")
    assert (due.state, due.next_on, due.says) == ("no_day", None, "No day is known.")


def test_a_button_comes_after_six_months() -> None:
    due = of(house(button_pressed_on=date(2026, 6, 1)), "rcd_button.RCD")
    assert (due.state, due.next_on) == ("later", date(2026, 12, 1))
    assert "514.12.2" in due.basis


TO_COME, LATER_STILL = date(2031, 5, 3), date(2036, 5, 3)
DAY_TO_COME: dict[str, tuple[Record, str, date | None]] = {
    "button on the device": (
        house(button_pressed_on=TO_COME),
        "rcd_button.RCD",
        None,
    ),
    "button pressed": (
        house(button_pressed_on=date(2026, 1, 1)).having(
            occasions=(
                Occasion(
                    ref="O1",
                    kind="rcd_button",
                    about="RCD",
                    done_on=TO_COME,
                    outcome="worked",
                ),
            )
        ),
        "rcd_button.RCD",
        date(2026, 1, 1),
    ),
    "inspection of the home": (
        home(tenure="owner", inspected_on=TO_COME, inspect_again_by=LATER_STILL),
        "inspection",
        None,
    ),
    "report": (
        home(tenure="owner", inspected_on=date(2014, 6, 1)).having(
            papers=(report("Q1", TO_COME, LATER_STILL),)
        ),
        "inspection",
        date(2014, 6, 1),
    ),
    "alarm": (
        house().having(
            occasions=(
                Occasion(
                    ref="O1", kind="alarm_test", done_on=TO_COME, outcome="worked"
                ),
            )
        ),
        "alarm_test",
        None,
    ),
}


@pytest.mark.parametrize("case", DAY_TO_COME)
def test_a_day_to_come_silences_nothing_and_is_said(case: str) -> None:
    record, key, last_on = DAY_TO_COME[case]
    due = of(record, key)
    assert due.last_on == last_on
    assert due.state == ("now" if last_on else "no_day")
    assert "3 May 2031 is written down, a day still to come" in due.says
    (fault,) = [f for f in faults(record, TODAY) if f.code == "day_to_come"]
    assert fault.wrong
    assert "3 May 2031" in fault.sentence
    codes = {r.code for r in remarks(record, TODAY) if r.outcome == "remark"}
    assert "record-contradicts-itself" in codes
    # On the day itself it counts.
    assert of(record, key, TO_COME).last_on == TO_COME
    assert "still to come" not in of(record, key, TO_COME).says
    assert not [f for f in faults(record, TO_COME) if f.code == "day_to_come"]


def test_what_did_not_work_is_hidden_by_no_slip_of_a_clock() -> None:
    failed = Occasion(ref="O1", kind="alarm_test", done_on=TO_COME, outcome="failed")
    due = of(house().having(occasions=(failed,)), "alarm_test")
    assert (due.state, due.failed_on) == ("now", TODAY)


def test_a_report_that_asks_for_something_is_a_report_all_the_same() -> None:
    record = home(tenure="owner", inspected_on=date(2014, 6, 1))
    asked, day = of(record, "inspection"), date(2026, 6, 1)
    after = done(record, asked, day, "put_right", again_by=date(2027, 6, 1))
    due = of(after, "inspection")
    assert (due.state, due.last_on, due.next_on) == ("now", day, date(2027, 6, 1))
    assert due.put_right_since == day
    assert "call an electrician" in due.says
    assert after.home.inspect_again_by == date(2027, 6, 1)


@pytest.mark.parametrize(
    "since",
    [
        {"works": (Work(ref="W9", name="A", state="done", done_on=date(2026, 6, 1)),)},
        {"papers": (Paper(ref="Q1", kind="minor_works", dated=date(2026, 7, 1)),)},
        {"papers": (report("Q1", date(2026, 7, 1), None),)},
    ],
)
def test_work_or_a_later_report_ends_what_is_to_be_put_right(
    since: dict[str, Any],
) -> None:
    record = home(tenure="owner")
    after = done(record, of(record, "inspection"), date(2026, 6, 1), "put_right")
    assert of(after, "inspection").state == "now"
    assert of(after.having(**since), "inspection").put_right_since is None
    before = Work(ref="W9", name="A", state="done", done_on=date(2026, 5, 1))
    assert of(after.having(works=(before,)), "inspection").put_right_since


def test_an_older_report_written_down_later_leaves_the_home_as_it_is() -> None:
    record = home(inspected_on=date(2024, 6, 1), inspect_again_by=date(2029, 6, 1))
    due = of(record, "inspection")
    assert done(record, due, date(2014, 6, 1), "in_order").home == record.home


def test_a_home_shows_the_latest_report_wherever_it_stands() -> None:
    record = home(tenure="owner", inspected_on=date(2014, 6, 1))
    record = record.having(papers=(report("Q1", date(2025, 7, 1), None),))
    shown = home_as_reported(record, TODAY)
    assert (shown.inspected_on, shown.inspect_again_by) == (
        date(2025, 7, 1),
        date(2035, 7, 1),
    )


def test_an_alarm_that_did_not_work_may_wake_nobody() -> None:
    record = house()
    failed = done(record, of(record, "alarm_test"), TODAY, "failed")
    says = of(failed, "alarm_test").says
    assert says.startswith("On 25 November 2026 it did not work. Nobody may be woken")
    assert "Nobody" not in of(record, "alarm_test").says


def test_what_stands_on_the_device_goes_before() -> None:
    record = house(button_pressed_on=date(2026, 6, 1), button_every_months=3)
    due = of(record, "rcd_button.RCD")
    assert (due.state, due.next_on) == ("now", date(2026, 9, 1))


def test_pressing_it_writes_the_day_on_the_device() -> None:
    record = house()
    after = done(record, of(record, "rcd_button.RCD"), TODAY, "worked", "Loud.")
    assert after.find(Device, "RCD").button_pressed_on == TODAY  # type: ignore[union-attr]
    assert [(o.outcome, o.note) for o in after.occasions] == [("worked", "Loud.")]
    assert of(after, "rcd_button.RCD").next_on == date(2027, 5, 25)


def test_one_that_did_not_trip_stays_on_top_and_is_no_last_time() -> None:
    record = house(button_pressed_on=date(2026, 11, 1))
    after = done(record, of(record, "rcd_button.RCD"), TODAY, "failed")
    assert after.find(Device, "RCD").button_pressed_on == date(2026, 11, 1)  # type: ignore[union-attr]
    due = dues(after, TODAY)[0]
    assert (due.key, due.state) == ("rcd_button.RCD", "now")
    assert "Call an electrician" in due.says
    mended = done(after, due, TODAY.replace(day=26), "worked")
    tomorrow = TODAY.replace(day=26)
    assert of(mended, "rcd_button.RCD", tomorrow).state == "later"


def test_alarms_are_tested_together_and_replaced_one_by_one() -> None:
    record = house()
    keys = {due.key for due in dues(record, TODAY)}
    assert {"alarm_test", "alarm_replace.P1"} <= keys
    after = done(record, of(record, "alarm_test"), TODAY, "worked")
    assert of(after, "alarm_test").next_on == date(2026, 12, 25)
    replaced = done(record, of(record, "alarm_replace.P1"), TODAY, "done")
    assert of(replaced, "alarm_replace.P1").next_on == date(2036, 11, 25)


@pytest.mark.parametrize(
    ("tenure", "nation", "by", "duty"),
    [
        ("owner", "england", date(2031, 3, 1), False),
        ("let", "england", date(2026, 3, 1), True),
        ("let", "wales", date(2026, 3, 1), True),
        ("rents", "scotland", date(2026, 3, 1), True),
        ("let", "northern_ireland", date(2026, 3, 1), True),
        ("let", "unknown", date(2026, 3, 1), False),
        ("unknown", "england", None, False),
    ],
)
def test_inspection_by_who_lives_there(
    tenure: str, nation: str, by: date | None, *, duty: bool
) -> None:
    record = home(tenure=tenure, nation=nation, inspected_on=date(2021, 3, 1))
    due = of(record, "inspection")
    assert (due.next_on, due.duty) == (by, duty)


@pytest.mark.parametrize(
    ("tenure", "said", "by"),
    [
        ("owner", date(2028, 1, 1), date(2028, 1, 1)),
        ("owner", date(2040, 1, 1), date(2040, 1, 1)),
        ("let", date(2025, 1, 1), date(2025, 1, 1)),
        ("let", date(2031, 1, 1), date(2029, 6, 1)),
    ],
)
def test_the_day_that_the_latest_report_names(
    tenure: str, said: date, by: date
) -> None:
    report = Paper(
        ref="Q1", kind="condition_report", dated=date(2024, 6, 1), inspect_again_by=said
    )
    old = {"inspected_on": date(2014, 1, 1), "inspect_again_by": date(2019, 1, 1)}
    record = home(tenure=tenure, nation="england", **old).having(papers=(report,))
    assert of(record, "inspection").next_on == by


REPORTS: dict[str, tuple[dict[str, date], tuple[Paper, ...], date]] = {
    # The home's own field and a paper of the same day, of which one names the next.
    "of one day": (
        {"inspected_on": date(2024, 6, 1)},
        (report("Q1", date(2024, 6, 1), date(2027, 6, 1)),),
        date(2027, 6, 1),
    ),
    "of one day, two": (
        {},
        (
            report("Q1", date(2024, 6, 1), date(2029, 6, 1)),
            report("Q2", date(2024, 6, 1), date(2027, 6, 1)),
        ),
        date(2027, 6, 1),
    ),
    "without a day": ({}, (report("Q1", None, date(2027, 6, 1)),), date(2027, 6, 1)),
    "without a day, older": (
        {"inspected_on": date(2024, 6, 1)},
        (report("Q1", None, date(2019, 6, 1)),),
        date(2034, 6, 1),
    ),
    "without a day, perhaps later": (
        {"inspected_on": date(2014, 6, 1), "inspect_again_by": date(2024, 6, 1)},
        (report("Q1", None, date(2022, 6, 1)),),
        date(2022, 6, 1),
    ),
}


@pytest.mark.parametrize("case", REPORTS)
def test_no_report_is_lost(case: str) -> None:
    of_home, papers, by = REPORTS[case]
    about_home: dict[str, Any] = {"tenure": "owner", **of_home}
    record = home(**about_home).having(papers=papers)
    assert of(record, "inspection").next_on == by


def test_an_inspection_that_came_to_nothing_is_no_report() -> None:
    record = home(tenure="owner", inspected_on=date(2014, 6, 1))
    made = Occasion(ref="O1", kind="inspection", done_on=date(2026, 6, 1))
    failed = made.model_copy(update={"outcome": "failed"})
    after = record.having(occasions=(failed,))
    due = of(after, "inspection")
    assert (due.last_on, due.next_on) == (date(2014, 6, 1), date(2024, 6, 1))
    after = record.having(occasions=(made,))
    assert of(after, "inspection").next_on == date(2036, 6, 1)


def test_where_the_nation_or_who_lives_there_is_open_that_decides() -> None:
    let = home(tenure="let", inspected_on=date(2014, 6, 1))
    assert "The nation decides" in of(let, "inspection").basis
    assert "own" not in of(let, "inspection").basis
    (remark,) = [r for r in remarks(let, TODAY) if r.code == "inspection-due"]
    assert "The nation decides" in remark.sentence
    # No report may name a later day than any of the laws allows.
    said = let.having(papers=(report("Q1", date(2024, 6, 1), date(2034, 6, 1)),))
    assert of(said, "inspection").next_on == date(2029, 6, 1)
    nobody = home(inspected_on=date(2014, 6, 1))
    assert "Whether it is let decides" in of(nobody, "inspection").basis


def test_nothing_is_called_a_duty_that_is_none() -> None:
    due = of(home(tenure="owner", inspected_on=date(2001, 3, 1)), "inspection")
    assert (due.state, due.says) == (
        "now",
        "Last done on 1 March 2001. Recommended by 1 March 2011.",
    )


def test_a_reminder_of_ones_own_moves_on_and_one_for_once_is_done() -> None:
    record = house().having(
        reminders=(
            Reminder(ref="E1", name="Look", next_on=TODAY, every=2, every_unit="week"),
            Reminder(ref="E2", name="Ask", next_on=TODAY),
        )
    )
    assert [due.key for due in dues(record, TODAY)][:2] == ["E2", "E1"]
    again = done(record, of(record, "E1"), date(2026, 11, 20), "done")
    assert of(again, "E1").next_on == date(2026, 12, 4)
    once = done(record, of(record, "E2"), TODAY, "done")
    assert (of(once, "E2").state, of(once, "E2").next_on) == ("done", None)


def test_a_reminder_takes_the_place_of_what_the_record_asks_for() -> None:
    record = house(button_pressed_on=date(2026, 6, 1)).having(
        reminders=(
            Reminder(ref="E1", kind="rcd_button", about="RCD", every=1),
            Reminder(ref="E2", kind="alarm_test", state="off"),
        )
    )
    button = of(record, "rcd_button.RCD")
    assert (button.next_on, button.reminder) == (date(2026, 7, 1), "E1")
    assert of(record, "alarm_test").state == "off"


def test_another_reminder_for_the_same_is_shown_beside_it() -> None:
    twice = (
        Reminder(ref="E1", kind="alarm_test", every=1),
        Reminder(ref="E2", kind="alarm_test", every=2),
    )
    found = dues(house().having(reminders=twice), TODAY)
    assert {due.reminder for due in found} >= {"E1", "E2"}
    keys = [due.key for due in found]
    assert len(keys) == len(set(keys))


def test_a_reminder_about_what_the_record_does_not_ask_for() -> None:
    record = house().having(
        reminders=(Reminder(ref="E1", kind="alarm_replace", next_on=TODAY),),
        occasions=(Occasion(ref="O1", done_on=TODAY),),
    )
    assert of(record, "E1").state == "now"


def test_how_often_somebody_wants_it_is_no_rule() -> None:
    own = Reminder(
        ref="E1", kind="rcd_button", about="RCD", every=60, every_unit="month"
    )
    record = house(button_pressed_on=date(2026, 6, 1)).having(reminders=(own,))
    due = of(record, "rcd_button.RCD")
    assert (due.next_on, due.basis) == (date(2031, 6, 1), "Set by yourself.")


def test_done_early_the_next_day_comes_earlier_and_an_older_time_moves_nothing() -> (
    None
):
    own = Reminder(ref="E1", name="Look", next_on=date(2027, 5, 1), every=1)
    record = house().having(reminders=(own,))
    early = done(record, of(record, "E1"), TODAY, "done")
    assert of(early, "E1").next_on == date(2026, 12, 25)
    older = done(early, of(early, "E1"), date(2026, 1, 1), "done")
    assert of(older, "E1").next_on == date(2026, 12, 25)


def test_only_a_press_that_worked_counts_for_what_is_pressed() -> None:
    record = house()
    failed = done(record, of(record, "alarm_test"), date(2026, 11, 20), "failed")
    after = done(failed, of(failed, "alarm_test"), TODAY, "done")
    due = of(after, "alarm_test")
    assert (due.state, due.last_on) == ("now", None)
    assert of(done(after, due, TODAY, "worked"), "alarm_test").state == "later"


def test_the_newest_time_decides_when_an_older_one_is_written_down() -> None:
    record = house(button_pressed_on=date(2026, 11, 1)).having(
        reminders=(
            Reminder(ref="E1", kind="rcd_button", about="RCD", next_on=TODAY, every=12),
            Reminder(ref="E2", name="Ask again", next_on=date(2027, 1, 1)),
        ),
        occasions=(Occasion(ref="O1", reminder="E2", done_on=date(2026, 10, 1)),),
    )
    for key, on in (("rcd_button.RCD", date(2026, 5, 1)), ("E2", date(2025, 1, 1))):
        before = of(record, key)
        after = of(done(record, before, on, "worked"), key)
        assert (after.next_on, after.last_on) == (before.next_on, before.last_on)


def test_what_was_done_on_another_page_moves_the_day_on_too() -> None:
    own = Reminder(
        ref="E1", kind="rcd_button", about="RCD", next_on=date(2026, 11, 1), every=3
    )
    pressed = house(button_pressed_on=date(2026, 11, 3)).having(reminders=(own,))
    assert of(pressed, "rcd_button.RCD").next_on == date(2027, 2, 3)
    early = house(button_pressed_on=date(2026, 10, 3)).having(reminders=(own,))
    assert of(early, "rcd_button.RCD").next_on == date(2026, 11, 1)
