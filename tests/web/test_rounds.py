"""Switching rounds: started, marked, ended, and what they show written down."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Record
from tests.pages import CheckedClient, Page

HOME = "/homes/H1/rounds"
Stored = Callable[..., Record]


def start(here: CheckedClient, go: str, **fields: str) -> Page:
    return here.go_on(here.send(f"{HOME}/new", {"go": go, **fields}))


def mark(here: CheckedClient, ref: str, point: str, seen: str, **more: str) -> Page:
    fields = {"point": point, "seen": seen, "key": f"{ref}{point}", **more}
    return here.send(f"{HOME}/{ref}/marks", fields)


def test_nothing_is_found_before_a_round(here: CheckedClient) -> None:
    page = here.see(f"{HOME}/")
    assert "0 of 3 points are found by switching off" in page.main
    assert "never to prove" in page.main


def test_a_home_without_ways_says_what_is_missing(
    visitor: CheckedClient, keep: Callable[[Record], int], empty_home: Record
) -> None:
    keep(empty_home)
    page = visitor.see("/homes/H1/rounds/")
    assert "no way on any board yet" in page.main
    assert page.links["Enter the boards and the rooms"] == "/homes/H1/"


@pytest.fixture
def empty_home() -> Record:
    from tests.builders import home

    return home()


def test_a_first_look_is_offered_until_it_is_made(
    here: CheckedClient, stored: Stored
) -> None:
    page = start(here, "baseline_day")
    assert page.h1 == "First look, everything on"
    (made,) = stored().rounds
    assert (made.off, made.when, made.stage) == ((), "day", "planned")
    offered = here.see(f"{HOME}/new").main
    assert "By day, everything on" not in offered
    assert "By night, everything on" in offered


def test_a_manner_says_beforehand_what_it_needs(here: CheckedClient) -> None:
    main = here.see(f"{HOME}/new").main
    assert "Rounds to find each 2" in main
    assert "Next off:" in main


def test_before_switching_off_it_says_what_that_takes_away(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/points/P1/edit", {"care": ["router", "medical"]})
    page = start(here, "hand", off="W1")
    medical, router = (page.main.index(w) for w in ("Medical", "Router, phone"))
    assert medical < router
    assert "Never while someone depends on the supply" in page.main
    assert "never proves a thing dead" in here.see(f"{HOME}/N1/prepare").main
    assert "It may go off" not in page.main
    other = start(here, "hand", off="W2")
    assert "Medical equipment" not in other.main


def test_a_point_on_no_circuit_may_go_off(here: CheckedClient) -> None:
    here.save("/homes/H1/points/P3/edit", {"care": ["heating"]})
    assert "It may go off" in start(here, "hand", off="W2").main


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({}, "Tick what you will switch off"),
        ({"off": "W9"}, "no longer in the record"),
    ],
)
def test_a_round_that_cannot_be_is_refused(
    here: CheckedClient, stored: Stored, fields: dict[str, str], sentence: str
) -> None:
    page = here.send(f"{HOME}/new", {"go": "hand", **fields})
    assert page.status == 422
    assert sentence in page.errors[0]
    assert stored().rounds == ()


def test_what_is_left_on_is_not_switched_off(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/devices/W1/edit", leave_on="a stairlift")
    page = here.send(f"{HOME}/new", {"go": "hand", "off": "W1"})
    assert page.status == 422
    assert "a stairlift" in page.errors[0]


def test_marks_are_taken_and_shown(here: CheckedClient, stored: Stored) -> None:
    start(here, "hand", off="W1")
    here.go_on(here.send(f"{HOME}/N1/stage", {"stage": "marking", "person": "Ash"}))
    page = here.go_on(mark(here, "N1", "P1", "dead"))
    pressed = [b for b in page.all("button") if b.get("aria-pressed") == "true"]
    assert [b.get("value") for b in pressed] == ["dead"]
    assert "1 of 3 marked" in page.main
    (reading,) = stored().readings
    assert (reading.point, reading.seen, reading.seen_by) == ("P1", "dead", "Ash")


def test_a_mark_sent_twice_counts_once_and_a_changed_one_stands(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    for _ in range(2):
        mark(here, "N1", "P1", "dead")
    assert len(stored().readings) == 1
    page = here.go_on(mark(here, "N1", "P1", "live"))
    assert len(stored().readings) == 2
    pressed = [b for b in page.all("button") if b.get("aria-pressed") == "true"]
    assert [b.get("value") for b in pressed] == ["live"]


def test_a_mark_that_waited_keeps_the_time_it_was_made(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    mark(here, "N1", "P1", "dead", made_at="2026-01-02T03:04:05.678Z")
    mark(here, "N1", "P2", "dead", made_at="2099-01-01T00:00:00Z")
    mark(here, "N1", "P3", "dead", made_at="noon")
    times = [reading.seen_at for reading in stored().readings]
    assert times[0] == "2026-01-02T03:04:05Z"
    assert all(at and at < "2099" for at in times[1:])


@pytest.mark.parametrize("by", ["a\nb", "a\x01b", "\x00"])
def test_a_name_and_a_time_that_no_page_sends_spoil_nothing(
    here: CheckedClient, stored: Stored, by: str
) -> None:
    start(here, "baseline_day")
    odd = {"by": by, "made_at": "0001-01-01T00:00:00+23:59"}
    assert mark(here, "N1", "P1", "live", **odd).status == 303
    (reading,) = stored().readings
    assert reading.seen_by.isprintable()


def test_a_script_is_answered_in_json(here: CheckedClient, stored: Stored) -> None:
    start(here, "hand", off="W1")
    json = {"Accept": "application/json"}
    sent = {"csrf_token": here.token(), "point": "P1", "seen": "dead", "key": "k"}
    taken = here.post(f"{HOME}/N1/marks", data=sent, headers=json)
    assert taken.get_json() == {"saved": True, "point": "P1", "seen": "dead"}
    gone = here.post(f"{HOME}/N9/marks", data=sent, headers=json)
    assert gone.status_code == 404
    assert "no such round" in gone.get_json()["sentence"]
    odd = here.post(f"{HOME}/N1/marks", data={**sent, "seen": "odd"}, headers=json)
    assert odd.status_code == 422
    assert "Went dead; Stayed live; Not looked" in odd.get_json()["sentence"]
    stale = here.post(
        f"{HOME}/N1/marks", data={**sent, "csrf_token": "x"}, headers=json
    )
    assert stale.status_code == 400
    fresh = {**sent, "csrf_token": stale.get_json()["token"], "key": "k2"}
    assert here.post(f"{HOME}/N1/marks", data=fresh, headers=json).status_code == 200


def test_two_people_who_disagree_are_both_shown(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    mark(here, "N1", "P1", "dead", by="Ash")
    mark(here, "N1", "P1", "live", by="Bo")
    results = here.see(f"{HOME}/results").main
    assert "Ash saw it “went dead” and Bo saw it “stayed live”" in results
    mark(here, "N1", "P1", "dead")
    main = here.see(f"{HOME}/N1/marks").main
    assert "Bo: stayed live. Seen differently: look again." in main


def test_in_a_first_look_nothing_goes_dead_and_nothing_is_put_back(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "baseline_day")
    page = here.see(f"{HOME}/N1/marks")
    assert page.h1 == "First look N1"
    for words in ("Works", "No sign of life", "All looked at", "End of the first look"):
        assert words in page.main
    for words in ("Went dead", "Stayed live", "back on", "aseline"):
        assert words not in page.main
    mark(here, "N1", "P1", "dead", by="Ash")
    mark(here, "N1", "P1", "live", by="Bo")
    assert [reading.seen for reading in stored().readings] == ["dead", "live"]
    results = here.see(f"{HOME}/results").main
    assert "Ash saw it “no sign of life” and Bo saw it “works”" in results
    assert "Bo: works." in here.see(f"{HOME}/N1/marks").main
    assert ", works." in here.see("/homes/H1/changes/").main
    here.go_on(here.submit_on(page, press="All looked at"))
    assert "First look N1. All looked at, 2 marks" in here.see(f"{HOME}/").main


def finish(here: CheckedClient) -> None:
    start(here, "hand", off="W1")
    start(here, "hand", off="W2")
    for ref, dead in (("N1", "P1 P3"), ("N2", "P2")):
        for point in ("P1", "P2", "P3"):
            mark(here, ref, point, "dead" if point in dead else "live")
        here.go_on(here.send(f"{HOME}/{ref}/stage", {"stage": "done"}))


def test_what_was_found_is_written_down_as_one_change(
    here: CheckedClient, stored: Stored
) -> None:
    finish(here)
    before = stored()
    page = here.see(f"{HOME}/results")
    assert "3 of 3 points are found by switching off, 3 of them confirmed" in page.main
    assert "Boiler: on Kitchen sockets" in page.main
    done = here.go_on(here.submit_on(page, press="Write this down"))
    assert {t.point: (t.tied_to, t.grade) for t in stored().ties} == {
        "P1": ("C1", "4"),
        "P2": ("C2", "4"),
        "P3": ("C1", "4"),
    }
    assert "Found by switching off" in done.undo
    assert [d.label_found for d in stored().devices] == [
        d.label_found for d in before.devices
    ]
    here.go_on(here.submit_on(done, press="Undo"))
    assert stored() == before


def test_marks_that_came_in_since_are_shown_before_anything_is_written(
    here: CheckedClient, stored: Stored
) -> None:
    finish(here)
    page = here.see(f"{HOME}/results")
    mark(here, "N1", "P3", "live", by="Bo")
    before = stored().ties
    answer = here.submit_on(page, press="Write this down")
    assert answer.status == 409
    assert "Marks came in" in answer.errors[0]
    assert stored().ties == before


def test_a_round_is_put_back_on_and_ended(here: CheckedClient, stored: Stored) -> None:
    here.save("/homes/H1/points/P1/edit", {"care": ["freezer"]})
    start(here, "hand", off="W1")
    page = here.see(f"{HOME}/N1/marks")
    assert "See that the freezer runs again" in page.main
    assert "do not flick it on and off" in page.main
    ended = here.go_on(here.submit_on(page, press="All is back on"))
    assert ended.h1 == "What the rounds have shown"
    assert stored().rounds[0].stage == "done"
    again = here.see(f"{HOME}/N1/marks").main
    assert "This round is ended" in again
    assert "Put everything back on" not in again


def test_only_what_may_have_gone_off_is_to_be_seen_to(here: CheckedClient) -> None:
    here.save("/homes/H1/points/P1/edit", {"care": ["freezer"]})
    start(here, "hand", off="W2")
    assert "freezer" not in here.see(f"{HOME}/N1/marks").main


def test_the_end_of_a_round_may_wait_like_a_mark(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    sent = {"csrf_token": here.token(), "stage": "done", "key": "k"}
    for _ in range(2):
        taken = here.post(
            f"{HOME}/N1/stage", data=sent, headers={"Accept": "application/json"}
        )
        assert taken.get_json()["saved"] is True
        assert "/rounds/results" in taken.get_json()["next"]
    assert stored().rounds[0].stage == "done"


def test_one_page_says_what_to_switch_and_takes_the_marks(
    here: CheckedClient,
) -> None:
    start(here, "hand", off="W1")
    page = here.go_on(here.send(f"{HOME}/N1/stage", {"stage": "marking"}))
    steps = ("Switch off now", "Mark each point", "Put everything back on")
    places = [page.main.index(step) for step in steps]
    assert places == sorted(places)
    assert "A fuse is drawn only" not in page.main


def test_a_fuse_is_drawn_with_its_main_switch_off(here: CheckedClient) -> None:
    here.save("/homes/H1/devices/W1/edit", kind="fuse_rewirable")
    start(here, "hand", off="W1")
    main = here.see(f"{HOME}/N1/marks").main
    assert "A fuse is drawn only with the main switch of its board off: Way 1" in main


def test_what_is_left_on_is_said_before(here: CheckedClient) -> None:
    here.save("/homes/H1/devices/W2/edit", leave_on="a stairlift")
    main = start(here, "hand", off="W1").main
    assert main.index("Leave on") < main.index("a stairlift")


def test_a_mark_may_be_seen_otherwise_than_the_round(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    here.send(f"{HOME}/N1/stage", {"stage": "marking", "how": "lamp"})
    mark(here, "N1", "P1", "dead")
    page = here.go_on(mark(here, "N1", "P2", "live", how="two_pole"))
    mark(here, "N1", "P3", "live", how="a guess")
    assert [reading.how for reading in stored().readings] == [
        "lamp",
        "two_pole",
        "lamp",
    ]
    hidden = {e.get("value") for e in page.all("input") if e.get("name") == "how"}
    assert hidden == {"two_pole"}


def test_not_looked_stays_marked_though_another_looked(here: CheckedClient) -> None:
    start(here, "hand", off="W1")
    mark(here, "N1", "P1", "not_looked")
    mark(here, "N1", "P1", "dead", by="Bo")
    page = here.see(f"{HOME}/N1/marks")
    pressed = [b for b in page.all("button") if b.get("aria-pressed") == "true"]
    assert [b.get("value") for b in pressed] == ["not_looked"]
    assert "Bo: went dead." in page.main
    assert "1 of 3 marked" in page.main
    assert "look again" not in page.main


def test_a_way_changed_since_is_shown_before_anything_is_written(
    here: CheckedClient, stored: Stored
) -> None:
    finish(here)
    page = here.see(f"{HOME}/results")
    here.save("/homes/H1/devices/W1/edit", label_found="COOKER")
    before = stored().ties
    assert here.submit_on(page, press="Write this down").status == 409
    assert stored().ties == before


def test_a_deleted_round_comes_back_with_its_marks(
    here: CheckedClient, stored: Stored
) -> None:
    start(here, "hand", off="W1")
    mark(here, "N1", "P1", "dead")
    page = here.go_on(here.send(f"{HOME}/N1/delete", {}))
    assert stored().rounds == ()
    assert stored().readings == ()
    here.go_on(here.submit_on(page, press="Undo"))
    assert len(stored().readings) == 1


def test_a_mark_in_a_deleted_round_or_of_a_deleted_point_is_refused(
    here: CheckedClient,
) -> None:
    assert mark(here, "N1", "P1", "dead").status == 404
    start(here, "hand", off="W1")
    assert mark(here, "N1", "P9", "dead").status == 404


def test_an_odd_step_is_refused(here: CheckedClient) -> None:
    start(here, "hand", off="W1")
    assert here.send(f"{HOME}/N1/stage", {"stage": "flying"}).status == 422


def test_what_feeds_something_left_on_is_not_switched_off_either(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/devices/W1/edit", leave_on="oxygen")
    page = here.send(f"{HOME}/new", {"go": "hand", "off": "RCD"})
    assert page.status == 422
    assert "oxygen" in page.errors[0]
    assert stored().rounds == ()
