"""The walk: two touches a point, one touch a mark, on from where one stopped."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from werkzeug.test import TestResponse

from app.domain.record import Point, Record, Room
from app.domain.usual import usual_places
from tests.pages import CheckedClient, Page, text_of

Stored = Callable[..., Record]
WALK = "/homes/H1/walk/"
ROOMS = "/homes/H1/walk/rooms"
KITCHEN = "/homes/H1/walk/rooms/R1"
HALL = "/homes/H1/walk/rooms/R2"
JSON = {"Accept": "application/json"}


def newest(record: Record) -> Point:
    return record.points[-1]


def room(record: Record, ref: str) -> Room:
    found = record.find(Room, ref)
    assert found is not None
    return found


def touch(
    browser: CheckedClient, kind: str, place: str = "under the worktop", **more: Any
) -> Page:
    """Touch what it is, then where."""
    return browser.save(KITCHEN, {"kind": kind, **more}, press=place)


def data(answer: TestResponse, status: int = 200) -> Any:
    assert (answer.status_code, answer.mimetype) == (status, "application/json")
    return answer.get_json()


def lines(page: Page) -> list[str]:
    return [
        text_of(e)
        for e in page.all("summary")
        if "walked__line" in (e.get("class") or "")
    ]


def test_a_point_is_listed_by_what_it_is_and_where(
    here: CheckedClient, stored: Stored
) -> None:
    after = touch(here, "double_socket")
    point = newest(stored())
    assert (point.room, point.kind, point.place, point.count) == (
        "R1",
        "double_socket",
        "under the worktop",
        1,
    )
    assert (after.h1, lines(after)[0]) == (
        "Kitchen",
        "Double socket-outlet, under the worktop",
    )
    assert after.undo == (
        "Added Double socket-outlet, under the worktop in Kitchen (P4)."
    )


def test_nothing_but_kind_place_and_count_is_said_of_it(
    here: CheckedClient, stored: Stored
) -> None:
    touch(here, "light", "over the sink", count="4")
    point = newest(stored())
    plain = Point(ref="P4", room="R1", kind="light", place="over the sink", count=4)
    assert point == plain


def test_places_are_offered_for_the_kind_of_room(here: CheckedClient) -> None:
    buttons = {
        b.get("value") for b in here.see(KITCHEN).all("button") if b.get("name") == "at"
    }
    for where in ("low", "high", "door"):
        assert set(usual_places("kitchen", where)) <= buttons


def test_ones_own_words_are_taken_alone_or_with_a_place(
    here: CheckedClient, stored: Stored
) -> None:
    here.save(KITCHEN, {"kind": "boiler", "place": " by the  flue "}, press="Add")
    assert newest(stored()).place == "by the  flue"
    form = {"kind": "cooker", "at": "by the cooker", "place": "low", "count": "1"}
    here.send(KITCHEN, form)
    assert newest(stored()).place == "by the cooker, low"


def test_where_it_is_may_stay_open(here: CheckedClient, stored: Stored) -> None:
    after = here.save(KITCHEN, {"kind": "unknown"}, press="Add")
    assert newest(stored()).place == ""
    assert lines(after)[0] == "Not known"


def test_likely_kinds_come_first_and_every_kind_can_be_listed(
    here: CheckedClient,
) -> None:
    page = here.see(KITCHEN)
    codes = [e.get("value") for e in page.all("input") if e.get("name") == "kind"]
    assert codes[:4] == ["double_socket", "light", "switch", "fused_connection_unit"]
    assert len(codes) == len(set(codes)) == 36
    [folded] = [e for e in page.all("details") if "choose__others" in e.get("class")]
    assert len(list(folded.iter("input"))) == 36 - 11


@pytest.mark.parametrize(
    ("fields", "box", "sentence"),
    [
        ({"kind": ""}, "kind", "Choose what it is."),
        ({"kind": "piano"}, "kind", "Choose one from the list."),
        ({"count": "many"}, "count", "Enter a number, such as 2."),
        ({"count": "100"}, "count", "Enter a number from 1 to 99."),
        ({"count": "0"}, "count", "Enter a number from 1 to 99."),
        (
            {"place": "x" * 121},
            "place",
            "Enter at most 120 characters; there are 121.",
        ),
        (
            {"at": "y" * 100, "place": "x" * 100},
            "place",
            "This: String should have at most 120 characters.",
        ),
    ],
)
def test_what_cannot_be_listed_is_said_beside_its_field(
    here: CheckedClient,
    stored: Stored,
    small: Record,
    fields: dict[str, str],
    box: str,
    sentence: str,
) -> None:
    form = {"kind": "light", "place": "", "count": "2", "once": "a"} | fields
    page = here.send(KITCHEN, form)
    assert (page.status, page.h1, page.error(box)) == (422, "Kitchen", sentence)
    assert page.value("count", "Add") == form["count"]
    assert page.value("place", "Add") == form["place"]
    answer = here.send(KITCHEN, form, JSON)
    assert data(answer.response, 422) == {
        "errors": {box: [sentence]},
        "sentence": sentence,
    }
    assert stored() == small


def test_a_form_sent_twice_lists_one_point_and_the_next_form_another(
    here: CheckedClient, stored: Stored
) -> None:
    form = {"kind": "light", "at": "ceiling", "count": "1", "once": "first"}
    for _ in range(3):
        assert here.send(KITCHEN, form).status == 303
    assert len(stored().points) == 4
    here.send(KITCHEN, form | {"once": "second"})
    assert len(stored().points) == 5


def test_the_list_comes_as_data_when_data_is_asked_for(here: CheckedClient) -> None:
    form = {"kind": "light", "at": "ceiling", "count": "2", "once": "k"}
    first = data(here.send(KITCHEN, form, JSON).response)
    assert first["room"] == "R1"
    assert first["points"][-1] == {
        "ref": "P4",
        "title": "Light, ceiling",
        "facts": "2 alike",
    }
    assert data(here.send(KITCHEN, form, JSON).response) == first


def test_a_browser_that_takes_anything_gets_the_page(here: CheckedClient) -> None:
    form = {"kind": "light", "count": "1", "once": "k"}
    page = here.send(KITCHEN, form, {"Accept": "text/html,*/*;q=0.8"})
    assert page.status == 303


def test_what_was_written_down_earlier_says_when(
    here: CheckedClient, stored: Stored
) -> None:
    then = datetime.now(UTC) - timedelta(hours=2)
    form = {"kind": "light", "count": "1", "once": "k"}
    for made_at in ("", "noon", "2026-03-01", f"{datetime.now(UTC):%Y-%m-%dT%TZ}"):
        after = here.go_on(here.send(KITCHEN, form | {"made_at": made_at}))
        assert "Written down" not in after.undo
    late = form | {"made_at": f"{then:%Y-%m-%dT%TZ}"}
    after = here.go_on(here.send(KITCHEN, late))
    local = then.astimezone()
    assert f"Written down {local:%H:%M} on {local.day} " in after.undo
    assert len(stored().points) == 8


def test_undo_takes_it_back_and_stays_in_the_room(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    after = touch(here, "cooker")
    back = here.go_on(here.submit_on(after, press="Undo"))
    assert (back.h1, stored()) == ("Kitchen", small)


@pytest.mark.parametrize(
    ("press", "field", "value", "said"),
    [
        ("Freezer", "care", ("freezer",), "missed if it goes off: freezer"),
        (
            "Router",
            "care",
            ("router",),
            "missed if it goes off: router, phone or this computer",
        ),
        (
            "Medical",
            "care",
            ("medical",),
            "missed if it goes off: medical equipment",
        ),
        ("Not looked behind", "looked_behind", "no", "not looked behind"),
        ("Could not get at it", "looked_behind", "no_access", "could not get at it"),
        ("One more alike", "count", 2, "2 alike"),
    ],
)
def test_one_touch_marks_a_point_and_undo_takes_it_back(
    here: CheckedClient,
    stored: Stored,
    press: str,
    field: str,
    value: object,
    said: str,
) -> None:
    page = here.see(HALL)
    after = here.go_on(here.submit_on(page, press=press))
    assert getattr(stored().by_ref["P2"], field) == value
    assert lines(after) == [f"Light {said}"]
    assert after.undo.startswith("Light: ")
    here.go_on(here.submit_on(after, press="Undo"))
    assert getattr(stored().by_ref["P2"], field) != value


@pytest.mark.parametrize("press", ["Heating", "Alarm", "Not looked behind"])
def test_the_same_touch_takes_a_mark_off(
    here: CheckedClient, stored: Stored, small: Record, press: str
) -> None:
    on = here.go_on(here.submit_on(here.see(HALL), press=press))
    [button] = [b for b in on.all("button") if text_of(b) == press]
    assert button.get("aria-pressed") == "true"
    here.go_on(here.submit_on(on, press=press))
    assert stored() == small


def test_a_mark_sent_twice_counts_once(here: CheckedClient, stored: Stored) -> None:
    for _ in range(2):
        here.send("/homes/H1/walk/points/P2", {"mark": "count=2"})
        here.send("/homes/H1/walk/points/P2", {"mark": "care=freezer"})
    point = stored().by_ref["P2"]
    assert isinstance(point, Point)
    assert (point.count, point.care) == (2, ("freezer",))


def test_marks_leave_the_rest_of_a_point_alone(
    here: CheckedClient, stored: Stored
) -> None:
    before = stored().by_ref["P1"]
    here.send("/homes/H1/walk/points/P1", {"mark": "care=freezer"})
    assert stored().by_ref["P1"] == before.model_copy(update={"care": ("freezer",)})


@pytest.mark.parametrize(
    "sent",
    ["", "care=", "care=gold", "count=", "count=0", "count=100", "count=٣", "ref=X"],
)
def test_what_is_no_mark_is_refused(
    here: CheckedClient, stored: Stored, small: Record, sent: str
) -> None:
    page = here.send("/homes/H1/walk/points/P2", {"mark": sent})
    assert (page.status, stored()) == (422, small)


def test_the_point_that_was_marked_stays_unfolded(here: CheckedClient) -> None:
    touch(here, "light", "over the sink")
    after = here.send("/homes/H1/walk/points/P1", {"mark": "care=freezer"})
    assert after.location.endswith("at=P1#point-P1")
    unfolded = [
        e.get("id")
        for e in here.see(after.location).all("details")
        if e.get("open") is not None
    ]
    assert unfolded == ["point-P1"]


@pytest.mark.parametrize(
    ("press", "code"),
    [("All of it", "all"), ("In part", "part"), ("Could not get in", "no_access")],
)
def test_a_room_is_marked_and_the_walk_goes_on(
    here: CheckedClient, stored: Stored, small: Record, press: str, code: str
) -> None:
    here.send("/homes/H1/walk/rooms/R1/looked", {"looked_at": "not_yet"})
    after = here.save(KITCHEN, press=press)
    assert (after.h1, room(stored(), "R1").looked_at) == ("Hall", code)
    assert after.undo.startswith("Kitchen, looked at: ")
    back = here.go_on(here.submit_on(after, press="Undo"))
    assert (back.h1, room(stored(), "R1").looked_at) == ("Hall", "not_yet")


def test_after_the_last_room_come_all_rooms(here: CheckedClient) -> None:
    assert here.save(HALL, press="In part").h1 == "All rooms"
    links = here.see(HALL).links
    assert links["Next All rooms"] == ROOMS
    assert links["Back Kitchen"] == KITCHEN
    assert here.see(KITCHEN).links["Back All rooms"] == ROOMS


def test_how_far_a_room_was_looked_at_is_one_of_the_answers(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.send("/homes/H1/walk/rooms/R1/looked", {"looked_at": "twice"})
    assert (page.status, stored()) == (422, small)


def test_the_walk_goes_on_where_it_stopped(here: CheckedClient) -> None:
    assert here.see(WALK).h1 == "Kitchen"
    here.save(HALL, {"kind": "smoke_alarm"}, press="ceiling")
    assert here.see(WALK).h1 == "Hall"
    touch(here, "cooker")
    assert here.see(WALK).h1 == "Kitchen"


def test_it_stands_among_what_finds_out(here: CheckedClient) -> None:
    assert here.see("/homes/H1/").links["Find out"] == WALK


def test_what_is_usual_is_offered_until_it_is_listed(here: CheckedClient) -> None:
    page = here.see(KITCHEN)
    assert page.links["Extractor fan"] == f"{KITCHEN}?kind=extractor"
    assert "Boiler" not in page.links
    assert "missing" not in page.main
    chosen = here.see(page.links["Extractor fan"])
    assert chosen.value("kind", "Add") == "extractor"
    after = here.save(page.links["Extractor fan"], press="over the sink")
    assert "Extractor fan" not in after.links


def test_a_kind_that_there_is_not_is_not_chosen(here: CheckedClient) -> None:
    assert "kind" not in here.see(f"{KITCHEN}?kind=piano").values("Add")


def test_all_rooms_stand_in_walking_order_with_what_is_known(
    here: CheckedClient,
) -> None:
    here.save(HALL, press="In part")
    rows = [text_of(li) for li in here.see(ROOMS).one("ol").findall("li")]
    assert rows == [
        "Kitchen: 2 points, looked at: all of it",
        "Hall: 1 point, looked at: in part",
    ]


def test_places_often_walked_past_become_rooms_with_one_touch(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    after = here.save(ROOMS, press="Add: Loft")
    assert (after.h1, after.undo) == ("Loft", "Added room Loft (R3).")
    loft = room(stored(), "R3")
    assert (loft.kind, loft.storey, loft.looked_at) == ("loft", "loft", "not_yet")
    assert "Add: Loft" not in here.see(ROOMS).main
    back = here.go_on(here.submit_on(after, press="Undo"))
    assert (back.h1, stored()) == ("All rooms", small)


def test_a_place_sent_twice_is_added_once(here: CheckedClient, stored: Stored) -> None:
    form = {"place": "garage", "once": "k"}
    for _ in range(2):
        assert here.send(ROOMS, form).location.startswith(f"{ROOMS}/R3")
    assert len(stored().rooms) == 3
    assert here.send(ROOMS, {"place": "attic"}).status == 422


def test_things_often_walked_past_lead_to_the_rooms_that_have_them(
    here: CheckedClient,
) -> None:
    links = here.see(ROOMS).links
    assert links["Smoke alarm in: Hall"] == f"{HALL}?kind=smoke_alarm"
    assert links["Heat alarm in: Kitchen"] == f"{KITCHEN}?kind=heat_alarm"
    here.save(HALL, {"kind": "smoke_alarm"}, press="ceiling")
    assert "Smoke alarm in: Hall" not in here.see(ROOMS).links


def test_a_home_without_rooms_is_asked_for_them(visitor: CheckedClient) -> None:
    visitor.save("/homes/new", name="New")
    page = visitor.see("/homes/new/walk/")
    assert page.h1 == "All rooms"
    assert page.links["List the rooms"] == "/homes/new/rooms/quick/table"


@pytest.mark.parametrize("place", ["rooms/R9", "rooms/R9/looked", "points/P9"])
def test_what_is_not_there_is_not_found(here: CheckedClient, place: str) -> None:
    form = {"kind": "light", "count": "1", "looked_at": "all", "mark": "count=2"}
    assert here.send(f"{WALK}{place}", form).status == 404


def test_the_demo_home_can_be_walked_from_end_to_end(
    at_demo: CheckedClient, demo: Record
) -> None:
    home = f"/homes/{demo.home.ref}/walk"
    seen, url = [], f"{home}/rooms/{demo.rooms[0].ref}"
    while not url.endswith("/rooms"):
        page = at_demo.see(url)
        seen.append(page.h1)
        [url] = [u for text, u in page.links.items() if text.startswith("Next ")]
    assert seen == [r.name for r in demo.rooms]
