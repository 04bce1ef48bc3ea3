"""The pages that answer: a point, a way, a board, a room, the intake, the questions."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Record
from tests import builders as b
from tests.builders import circuit, home, light, one_way, switched_off
from tests.pages import SVG, CheckedClient, Page, page_of, text_of


def lit(page: Page) -> str:
    [box] = [e for e in page.all("div") if e.get("class") == "lit"]
    return text_of(box)


def test_a_point_says_what_feeds_it_and_what_protects_it(
    here: CheckedClient,
) -> None:
    page = here.see("/homes/H1/points/P1/")
    start = "By the record it is on Kitchen sockets (C1), from Way 1, “SKTS” (W1)."
    assert start in page.main
    assert "Overload and short circuit Cut-out, 100 A; Way 1, “SKTS”, B 32 A" in (
        page.main
    )
    assert "RCDs before it RCD RCD, 30 mA, type not known" in page.main
    assert "RCD of 30 mA or less Yes, on every feed in the record" in page.main
    assert "Seen: went off and came back" in page.main
    drawing = page.all(f"{SVG}svg")
    assert any("Kitchen sockets" in text_of(svg) for svg in drawing)
    assert here.see(page.links["Kitchen"]).h1 == "Kitchen"


def test_an_rcd_whose_button_failed_is_counted_on_nowhere(here: CheckedClient) -> None:
    here.save(
        "/homes/H1/reminders/rcd_button.RCD/done",
        press="Write it down",
        on="2026-03-03",
        outcome="failed",
    )
    failed = "its button failed on 3 March 2026"
    point = here.see("/homes/H1/points/P1/").main
    assert f"By the record yes, but {failed}: count on no RCD" in point
    assert point.index("Count on no RCD here.") < point.index("What protects it")
    assert f"30 mA, type not known, {failed}" in point
    for path in ("devices/W1", "devices/RCD", "boards/B1"):
        page = here.see(f"/homes/H1/{path}/").main
        assert f"{failed}. Do not count on it." in page
    assert ", button failed" in here.see("/homes/H1/boards/B1/").main
    assert "(button failed)" in here.see("/homes/H1/boards/B1/chart").main
    assert failed in here.see("/homes/H1/rooms/R1/").main
    lights = here.see("/homes/H1/points/P2/").main
    assert failed not in lights


def test_a_point_that_is_tied_to_nothing_is_live_until_known(
    here: CheckedClient,
) -> None:
    page = here.see("/homes/H1/points/P3/")
    assert "What feeds it is not recorded. Treat it as live." in page.main
    assert page.links["Switches Light"] == "/homes/H1/controls/K-P3-P2/edit"
    light = here.see("/homes/H1/points/P2/")
    assert "Switched by Boiler" in light.links
    assert (
        "RCD of 30 mA or less No: none before it that counts, by the record"
        in light.main
    )


def test_what_a_round_showed_against_its_ties_stands_first(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    seen = switched_off("N1", "W1", live="P1", started_at="2026-05-03T12:00:00Z")
    keep(home(one_way(circuit("C1", light("P1"))), *seen))
    page = visitor.see("/homes/H1/points/P1/")
    assert "It stayed live with" in page.main
    assert "(Round N1, 3 May 2026)" in page.main
    assert page.main.index("stayed live") < page.main.index("What protects it")


def test_a_neutral_that_goes_another_way_is_warned_of(at_demo: CheckedClient) -> None:
    page = at_demo.see("/homes/demo/points/P41/")
    assert "Its neutral goes another way" in page.main
    assert page.main.index("Take care.") < page.main.index("What protects it")
    assert "An odd one out." in page.main
    feeder = at_demo.see("/homes/demo/devices/B1.F1/")
    assert "Landing light: its neutral returns here" in feeder.main


def test_a_way_says_what_it_feeds_and_what_would_be_missed(
    at_demo: CheckedClient,
) -> None:
    page = at_demo.see("/homes/demo/devices/B2.W6/")
    said = (
        "it feeds one circuit and 10 points in Kitchen, Lean-to, Back garden and yard."
    )
    assert f"By the record {said}" in page.main
    assert "Missed if it goes off Fridge socket: Fridge" in page.main
    assert at_demo.see(page.links["Fridge socket"]).h1 == "Fridge socket"
    assert at_demo.see(page.links["Newer board"]).h1 == "Newer board"


def test_a_way_that_feeds_nothing_is_not_called_spare(here: CheckedClient) -> None:
    here.save("/homes/H1/new/devices?kind=rcbo&board=B1", way="3")
    page = here.see("/homes/H1/devices/D5/")
    assert "Nothing that it feeds is recorded. That does not make it" in page.main
    face = here.see("/homes/H1/boards/B1/?lit=D5")
    assert "Nothing that it feeds is recorded. That does not make it" in lit(face)


def test_a_board_shows_its_face_and_leads_to_each_way(here: CheckedClient) -> None:
    page = here.see("/homes/H1/boards/B1/")
    answer = (
        "It stands in Hall. It is fed from Tails. By the record 2 ways feed a circuit."
    )
    assert answer in page.main
    assert page.links["Way 1"] == "/homes/H1/devices/W1/"
    assert "2 devices on this board" in page.main
    assert not [e for e in page.all("div") if e.get("class") == "lit"]


def test_a_way_is_brought_forward_on_the_face(here: CheckedClient) -> None:
    page = here.see("/homes/H1/boards/B1/?lit=W1")
    said = "Way 1, “SKTS”. By the record it feeds one circuit and one point in Kitchen."
    assert lit(page) == f"{said} Open Way 1, “SKTS” Kitchen sockets Kitchen"
    assert "Kitchen sockets. This one" in page.main
    assert "Lights. This one" not in page.main


def test_a_room_is_brought_forward_on_the_face(here: CheckedClient) -> None:
    page = here.see(here.see("/homes/H1/boards/B1/").links["Hall"])
    assert lit(page) == "Hall is served, on this board, by: Way 2"


@pytest.mark.parametrize("ref", ["nothing", "C1", "", "<script>", "GRID"])
def test_nothing_else_is_brought_forward(here: CheckedClient, ref: str) -> None:
    page = here.get("/homes/H1/boards/B1/", query_string={"lit": ref})
    assert page.status_code == 200
    assert not [e for e in page_of(page).all("div") if e.get("class") == "lit"]


def test_a_board_without_devices_asks_for_them(here: CheckedClient) -> None:
    here.save("/homes/H1/new/boards", name="Garage board")
    page = here.see("/homes/H1/boards/B2/")
    assert "What feeds it is not recorded." in page.main
    assert not page.all(f"{SVG}svg")[1:]
    assert "/homes/H1/boards/B2/ways" in page.links.values()


def test_a_room_says_which_ways_serve_it(here: CheckedClient) -> None:
    page = here.see("/homes/H1/rooms/R1/")
    said = (
        "One way serves this room by the record. What feeds one point here is not "
        "recorded: treat as live."
    )
    assert said in page.main
    assert here.see(page.links["Way 1, “SKTS”"]).h1 == "Way 1, “SKTS”"
    here.save("/homes/H1/new/rooms", name="Loft")
    empty = here.see("/homes/H1/rooms/R3/")
    assert "No points are recorded in this room." in empty.main


def test_a_circuit_says_where_it_starts_and_what_is_on_it(
    at_demo: CheckedClient,
) -> None:
    page = at_demo.see("/homes/demo/circuits/C10/")
    start = "Way 6, “SOCKETS”; 10 points are on it by the record."
    assert start in page.main
    to_board = at_demo.see("/homes/demo/circuits/C12/")
    assert "it feeds Garage board" in to_board.main


def test_the_intake_says_where_it_changes_hands(here: CheckedClient) -> None:
    page = here.see("/homes/H1/intake/")
    assert (
        "Between Cut-out (network) and Meter (meter operator) it changes hands."
        in page.main
    )
    assert (
        "Between Meter (meter operator) and Tails (yours) it changes hands."
        in page.main
    )
    assert "Network" in text_of(page.by_id["item-CUT"])


def test_a_list_is_filtered_and_sorted(here: CheckedClient) -> None:
    page = here.see("/homes/H1/points/?filter=hall&sort=0")
    assert "1 of 3 shown." in page.main
    assert [text_of(h) for h in page.all("th") if h.get("scope") == "row"] == ["Light"]
    page = here.see("/homes/H1/points/?sort=1")
    rooms = [text_of(e) for e in page.all("td") if e.get("data-label") == "Room"]
    assert rooms == ["Hall", "Kitchen", "Kitchen"]
    nothing = here.see("/homes/H1/circuits/?filter=nothing&sort=99")
    assert "0 of 2 shown." in nothing.main


def test_what_is_not_known_is_found_by_its_name(here: CheckedClient) -> None:
    page = here.see("/homes/H1/points/?filter=not known")
    assert "Boiler" in page.main


def test_each_question_leads_to_its_answer(here: CheckedClient) -> None:
    page = here.see("/homes/H1/ask/")
    selects = {s.get("id"): s for s in page.all("select")}
    for question, ref, heading in (
        ("ask-point", "P2", "Light"),
        ("ask-way", "W2", "Way 2"),
        ("ask-room", "R1", "Kitchen"),
    ):
        codes = [o.get("value") for o in selects[question].iter("option")]
        assert ref in codes
        assert here.see(f"/homes/H1/ask/go?ref={ref}").h1 == heading


@pytest.mark.parametrize("query", ["", "?ref=", "?ref=P99", "?ref=//example.org"])
def test_nothing_chosen_is_not_found(here: CheckedClient, query: str) -> None:
    page = here.see(f"/homes/H1/ask/go{query}", 404)
    assert "Choose something from one of the lists" in page.main


def test_the_fridge_is_found_with_its_circuit_and_way(at_demo: CheckedClient) -> None:
    page = at_demo.see("/homes/demo/search/?q=fridge")
    assert page.h1 == "Found for “fridge”"
    assert "Point: Kitchen, Kitchen and lean-to ring, Newer board, way 6" in page.main
    assert at_demo.see(page.links["Fridge socket (P29)"]).h1 == "Fridge socket"


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("SKTS", "Way 1, “SKTS” (W1)"),
        ("sink kitchen", "Socket-outlet, size not noted, by the sink (P1)"),
        ("w2", "Way 2 (W2)"),
        ("boil", "Boiler (P3)"),
        ("main board", "Main board (B1)"),
    ],
)
def test_words_of_any_thing_are_found(
    here: CheckedClient, query: str, found: str
) -> None:
    assert found in here.see(f"/homes/H1/search/?q={query}").links


def test_what_is_not_found_is_said(here: CheckedClient) -> None:
    assert "Nothing in this home holds" in here.see("/homes/H1/search/?q=piano").main
    assert "Type a word" in here.see("/homes/H1/search/").main
    assert "Type a word" in here.see("/homes/H1/search/?q=+++").main
    assert here.see(f"/homes/H1/search/?q={'x' * 9000}").status == 200


def test_open_questions_lead_to_what_they_are_about(here: CheckedClient) -> None:
    page = here.see("/homes/H1/open-questions/")
    assert "Boiler (P3): what feeds it is not recorded. Treat it as live." in page.main
    assert "Still open" in page.main
    assert here.see(page.links["Boiler (P3)"]).h1 == "Boiler"


def test_odd_ones_out_are_listed(at_demo: CheckedClient) -> None:
    page = at_demo.see("/homes/demo/open-questions/")
    assert "Odd ones out" in page.main
    assert "Brown socket in the kitchen (P32)" in page.links


def test_the_words_of_the_trade(visitor: CheckedClient) -> None:
    page = visitor.see("/words/")
    words = [text_of(e) for e in page.all("dt")]
    assert words == sorted(words, key=str.casefold)
    assert "cut-out" in page.by_id
    assert visitor.see("/help/").h1 == "Help"


def test_a_page_that_answers_never_calls_anything_safe(
    at_demo: CheckedClient, demo: Record
) -> None:
    for url in ("points/P2/", "points/P41/", "devices/B1.F5/", "rooms/R-GARAGE/"):
        words = at_demo.see(f"/homes/demo/{url}").main.lower()
        for word in ("is dead", "safe to", "compliant", "satisfactory", "certified"):
            assert word not in words


def test_a_home_of_which_nothing_is_known_asks_for_it_first(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    keep(b.home())
    page = visitor.see("/homes/H1/ask/")
    assert page.links["Go to the rooms"] == "/homes/H1/rooms/"
    assert "Ask about" not in page.main
    chosen = visitor.see("/homes/H1/isolate/")
    assert "Plan for" not in chosen.main
    assert "Whole house off" in chosen.links
