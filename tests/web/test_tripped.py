"""It has tripped: walked on the pages, kept as an entry, changed and taken back."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from urllib.parse import parse_qsl, urlencode, urlsplit

import pytest

from app.domain.network import network
from app.domain.record import Home, Record, Trip
from app.domain.tripped import FIRST, SCREENS, suspects, where
from tests import builders as b
from tests.pages import CheckedClient, Page, text_of
from tests.unit.report.pdf import text_of as pdf_text

Keep = Callable[[Record], int]
Stored = Callable[..., Record]
BASE = "/homes/h10/tripped/"
NEUTRAL = ("moved", "rcd", "rcd-on", "ways-off", "neutral", "tell")
RCD = ("moved", "rcd", "rcd-on", "ways-off", "way-by-way", "fault")


@pytest.fixture
def at_h10(
    visitor: CheckedClient, keep: Keep, houses: dict[str, Record]
) -> CheckedClient:
    keep(houses["h10"])
    return visitor


def url(*codes: str, home: str = "h10", **named: str) -> str:
    query = urlencode([*(("to", code) for code in codes), *named.items()])
    return f"/homes/{home}/tripped/?{query}"


def answers(page: Page) -> dict[str, str]:
    """Return the answers of a screen: words and address."""
    links = [a for a in page.all("a") if "asks__answer" in (a.get("class") or "")]
    return {text_of(a): a.get("href") for a in links}


def things(page: Page) -> list[str]:
    """Return what hangs on it, as it is listed."""
    rows = [e for e in page.all("li") if e.get("class") == "asks__thing"]
    return [text_of(row.find("span")) for row in rows]


def press(client: CheckedClient, page: Page, *words: str) -> Page:
    for word in words:
        page = client.see(answers(page)[word])
    return page


def test_a_neutral_fault_is_reached_by_pressing_alone(at_h10: CheckedClient) -> None:
    page = at_h10.see(BASE)
    assert page.h1 == "Before you touch anything"
    page = press(
        at_h10,
        page,
        "No, none of these",
        "A device with a test button",
        "RCD B1.R1, “RCD 1”",
        "Done",
        "It trips again",
        "It still trips",
    )
    assert page.h1 == "Leave it off and call an electrician"
    assert "Kitchen ring: breaks line only." in page.main
    assert "ring 105" in page.main
    assert "Freezer: Fridge-freezer socket, Kitchen" in page.main
    told = press(at_h10, page, "What to tell them")
    assert "Switch off every way below it: it still trips." in told.main
    assert "Rain, frost" in told.main


def test_stop_comes_first_and_ends_in_calling(at_h10: CheckedClient) -> None:
    page = press(at_h10, at_h10.see(BASE), "Yes, or I am not sure")
    assert page.h1 == "Leave it off and call"
    assert "999" in page.main
    assert list(answers(page)) == ["What to tell them"]


def screens_of(client: CheckedClient, start: str) -> Iterator[tuple[str, Page]]:
    """Yield every screen that pressing leads to, once for each thing named before."""
    waiting, seen = [start], set[str]()
    while waiting:
        here = waiting.pop()
        said = parse_qsl(urlsplit(here).query)
        named = frozenset(pair for pair in said if pair[0] != "to")
        place = (sorted(named), [pair for pair in said if pair[0] == "to"][-1:])
        if str(place) in seen:
            continue
        seen.add(str(place))
        page = client.see(here)
        yield here, page
        waiting += answers(page).values()


@pytest.mark.parametrize("home", ["empty", "two"])
def test_every_address_that_pressing_leads_to_is_a_screen(
    visitor: CheckedClient, keep: Keep, home: str
) -> None:
    """Stop rules before anything that resets, on whatever way one takes."""
    empty = Record(home=Home(ref="empty", name="Nothing yet"))
    ways = b.way("W1", b.circuit("C1", b.socket("P1"))), b.way("W2")
    two = b.home(b.street(b.board("B1", b.rcd("R1", *ways))), ref="two")
    keep({"empty": empty, "two": two}[home])
    titles = {}
    for here, page in screens_of(visitor, f"/homes/{home}/tripped/"):
        codes = [v for k, v in parse_qsl(urlsplit(here).query) if k == "to"]
        last = SCREENS[codes[-1] if codes else FIRST]
        titles[last.code] = page.h1
        if last.resets:
            assert codes[0] == "moved"
            assert "leave" not in codes
        if not codes:
            assert page.h1 == "Before you touch anything"
    assert set(titles) == set(SCREENS)


def test_without_a_record_it_is_general_guidance(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(Record(home=Home(ref="empty", name="Nothing yet")))
    page = visitor.see(url("moved", "rcd", home="empty"))
    assert page.h1 == "Unplug what hangs on it"
    assert "Outdoors, where water gets in" in page.main
    assert "Holds a heating element" in page.main
    ways = visitor.see(url("moved", "rcd", "rcd-on", "ways-off", home="empty"))
    assert "It has no way below it" in answers(ways)


@pytest.mark.parametrize("name", ["h06", "h07", "h10"])
def test_each_device_of_a_house_shows_exactly_what_hangs_on_it(
    visitor: CheckedClient, keep: Keep, houses: dict[str, Record], name: str
) -> None:
    record = houses[name]
    keep(record)
    net = network(record)
    for device in record.devices:
        page = visitor.see(url("moved", "rcd", home=name, device=device.ref))
        wanted = [where(s) for s in suspects(net, device.ref)]
        assert things(page) == wanted


def test_a_way_by_itself_is_left_off_when_it_trips_again(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.street(b.board("B1", b.rcbo("W1", b.circuit("C1", b.socket("P1")))))))
    page = visitor.see(url("moved", "rcd", "rcd-on", home="H1", device="W1"))
    assert "to=fault" in answers(page)["It trips again"]


def test_fuses_below_an_rcd_stay_where_they_are(
    visitor: CheckedClient, keep: Keep
) -> None:
    fuse = b.device("W1", b.circuit("C1", b.socket("P1")), kind="fuse_rewirable")
    keep(b.home(b.street(b.board("B1", b.rcd("R1", fuse)))))
    page = visitor.see(
        url("moved", "rcd", "rcd-on", "ways-off", home="H1", device="R1")
    )
    assert "A fuse stays where it is" in page.main


def test_nobody_knows_which_shows_all_it_may_be(at_h10: CheckedClient) -> None:
    pick = at_h10.see(url("moved", "rcd"))
    assert pick.h1 == "Which one has moved?"
    page = press(at_h10, pick, "I cannot tell which")
    assert "Garage socket" in things(page)
    assert "Washing machine socket, Kitchen" in things(page)
    assert len(things(page)) == len(set(things(page)))


def test_the_way_that_trips_is_named_and_what_hangs_on_it_is_missed(
    at_h10: CheckedClient,
) -> None:
    pick = at_h10.see(url(*RCD, device="B1.R1"))
    assert pick.h1 == "Which way trips it?"
    assert len(answers(pick)) == 4
    page = at_h10.see(url(*RCD, device="B1.R1", way="B1.W1"))
    assert page.h1 == "Leave that way off and call an electrician"
    assert "Washing machine or dryer: Washing machine socket" in page.main
    other = at_h10.see(url(*RCD, device="B1.R1", way="B1.W2"))
    assert "Washing machine" not in other.main
    told = press(at_h10, page, "What to tell them")
    assert "The way that trips it: Way 1, “KITCHEN” (B1.W1)." in told.main


def test_the_way_back_leads_step_by_step_to_the_first_screen(
    at_h10: CheckedClient,
) -> None:
    page = at_h10.see(url(*RCD, "tell", device="B1.R1", way="B1.W1"))
    heads = [page.h1]
    while "Back" in page.links:
        page = at_h10.see(page.links["Back"])
        heads.append(page.h1)
    assert heads == [
        "What to tell the electrician",
        "Leave that way off and call an electrician",
        "Which way trips it?",
        "Switch on one way at a time",
        "Switch off every way below it",
        "Switch it on, once",
        "Unplug what hangs on it",
        "Which one has moved?",
        "What has moved?",
        "Before you touch anything",
    ]


def test_answers_that_do_not_follow_begin_anew(at_h10: CheckedClient) -> None:
    for codes in (("neutral",), ("moved", "tell"), ("x" * 300,), ("moved",) * 99):
        assert at_h10.get(url(*codes)).location == BASE


@pytest.mark.parametrize("name", ["device", "way", "point"])
def test_what_is_not_in_the_record_is_refused(at_h10: CheckedClient, name: str) -> None:
    answer = at_h10.get(url("moved", "rcd", **{name: "GONE"}))
    assert answer.status_code == 404


def test_a_walk_is_kept_by_one_press_and_taken_back_by_another(
    at_h10: CheckedClient, stored: Stored
) -> None:
    kept = at_h10.save(url(*NEUTRAL, device="B1.R1"), press="Keep this as an entry")
    assert kept.h1 == "What has tripped"
    assert "It has tripped once, on " in kept.main
    (trip,) = stored("h10").trips
    assert (trip.moved, trip.device, trip.outcome) == ("rcd", "B1.R1", "left_off")
    assert trip.trail == " ".join(NEUTRAL)
    assert trip.happened_at is not None
    assert kept.undo == f"Kept: {trip.title} ({trip.ref})."
    at_h10.go_on(at_h10.submit_on(kept, press="Undo"))
    assert stored("h10").trips == ()


def test_what_tripped_before_is_counted_where_it_trips_again(
    visitor: CheckedClient, keep: Keep, houses: dict[str, Record]
) -> None:
    record = houses["h10"]
    trips = tuple(
        Trip(ref=f"J{n}", device="B1.R1", moved="rcd", happened_at=f"{day}T12:00:00Z")
        for n, day in enumerate(("2026-05-01", "2026-03-04", "2026-04-01"))
    )
    keep(record.having(trips=trips))
    page = visitor.see(url("moved", "rcd", device="B1.R1"))
    assert "It has tripped before: 3 times, since 4 March 2026." in page.main
    log = visitor.see("/homes/h10/trips/").main
    assert "It has tripped 3 times, since 4 March 2026." in log
    assert log.index("1 May 2026") < log.index("1 April 2026") < log.rindex("4 March")


def test_an_entry_is_changed_and_deleted_by_the_form(
    at_h10: CheckedClient, stored: Stored
) -> None:
    at_h10.save(url(*NEUTRAL, device="B1.R1"), press="Keep this as an entry")
    typed = {
        "note": "Heavy rain.",
        "happened_at": "2026-02-03T21:05",
        "outcome": "mended",
    }
    after = at_h10.save("/homes/h10/trips/J1/edit", typed)
    assert "Heavy rain." in after.main
    assert "3 February 2026, 21:05" in after.main
    assert "Mended" in after.main
    wrong = at_h10.submit("/homes/h10/trips/J1/edit", happened_at="last night")
    assert wrong.status == 422
    assert wrong.error("happened_at").startswith("Enter a day and an hour")
    assert wrong.value("happened_at") == "last night"
    at_h10.save("/homes/h10/trips/J1/delete", press="Delete")
    assert stored("h10").trips == ()


def test_nothing_is_kept_of_no_walk(at_h10: CheckedClient, stored: Stored) -> None:
    for fields in ({}, {"to": "neutral"}):
        assert at_h10.send("/homes/h10/trips/", fields).status == 422
    assert stored("h10").trips == ()


def test_it_is_reached_from_where_one_stands(
    at_h10: CheckedClient, houses: dict[str, Record]
) -> None:
    places = ("", "boards/B1/", "devices/B1.R1/", "ask/")
    for place in places:
        assert "It has tripped" in at_h10.see(f"/homes/h10/{place}").links
    from_device = at_h10.see("/homes/h10/devices/B1.R1/").links["It has tripped"]
    assert (
        houses["h10"].by_ref["B1.R1"].title
        in press(
            at_h10,
            at_h10.see(from_device),
            "No, none of these",
            "A device with a test button",
        ).main
    )
    chart = at_h10.see("/homes/h10/boards/B1/chart")
    sheet = at_h10.get(chart.links["If it trips, PDF"])
    assert "If it trips" in pdf_text(sheet.get_data())


def test_on_a_board_that_is_hot_nothing_is_switched_on_again(
    visitor: CheckedClient, keep: Keep
) -> None:
    hot = b.board("B1", b.main_switch("MS", b.rcd("R1", b.way("W1"))), condition="hot")
    keep(b.home(b.street(hot)))
    home = b.home().home.ref
    assert "something is wrong" in visitor.see(f"/homes/{home}/tripped/?to=stop").main
    for codes in (("moved", "rcd"), ("moved", "rcd", "rcd-on")):
        answer = visitor.get(url(*codes, home=home, device="R1"))
        place = answer.headers["Location"]
        assert "to=leave" in place
        assert "leave it off" in visitor.see(place).main
