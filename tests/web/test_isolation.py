"""Isolating: choose, read the plan, take the steps one by one, keep the file."""

from __future__ import annotations

import re
from collections.abc import Callable
from urllib.parse import urlencode

import pytest

from app.domain.record import Record
from tests.pages import CheckedClient
from tests.unit.domain.isolation.test_rules import stored, with_battery
from tests.unit.report.pdf import assert_accessible, opened, text_of

KINDS = ("solar", "battery", "generator", "vehicle", "neighbour", "landlord")
NO = [(f"source-{kind}", "no") for kind in KINDS]
BASE = "/homes/h10/isolate/"


@pytest.fixture
def at_h10(
    visitor: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> CheckedClient:
    keep(houses["h10"])
    return visitor


def url(page: str, *pairs: tuple[str, str], ref: str = "R-LAND") -> str:
    return f"{BASE}{page}?{urlencode([('ref', ref), *pairs])}"


def test_what_is_worked_on_is_found_by_a_word_and_in_the_lists(
    at_h10: CheckedClient,
) -> None:
    page = at_h10.see(f"{BASE}?q=landing light")
    assert "Landing light (two-way) (P14)" in page.main
    assert "Whole house off" in page.main
    assert "Nothing to work on holds" in at_h10.see(f"{BASE}?q=zzz").main


def test_plan_says_stop_until_the_sources_are_answered(at_h10: CheckedClient) -> None:
    page = at_h10.see(url("plan"))
    assert page.main.count("Stop and find out first") == 1
    assert "solar panels" in page.main
    answered = at_h10.see(url("plan", *NO))
    assert "Stop and find out first" not in answered.main
    assert "Switch off the wide set" in answered.main
    assert "Still live here" in answered.main


def test_plan_leads_to_labels_and_rounds_when_a_label_is_wrong(
    at_h10: CheckedClient,
) -> None:
    page = at_h10.see(url("plan", *NO))
    assert "Before you isolate, label" in page.main
    markup = page.response.get_data(as_text=True)
    assert 'href="/homes/h10/labels/"' in markup
    assert 'href="/homes/h10/rounds/"' in markup


def test_step_is_done_or_left_out_for_a_reason(at_h10: CheckedClient) -> None:
    skipped = url("plan/step", ("at", "lock"), ("do", "skip"), *NO)
    answer = at_h10.get(skipped)
    assert answer.status_code == 422
    assert "Write why this step is left out." in answer.get_data(as_text=True)
    told = at_h10.get(
        url("plan/step", ("at", "lock"), ("do", "skip"), ("reason", "no clip"), *NO)
    )
    assert told.status_code == 302
    assert "skip-lock=no+clip" in told.location


def test_steps_are_walked_in_order_and_the_address_keeps_it_all(
    at_h10: CheckedClient,
) -> None:
    where = url("plan/step", ("at", "identify"), *NO)
    seen = []
    for _ in range(20):
        page = at_h10.see(where)
        seen.append(page.h1)
        if " Done: " not in f" {page.main} ":
            break
        where = at_h10.get(f"{where}&do=done").location
        if "/plan/step" not in where:
            break
    assert seen[0] == "Identify"
    assert seen[-1] == "Put it back on"
    assert len(seen) == 12
    assert "12 of 12 steps done" in at_h10.see(where).main


def test_nothing_after_finding_out_can_be_ticked_while_it_says_stop(
    at_h10: CheckedClient,
) -> None:
    page = at_h10.see(url("plan/step", ("at", "switch_off")))
    assert "This step stays shut while the plan says stop." in page.main
    forced = at_h10.get(url("plan/step", ("at", "switch_off"), ("do", "done")))
    assert "at=identify" in forced.location
    assert "done=switch_off" not in forced.location
    skip = ("do", "skip")
    left = at_h10.get(url("plan/step", ("at", "prove_dead"), skip, ("reason", "late")))
    assert "skip-" not in left.location


def test_what_proves_cannot_be_left_out_and_work_stays_shut_by_address_too(
    at_h10: CheckedClient,
) -> None:
    proofs = ("prove_tester", "prove_dead", "prove_again")
    for code in proofs:
        page = at_h10.see(url("plan/step", ("at", code), *NO))
        assert "Leave this step out" not in page.main
        answer = at_h10.get(
            url("plan/step", ("at", code), ("do", "skip"), ("reason", "late"), *NO)
        )
        assert f"at={code}" in answer.location
        assert "skip-" not in answer.location
    left = [(f"skip-{code}", "late") for code in proofs]
    page = at_h10.see(url("plan/step", ("at", "work"), *left, *NO))
    assert "do not touch it" in page.main
    assert "Done: Work" not in page.main
    forced = at_h10.get(url("plan/step", ("at", "work"), ("do", "done"), *left, *NO))
    assert "at=prove_tester" in forced.location
    assert "done=work" not in forced.location


def test_what_nobody_can_work_on_is_refused(at_h10: CheckedClient) -> None:
    assert at_h10.get(url("plan", ref="GONE")).status_code == 404
    assert at_h10.get(url("plan", ref="B1.W1")).status_code == 404
    assert at_h10.get(f"{BASE}plan").status_code == 302


def test_what_is_typed_on_the_day_is_escaped_and_shown(at_h10: CheckedClient) -> None:
    nasty = "<script>alert(1)</script>"
    page = at_h10.see(url("plan/notice", ("who", nasty), ("when", "9 to 11"), *NO))
    assert nasty in page.main
    assert nasty not in page.response.get_data(as_text=True)
    assert "9 to 11" in page.main
    assert "Router" in page.main


def test_file_stands_alone(at_h10: CheckedClient) -> None:
    answer = at_h10.get(url("plan/file", *NO))
    text = answer.get_data(as_text=True)
    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert not re.search(r"<script|\ssrc=|\shref=|url\(", text)
    assert "<style>" in text
    assert "Still live here" in text
    assert "Neutral to earth" in text
    assert text.count("<h1>") == 1


def test_whole_house_names_every_switch_and_what_stays_live(
    visitor: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> None:
    keep(houses["h06"])
    page = visitor.see("/homes/h06/isolate/whole-house")
    for ref in ("I5", "B3.MS", "P37", "P42", "P43"):
        assert ref in page.main
    assert "is not the switch for the whole home" in page.main
    answer = visitor.get("/homes/h06/isolate/whole-house.pdf")
    assert "STILL LIVE HERE" in text_of(answer.get_data())


@pytest.mark.parametrize("name", ["h02", "h05", "h07", "h10"])
def test_paper_is_one_page_and_accessible(
    visitor: CheckedClient,
    keep: Callable[[Record], int],
    houses: dict[str, Record],
    name: str,
) -> None:
    record = houses[name]
    keep(record)
    room = record.rooms[0].ref
    made = visitor.get(f"/homes/{name}/isolate/plan.pdf?ref={room}").get_data()
    assert_accessible(made, f"Isolation: {record.rooms[0].name}, {record.home.name}")
    with opened(made) as document:
        assert len(document.pages) == 1
    text = text_of(made)
    for words in (
        "STILL LIVE HERE",
        "Prove the tester again",
        "Whom to call",
        "Line to neutral",
    ):
        assert words in text


def test_whole_house_does_not_say_off_while_a_source_is_not_placed(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    keep(with_battery(joins=None))
    page = visitor.see("/homes/H1/isolate/whole-house")
    assert "May go off, or stay live" in page.main
    assert "Goes off as well" not in page.main
    assert "What should go off may stay live while these are open: " in page.main
    plan = visitor.see("/homes/H1/isolate/plan?ref=P1")
    assert "May go off, or stay live, by room" in plan.main


def test_what_hangs_on_a_battery_is_still_live_on_page_and_paper(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    keep(stored())
    page = visitor.see("/homes/H1/isolate/whole-house")
    assert "It feeds more from a battery of its own. It counts as live." in page.main
    point = visitor.see("/homes/H1/points/P3/")
    assert "It hangs on Socket-outlet, size not noted (P9), which has" in point.main
    answer = visitor.get("/homes/H1/isolate/plan.pdf?ref=P3")
    words = " ".join(text_of(answer.data).split())
    assert "Switch the battery off at itself and unplug it." in words
