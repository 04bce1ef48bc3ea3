"""The form of an item, moving it, deleting it: as a person does it on the pages."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from app.domain.named import called, in_a_sentence
from app.domain.record import SORTS, Device, Point, Record, Source
from tests.pages import CheckedClient, Page

Stored = Callable[..., Record]
EDIT = "/homes/H1/points/P1/edit"
NEW = {
    "rooms": ({"name": "Loft"}, ""),
    "sources": ({"kind": "solar", "present": "yes"}, ""),
    "intake": ({"name": "Isolator"}, "?kind=isolator"),
    "boards": ({"name": "Garage board"}, ""),
    "devices": ({"way": "3"}, "?kind=circuit_breaker&board=B1"),
    "circuits": ({"name": "Cooker", "ways_1": "W2"}, ""),
    "points": ({"kind": "light", "room": "R1"}, ""),
    "ties": ({"point": "P3", "tied_to": "C1", "grade": "3"}, ""),
    "works": ({"name": "New light", "note": "In March."}, ""),
    "papers": ({"name": "A report", "number": "17"}, ""),
    "reminders": ({"name": "Look at the seal", "basis": "It was loose."}, ""),
    "controls": ({"controller": "P1", "controlled": "P2"}, ""),
    "results": ({"about": "W1", "note": "On the lid of the board."}, ""),
    "trips": ({"moved": "rcd", "outcome": "found", "note": "Rain."}, ""),
}


def test_every_sort_has_a_sample() -> None:
    assert sorted(NEW) == sorted(c.plural for c in SORTS.values() if c.by_form)


@pytest.mark.parametrize("plural", NEW)
def test_a_new_one_is_shown_asked_for_and_saved(
    here: CheckedClient, stored: Stored, small: Record, plural: str
) -> None:
    fields, query = NEW[plural]
    after = here.save(f"/homes/H1/new/{plural}{query}", fields)
    record = stored()
    [item] = [i for i in record.items() if i not in tuple(small.items())]
    assert item.plural == plural
    values = {name: getattr(item, name.removesuffix("_1")) for name in fields}
    if "ways_1" in values:
        values["ways_1"] = item.ways[0]  # type: ignore[attr-defined]
    assert values == fields
    assert after.undo == f"Added {item.noun.lower()} {in_a_sentence(record, item)}."
    assert called(record, item) in after.main


@pytest.mark.parametrize("plural", NEW)
def test_each_item_can_be_opened_saved_unchanged_and_deleted(
    here: CheckedClient, stored: Stored, plural: str
) -> None:
    here.save(f"/homes/H1/new/{plural}{NEW[plural][1]}", NEW[plural][0])
    item = getattr(stored(), plural)[-1]
    before = stored()
    url = f"/homes/H1/{plural}/{item.ref}"
    assert here.save(f"{url}/edit").undo == ""
    assert stored() == before
    after = here.save(f"{url}/delete", press="Delete")
    assert after.undo == f"Deleted {item.noun.lower()} {in_a_sentence(before, item)}."
    assert item.ref not in stored().by_ref


def test_a_change_is_saved_and_can_be_undone(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    after = here.save(EDIT, note="It buzzes.", place="by the door")
    assert (
        after.undo == "Changed point Socket-outlet, size not noted, by the door (P1)."
    )
    assert "It buzzes." in after.main
    point = stored().find(Point, "P1")
    assert point is not None
    assert point.note == "It buzzes."
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_a_tie_from_a_document_says_so_before_it_is_changed(
    here: CheckedClient,
) -> None:
    url = "/homes/H1/ties/T-P1-C1-feeds/edit"
    said = "An electrician’s document says so."
    assert said not in here.see(url).main
    here.save(url, grade="5")
    assert said in here.see(url).main


def test_the_undo_bar_is_gone_once_it_was_used(here: CheckedClient) -> None:
    sent = here.submit(EDIT, note="x")
    here.submit_on(here.see(sent.location), press="Undo")
    assert here.see(sent.location).undo == ""


def test_what_is_wrong_is_said_beside_the_field_and_what_was_typed_stays(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    typed = {"count": "many", "place": "behind <b>it</b>", "fuse_a": "500"}
    page = here.submit(EDIT, typed)
    assert page.status == 422
    assert page.error("count") == "Enter a number, such as 2."
    assert page.error("fuse_a") == "Enter a number from 0 to 100."
    assert page.errors == [
        f"How many alike: {page.error('count')}",
        f"Fuse in it: {page.error('fuse_a')}",
    ]
    assert {name: page.value(name) for name in typed} == typed
    assert stored() == small
    here.go_on(here.submit_on(page, count="2", fuse_a="13"))
    point = stored().find(Point, "P1")
    assert point is not None
    assert (point.count, point.place) == (2, "behind <b>it</b>")


def test_what_is_needed_is_asked_for(here: CheckedClient) -> None:
    page = here.submit("/homes/H1/new/rooms", name="  ")
    assert (page.status, page.error("name")) == (422, "Enter a name.")
    page = here.submit("/homes/H1/new/points")
    assert (page.status, page.error("kind")) == (422, "Choose what it is.")
    page = here.submit("/homes/H1/new/ties")
    assert page.error("point") == "Choose a point."
    assert page.error("tied_to") == "Choose what it is tied to."


def test_a_tie_is_called_by_what_it_joins(here: CheckedClient) -> None:
    delete = "/homes/H1/ties/T-P1-C1-feeds/delete"
    page = here.see(delete)
    joins = "Socket-outlet, size not noted, by the sink, fed by Kitchen sockets"
    assert page.h1 == f"Delete {joins}?"
    after = here.save(delete, press="Delete")
    assert after.undo == f"Deleted tie {joins} (T-P1-C1-feeds)."
    new = here.save("/homes/H1/new/ties", TIE)
    assert new.undo.startswith(f"Added tie {joins} (T")
    control = here.see("/homes/H1/controls/K-P3-P2/delete").h1
    assert control.startswith("Delete ")
    assert ", switching " in control


TO_COME = "2199-05-03"
PAPER = {"kind": "condition_report"}
TIE = {"point": "P1", "tied_to": "C1"}


@pytest.mark.parametrize(
    ("url", "name", "typed"),
    [
        ("/homes/H1/new/papers", "dated", PAPER),
        ("/homes/H1/new/works", "done_on", {"name": "New light", "state": "done"}),
        ("/homes/H1/new/ties", "seen_on", TIE),
        ("/homes/H1/devices/RCD/edit", "button_pressed_on", {}),
        ("/homes/H1/edit", "inspected_on", {}),
        ("/homes/H1/new/trips", "happened_at", {}),
    ],
)
def test_a_day_to_come_is_refused_beside_its_field(
    here: CheckedClient, url: str, name: str, typed: dict[str, str]
) -> None:
    day = f"{TO_COME}T10:00:00" if name == "happened_at" else TO_COME
    page = here.submit(url, {**typed, name: day})
    assert (page.status, page.error(name)) == (
        422,
        "That day is still to come. Enter one that has come.",
    )
    assert page.value(name) == day


@pytest.mark.parametrize(
    ("url", "first", "name"),
    [
        ("/homes/H1/new/papers", "dated", "inspect_again_by"),
        ("/homes/H1/edit", "inspected_on", "inspect_again_by"),
    ],
)
def test_a_day_before_the_one_that_it_follows_is_refused(
    here: CheckedClient, url: str, first: str, name: str
) -> None:
    typed = {first: "2024-06-01", name: "2023-06-01"}
    page = here.submit(url, typed)
    assert page.status == 422
    assert page.error(name) == "That day is before 1 June 2024."
    assert {n: page.value(n) for n in typed} == typed
    after = here.submit_on(page, {name: "2029-06-01"})
    assert after.status == 303


def test_a_circuit_refused_keeps_its_ways_and_has_no_more_boxes(
    here: CheckedClient,
) -> None:
    page = here.submit("/homes/H1/new/circuits", ways_2="W2", length_m="long")
    assert page.errors == ["Length: Enter a number, such as 2.5."]
    assert page.value("ways_2") == "W2"
    assert "ways_3" not in page.values()


def test_a_reference_in_use_is_refused(here: CheckedClient, stored: Stored) -> None:
    page = here.submit("/homes/H1/new/rooms", ref="p1", name="Loft")
    assert page.status == 422
    assert page.error("ref") == "P1 is in use already. Enter another reference."
    page = here.submit("/homes/H1/rooms/R1/edit", ref="C1")
    assert page.error("ref") == "C1 is in use already. Enter another reference."
    assert "C1" in {c.ref for c in stored().circuits}


def test_a_new_reference_is_followed(here: CheckedClient, stored: Stored) -> None:
    after = here.save("/homes/H1/circuits/C1/edit", ref="c1")
    assert "Kitchen sockets" in after.main
    assert [tie.tied_to for tie in stored().ties] == ["c1", "C2"]


def test_a_circle_is_refused_beside_the_feed(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.submit("/homes/H1/devices/MS/edit", fed_from="RCD")
    assert page.status == 422
    assert "MS" in page.error("fed_from")
    assert "feed each other" in page.error("fed_from")
    assert page.value("fed_from") == "RCD"
    assert stored() == small


@pytest.mark.parametrize(
    "address",
    [
        "/homes/H1/points/P9/edit",
        "/homes/H1/points/C1/edit",
        "/homes/H1/points/P9/delete",
        "/homes/H1/new/nothing",
        "/homes/H1/nothing/P1/edit",
        "/homes/H1/nothing/P1/delete",
        "/homes/H9/points/P1/edit",
        "/homes/H9/new/points",
        "/homes/H1/points/P9/",
        "/homes/H1/rooms/P1/",
        "/homes/H1/rooms/R9/points",
        "/homes/H1/boards/B9/",
        "/homes/H1/boards/B9/ways",
        "/homes/H1/circuits/C9/",
        "/homes/H1/devices/W9/",
    ],
)
def test_what_is_not_there_is_not_found(here: CheckedClient, address: str) -> None:
    page = here.see(address, 404)
    assert page.h1 == "There is no such page"
    if not address.endswith("/"):
        assert here.send(address, {"mark": ""}).status in (404, 405)


def test_two_who_change_the_same_both_see_it(
    here: CheckedClient, stored: Stored
) -> None:
    mine, theirs = here.see(EDIT), here.see(EDIT)
    here.go_on(here.submit_on(theirs, note="theirs", place="by the oven"))
    page = here.submit_on(mine, note="mine", count="2")
    assert page.status == 409
    assert page.title.startswith("Change point P1")
    rows = [" ".join(e.itertext()).split() for e in page.one("table").iter("tr")]
    assert ["Note", "theirs", "mine"] in rows
    assert {r[0] for r in rows[1:]} == {"Where", "Note", "How"}
    assert page.value("note") == "mine"
    kept = stored().find(Point, "P1")
    assert kept is not None
    assert (kept.note, kept.count) == ("theirs", 1)
    here.go_on(here.submit_on(page))
    won = stored().find(Point, "P1")
    assert won is not None
    assert (won.note, won.count, won.place) == ("mine", 2, "by the sink")


def test_a_third_change_is_seen_again(here: CheckedClient) -> None:
    mine = here.see(EDIT)
    here.save(EDIT, note="second")
    page = here.submit_on(mine, note="mine")
    here.save(EDIT, note="third")
    again = here.submit_on(page)
    assert again.status == 409
    assert "third" in again.main


def test_a_form_sent_twice_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = here.see("/homes/H1/new/points?kind=light")
    first = here.submit_on(page, place="over the table")
    record = stored()
    again = here.submit_on(page, place="over the table")
    assert (again.status, again.location) == (303, first.location)
    assert stored() == record


def test_a_change_sent_twice_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = here.see(EDIT)
    first = here.submit_on(page, note="x", ref="P1x")
    record = stored()
    again = here.submit_on(page, note="x", ref="P1x")
    assert (again.status, again.location) == (303, first.location)
    assert stored() == record


def test_a_new_reference_sent_twice_is_followed_though_others_changed_along(
    here: CheckedClient, stored: Stored
) -> None:
    name = stored().intake[1].title
    here.save("/homes/H1/intake/", press=f"Earlier: {name}")
    page = here.see("/homes/H1/intake/CUT/edit")
    first = here.submit_on(page, ref="ZCUT")
    assert stored().intake[0].fed_from == "ZCUT"
    again = here.submit_on(page, ref="ZCUT")
    assert (again.status, again.location) == (303, first.location)
    assert again.location.endswith("#item-ZCUT")


def test_going_back_and_typing_something_else_is_no_repetition(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see("/homes/H1/new/points?kind=light")
    here.submit_on(page, place="over the table")
    here.go_on(here.submit_on(page, place="over the sink"))
    places = [point.place for point in stored().points]
    assert places[-2:] == ["over the table", "over the sink"]


def test_two_who_add_at_once_each_add_their_own(
    here: CheckedClient, stored: Stored
) -> None:
    one, other = (here.see("/homes/H1/new/points?kind=light") for _ in range(2))
    assert one.value("ref") == other.value("ref") == "P4"
    here.go_on(here.submit_on(one, place="over the table"))
    mine = here.submit_on(other, place="over the sink")
    assert "/points/P5" in mine.location
    again = here.submit_on(other, place="over the sink")
    assert (again.status, again.location) == (303, mine.location)
    assert [p.ref for p in stored().points if p.place == "over the sink"] == ["P5"]


def test_a_reference_of_ones_own_is_never_exchanged(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.submit("/homes/H1/new/points?kind=light", ref="P1")
    assert page.status == 422
    assert "P1 is in use already" in page.error("ref")


def test_deleting_says_what_goes_along_and_what_stays(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.see("/homes/H1/boards/B1/delete")
    assert page.h1 == "Delete Main board?"
    assert "Device: Way 1, “SKTS” (W1)" in page.main
    assert "Kitchen sockets (C1)" in page.main
    after = here.go_on(here.submit_on(page, press="Delete"))
    assert after.h1 == "Boards"
    assert stored().devices == ()
    assert stored().circuits[0].ways == ()
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_deleting_counts_what_has_no_name_and_names_the_rest(
    at_demo: CheckedClient,
) -> None:
    page = at_demo.see("/homes/demo/devices/B1.MS/delete")
    assert "This goes with it Round N2 38 readings This stays" in page.main
    assert "Way 1, “LIGHTS” (B1.F1)" in page.main


def test_deleting_what_changed_meanwhile_asks_again(
    here: CheckedClient, stored: Stored
) -> None:
    asked = here.see("/homes/H1/points/P1/delete")
    here.save(EDIT, note="new")
    page = here.submit_on(asked, press="Delete")
    assert page.status == 409
    assert page.h1 == "It has changed since: delete it all the same?"
    assert "P1" in stored().by_ref
    here.go_on(here.submit_on(page, press="Delete"))
    assert "P1" not in stored().by_ref


@pytest.mark.parametrize(
    ("url", "leads_to"),
    [
        ("points/P1", "Kitchen"),
        ("devices/W2", "Main board"),
        ("circuits/C1", "Circuits"),
        ("rooms/R1", "Rooms"),
        ("boards/B1", "Boards"),
        ("intake/TAIL", "Intake"),
        ("sources/GRID", "Sources"),
        ("ties/T-P2-C2-feeds", "Light"),
        ("controls/K-P3-P2", "Light"),
    ],
)
def test_after_deleting_one_is_where_it_was_listed(
    here: CheckedClient, url: str, leads_to: str
) -> None:
    after = here.save(f"/homes/H1/{url}/delete", press="Delete")
    assert after.h1 == leads_to


def test_a_device_moves_along_its_board(here: CheckedClient, stored: Stored) -> None:
    after = here.save("/homes/H1/devices/W2/", press="Move left")
    assert after.h1 == "Main board"
    assert after.undo == "Moved device Way 2 (W2)."
    assert [d.ref for d in stored().devices] == ["MS", "RCD", "W2", "W1"]
    here.save("/homes/H1/devices/W2/", press="Move right")
    assert [d.ref for d in stored().devices] == ["MS", "RCD", "W1", "W2"]
    end = here.save("/homes/H1/devices/W2/", press="Move right")
    assert end.undo == ""


def test_an_item_of_the_intake_moves(here: CheckedClient, stored: Stored) -> None:
    name = stored().intake[1].title
    after = here.save("/homes/H1/intake/", press=f"Earlier: {name}")
    assert after.h1 == "Intake"
    assert [i.ref for i in stored().intake] == ["MET", "CUT", "TAIL"]
    here.save("/homes/H1/intake/", press=f"Later: {name}")
    assert [i.ref for i in stored().intake] == ["CUT", "MET", "TAIL"]


def test_a_room_moves_along_the_walk(here: CheckedClient, stored: Stored) -> None:
    after = here.save("/homes/H1/rooms/", press="Earlier: Hall")
    assert after.h1 == "Rooms"
    assert [r.ref for r in stored().rooms] == ["R2", "R1"]


def test_moving_nowhere_is_refused(here: CheckedClient) -> None:
    page = here.send("/homes/H1/points/P1/move", {"way": "sideways"})
    assert (page.status, "up or down" in page.main) == (422, True)
    assert here.send("/homes/H1/points/P9/move", {"way": "up"}).status == 404


def test_another_like_it_begins_with_what_the_last_one_had(
    here: CheckedClient, stored: Stored
) -> None:
    fields = {"kind": "light", "room": "R2", "place": "on the stairs"}
    more = here.save("/homes/H1/new/points", fields, press="Save, and one more like it")
    assert more.h1 == "New point"
    assert more.undo.startswith("Added point")
    assert {name: more.value(name) for name in fields} == fields
    assert more.value("ref") not in stored().by_ref
    here.go_on(here.submit_on(more))
    assert len(stored().points) == 5


def test_another_device_like_it_is_not_asked_its_kind_again(
    here: CheckedClient,
) -> None:
    more = here.save(
        "/homes/H1/new/devices?kind=rcbo&board=B1",
        press="Save, and one more like it",
    )
    assert more.h1 == "New device"
    assert (more.value("kind"), more.value("board")) == ("rcbo", "B1")


def test_a_kind_is_chosen_first(here: CheckedClient) -> None:
    page = here.see("/homes/H1/new/devices?board=B1")
    assert page.h1 == "What is the new device?"
    form = here.see(page.links["RCBO"])
    assert (form.value("kind"), form.value("board")) == ("rcbo", "B1")
    assert form.value("fed_from") == "RCD"
    assert here.see(page.links["RCD"]).value("fed_from") == "MS"
    assert "guess to confirm" in form.main
    intake = here.see("/homes/H1/new/intake")
    assert intake.h1 == "What is the new intake item?"
    meter = here.see(intake.links["Meter"])
    assert meter.value("owner") == "meter_operator"
    assert meter.value("fed_from") == "TAIL"


def test_fields_that_a_kind_does_not_have_are_folded_away(
    here: CheckedClient,
) -> None:
    page = here.see("/homes/H1/new/devices?kind=blank&board=B1")
    folded = page.within(page.by_id["rated_current_a"], "details")
    assert folded is not None
    assert folded.get("open") is None
    wrong = here.submit_on(page, rated_current_a="x")
    opened = wrong.within(wrong.by_id["rated_current_a"], "details")
    assert opened.get("open") is not None


def test_the_circuit_of_a_way_is_begun_with_the_way(here: CheckedClient) -> None:
    here.save("/homes/H1/new/devices?kind=rcbo&board=B1", way="3")
    way = here.see("/homes/H1/devices/D5/")
    form = here.see(way.links["Add the circuit it feeds"])
    assert form.value("ways_1") == "D5"


def test_a_tie_is_made_and_changed_on_the_way_from_its_point_and_back(
    here: CheckedClient, stored: Stored
) -> None:
    point = here.see("/homes/H1/points/P3/")
    assert "What feeds it is not recorded. Treat it as live." in point.main
    form = here.see(point.links["Tie it to a circuit, or to what it is behind"])
    assert form.value("point") == "P3"
    after = here.go_on(here.submit_on(form, tied_to="C1", grade="3"))
    assert after.h1 == "Boiler"
    assert "it is on Kitchen sockets (C1)" in after.main
    change = here.see(after.links["Change the tie to Circuit: Kitchen sockets"])
    after = here.go_on(here.submit_on(change, grade="4"))
    assert after.h1 == "Boiler"
    assert stored().ties[-1].grade == "4"


def test_several_ticks_are_kept(here: CheckedClient, stored: Stored) -> None:
    here.save(EDIT, care=["router", "freezer"])
    point = stored().find(Point, "P1")
    assert point is not None
    assert set(point.care) == {"freezer", "router"}
    here.save(EDIT, care=[])
    assert stored().points[0].care == ()


def test_a_hyphen_says_that_nothing_is_written(
    here: CheckedClient, stored: Stored
) -> None:
    after = here.save("/homes/H1/devices/W1/edit", label_found="-")
    assert "Nothing is written there" in after.main
    assert label(stored()) == ""
    assert here.see("/homes/H1/devices/W1/edit").value("label_found") == "-"
    here.save("/homes/H1/devices/W1/edit", label_found="")
    assert label(stored()) is None


def label(record: Record) -> str | None:
    device = record.find(Device, "W1")
    assert device is not None
    return device.label_found


@pytest.mark.parametrize(
    ("typed", "kept"),
    [("2,5", "2.5"), ("2.50", "2.5"), (" 16 ", "16"), ("1e2", "100"), ("٣", "3")],
)
def test_a_number_is_taken_as_people_write_it(
    here: CheckedClient, stored: Stored, typed: str, kept: str
) -> None:
    here.save("/homes/H1/circuits/C1/edit", line_mm2=typed)
    assert str(stored().circuits[0].line_mm2) == kept


@pytest.mark.parametrize("typed", ["7,200", "1,000", "12,345"])
def test_a_comma_that_may_mean_thousands_is_asked_about(
    here: CheckedClient, typed: str
) -> None:
    page = here.submit("/homes/H1/circuits/C1/edit", connected_w=typed)
    assert page.status == 422
    assert "without a comma" in page.error("connected_w")
    assert page.value("connected_w") == typed


@pytest.mark.parametrize(
    "query",
    [
        "seen_on=yesterday",
        "seen_on=2026-01-01",
        "grade=99",
        "point=nothing",
        "ref=%3Cscript%3E",
        "copy=nothing",
        "note=%0A%0A",
    ],
)
def test_a_form_begun_with_odd_values_is_shown(here: CheckedClient, query: str) -> None:
    assert here.see(f"/homes/H1/new/ties?{query}").h1 == "New tie"


def test_a_form_begun_with_endless_values_stays_small(here: CheckedClient) -> None:
    page = here.see(f"/homes/H1/new/circuits?ways={'x' * 3000}")
    assert len(page.all("select")) < 30
    more = "&".join(["ways=W1"] * 300)
    assert len(here.see(f"/homes/H1/new/circuits?{more}").all("select")) < 30


def test_a_reference_that_a_page_uses_itself_is_taken(
    here: CheckedClient,
) -> None:
    for ref in ("main", "main-head", "search-box"):
        here.save("/homes/H1/new/intake?kind=isolator", ref=ref)
        here.save("/homes/H1/new/sources", ref=f"{ref}.s", kind="solar", present="yes")
    here.save("/homes/H1/sources/main.s/edit", ref="main-x")
    assert here.see("/homes/H1/intake/").h1 == "Intake"
    assert here.see("/homes/H1/sources/").h1 == "Sources"


def test_answers_of_the_same_form_are_pages(here: CheckedClient) -> None:
    page: Page = here.see("/homes/H1/sources/GRID/edit")
    assert page.options("kind")["Solar panels"] == "solar"
    source: Any = Source(ref="S", kind="solar")
    assert source.title in page.options("kind")
