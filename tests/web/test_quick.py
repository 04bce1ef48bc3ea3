"""The quick tables of rooms, of a room's points, of a board's ways."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest

from app.domain.edits import replaced
from app.domain.record import Circuit, Device, Point, Record, Tie
from tests.pages import CheckedClient

Stored = Callable[..., Record]
ROOMS = "/homes/H1/rooms/quick/table"
POINTS = "/homes/H1/rooms/R1/points"
WAYS = "/homes/H1/boards/B1/ways"
TABLES = [ROOMS, POINTS, WAYS]
SEVERAL = "~several"


def device(record: Record, ref: str) -> Device:
    found = record.find(Device, ref)
    assert found is not None
    return found


def feeds(record: Record, point: str) -> list[tuple[str, str]]:
    return [(t.tied_to, t.grade) for t in record.ties_of(point) if t.role == "feeds"]


@pytest.mark.parametrize("table", TABLES)
def test_a_table_sent_as_it_stands_changes_nothing(
    here: CheckedClient, stored: Stored, small: Record, table: str
) -> None:
    after = here.save(table)
    assert after.undo == ""
    assert stored() == small


def test_rooms_are_entered_in_the_order_of_the_walk(
    here: CheckedClient, stored: Stored
) -> None:
    fields = {"new~1-name": "Landing", "new~3-name": "Loft", "new~3-storey": "loft"}
    after = here.save(ROOMS, {**fields, "R1-name": "Big kitchen"})
    assert (after.h1, after.undo) == ("Rooms", "Entered the rooms.")
    rooms = [(r.ref, r.name, r.storey) for r in stored().rooms]
    assert rooms == [
        ("R1", "Big kitchen", "ground"),
        ("R2", "Hall", "ground"),
        ("R3", "Landing", "unknown"),
        ("R4", "Loft", "loft"),
    ]


def test_one_undo_takes_the_whole_table_back(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    after = here.save(ROOMS, {"new~1-name": "Landing", "R1-name": "Big kitchen"})
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_more_rows_come_after_saving(here: CheckedClient) -> None:
    page = here.save(ROOMS, {"new~1-name": "Landing"}, press="Save, and more rows")
    assert page.h1 == "Rooms in walking order"
    assert page.undo == "Entered the rooms."
    assert page.value("R3-name") == "Landing"
    assert page.value("new~6-name") == ""


def test_points_are_entered_with_what_feeds_them(
    here: CheckedClient, stored: Stored
) -> None:
    fields = {
        "new~1-kind": "light",
        "new~1-place": "over the table",
        "new~1-tied": "C2",
        "new~1-known": "3",
        "new~2-kind": "unknown",
    }
    after = here.save(POINTS, fields)
    assert (after.h1, after.undo) == ("Kitchen", "Entered the points of Kitchen (R1).")
    record = stored()
    new = record.points[-2:]
    assert [(p.kind, p.place, p.room) for p in new] == [
        ("light", "over the table", "R1"),
        ("unknown", "", "R1"),
    ]
    assert feeds(record, new[0].ref) == [("C2", "3")]
    assert feeds(record, new[1].ref) == []


def test_a_tie_is_made_changed_and_taken_away(
    here: CheckedClient, stored: Stored
) -> None:
    here.save(POINTS, {"P3-tied": "C1", "P3-known": "2"})
    assert feeds(stored(), "P3") == [("C1", "2")]
    here.save(POINTS, {"P3-tied": "P1"})
    assert feeds(stored(), "P3") == [("P1", "2")]
    here.save(POINTS, {"P3-known": "4"})
    assert feeds(stored(), "P3") == [("P1", "4")]
    here.save(POINTS, {"P3-tied": ""})
    assert feeds(stored(), "P3") == []
    assert "P3" in stored().by_ref


def test_a_point_with_two_feeds_is_left_to_its_own_page(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/new/ties", point="P1", tied_to="C2", grade="4")
    page = here.see(POINTS)
    assert page.value("P1-tied") == SEVERAL
    before = stored()
    here.save(POINTS, {"P1-place": "under the sink"})
    after = stored()
    assert after.ties == before.ties
    assert after.points[0].place == "under the sink"


def test_ways_are_entered_with_the_circuits_that_they_feed(
    here: CheckedClient, stored: Stored
) -> None:
    fields = {
        "new~1-way": "3",
        "new~1-kind": "circuit_breaker",
        "new~1-rated_current_a": "16",
        "new~1-curve": "B",
        "new~1-label_found": "BOILER",
        "new~1-feeds": "Boiler",
        "new~2-kind": "blank",
    }
    after = here.save(WAYS, fields)
    assert after.h1 == "Main board"
    assert after.undo == "Entered the ways of Main board (B1)."
    record = stored()
    new, blank = record.devices[-2:]
    assert (new.way, new.kind, new.curve) == ("3", "circuit_breaker", "B")
    assert (str(new.rated_current_a), new.label_found) == ("16", "BOILER")
    assert (blank.kind, blank.board) == ("blank", "B1")
    [circuit] = record.circuits_of(new.ref)
    assert (circuit.name, circuit.number) == ("Boiler", "3")


def test_a_way_is_fed_from_what_stands_to_its_left(
    here: CheckedClient, stored: Stored
) -> None:
    fields = {
        "new~1-kind": "rcd",
        "new~2-kind": "circuit_breaker",
        "new~3-kind": "circuit_breaker",
        "new~3-fed": "MS",
        "new~4-kind": "main_switch",
        "new~5-kind": "rcbo",
        "new~5-fed": "",
    }
    here.save(WAYS, fields)
    new = stored().devices[-5:]
    assert [d.fed_from for d in new] == ["MS", new[0].ref, "MS", None, None]


def test_a_way_that_is_there_is_changed(here: CheckedClient, stored: Stored) -> None:
    fields = {"W1-fed": "MS", "W1-feeds": "Worktop sockets", "W1-label_found": "-"}
    here.save(WAYS, fields)
    record = stored()
    assert device(record, "W1").fed_from == "MS"
    assert device(record, "W1").label_found == ""
    assert [(c.ref, c.name) for c in record.circuits] == [
        ("C1", "Worktop sockets"),
        ("C2", "Lights"),
    ]
    here.save(WAYS, {"W1-fed": "~left", "W1-feeds": ""})
    record = stored()
    assert device(record, "W1").fed_from == "RCD"
    assert record.circuits[0].name == "Worktop sockets"
    assert record.circuits[0].ways == ()


def test_one_wrong_row_keeps_every_word_and_saves_nothing(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    typed = {
        "P1-place": "moved",
        "P3-count": "lots",
        "new~2-kind": "light",
        "new~2-place": "<i>over</i> it",
        "new~2-tied": "C2",
        "new~2-known": "1",
        "new~5-fuse_a": "1000",
        "new~5-kind": "socket",
    }
    page = here.submit(POINTS, typed)
    assert page.status == 422
    assert page.errors == [
        "P3, How many alike: Enter a number, such as 2.",
        "New 5, Fuse in it: Enter a number from 0 to 100.",
    ]
    assert page.error("new~5-fuse_a") == "Enter a number from 0 to 100."
    assert {name: page.value(name) for name in typed} == typed
    assert stored() == small
    here.go_on(here.submit_on(page, {"P3-count": "2", "new~5-fuse_a": "13"}))
    assert [p.place for p in stored().points] == ["moved", "", "", "<i>over</i> it", ""]


@pytest.mark.parametrize(
    ("table", "name", "typed"),
    [
        (POINTS, "new~1-fuse_a", "13"),
        (POINTS, "new~1-count", "2"),
        (POINTS, "new~1-place", "by the door"),
        (POINTS, "new~1-tied", "C1"),
        (WAYS, "new~1-way", "7"),
        (WAYS, "new~1-rated_current_a", "32"),
        (WAYS, "new~1-rated_current_a", "thirty"),
        (WAYS, "new~1-curve", "B"),
        (WAYS, "new~1-feeds", "Cooker"),
        (ROOMS, "new~1-kind", "kitchen"),
    ],
)
def test_a_row_with_something_in_it_is_never_dropped(
    here: CheckedClient,
    stored: Stored,
    small: Record,
    table: str,
    name: str,
    typed: str,
) -> None:
    """Only what it is was forgotten: that is asked for, the rest stays."""
    page = here.submit(table, {name: typed})
    assert page.status == 422
    first = "name" if table == ROOMS else "kind"
    assert page.error(f"new~1-{first}") in ("Choose what it is.", "Enter a name.")
    assert page.value(name) == typed
    assert stored() == small


def test_a_row_changed_meanwhile_is_shown_as_both_have_it(
    here: CheckedClient, stored: Stored
) -> None:
    mine = here.see(POINTS)
    here.save("/homes/H1/points/P1/edit", place="by the oven")
    page = here.submit_on(mine, {"P1-count": "3", "new~1-kind": "light"})
    assert page.status == 409
    assert "Now in the record: where in the room: by the oven" in page.main
    assert page.value("P1-place") == "by the sink"
    assert page.value("new~1-kind") == "light"
    assert stored().points[0].place == "by the oven"
    here.go_on(here.submit_on(page))
    assert [p.place for p in stored().points[:1]] == ["by the sink"]
    assert stored().points[0].count == 3
    assert len(stored().points) == 4


def test_a_tie_changed_meanwhile_is_not_written_over(
    here: CheckedClient, stored: Stored
) -> None:
    mine = here.see(POINTS)
    here.save("/homes/H1/ties/T-P1-C1-feeds/edit", tied_to="C2", grade="4")
    page = here.submit_on(mine, {"P3-place": "on the wall"})
    assert page.status == 409
    assert "Now in the record: fed from: Lights (C2)" in page.main
    assert "Now in the record: how known: Seen" in page.main
    assert feeds(stored(), "P1") == [("C2", "4")]
    here.go_on(here.submit_on(page, {"P1-tied": "C2", "P1-known": "4"}))
    assert feeds(stored(), "P1") == [("C2", "4")]
    assert stored().points[2].place == "on the wall"


def test_a_circuit_renamed_meanwhile_is_not_named_back(
    here: CheckedClient, stored: Stored
) -> None:
    mine = here.see(WAYS)
    here.save("/homes/H1/circuits/C1/edit", name="Worktop sockets")
    page = here.submit_on(mine, {"W2-way": "9"})
    assert page.status == 409
    assert "Now in the record: circuit it feeds: Worktop sockets" in page.main
    assert stored().find(Circuit, "C1") is not None
    assert stored().circuits[0].name == "Worktop sockets"


def test_a_row_of_something_deleted_meanwhile_does_not_come_back_by_itself(
    here: CheckedClient, stored: Stored
) -> None:
    mine = here.see(POINTS)
    here.save("/homes/H1/points/P3/delete", press="Delete")
    page = here.submit_on(mine, {"P1-count": "2"})
    assert page.status == 422
    assert page.errors[0].startswith("P3 was deleted meanwhile.")
    assert page.value("P1-count") == "2"
    here.go_on(here.submit_on(page, {"P3-kind": ""}))
    assert [p.ref for p in stored().points] == ["P1", "P2"]
    assert stored().points[0].count == 2


def test_what_was_added_meanwhile_stays(here: CheckedClient, stored: Stored) -> None:
    mine = here.see(POINTS)
    here.save(POINTS, {"new~1-kind": "heater"})
    here.go_on(here.submit_on(mine, {"new~1-kind": "cooker"}))
    assert [p.kind for p in stored().points[-2:]] == ["heater", "cooker"]


@pytest.mark.parametrize(
    ("table", "fields"),
    [
        (ROOMS, {"new~1-name": "Loft"}),
        (POINTS, {"new~1-kind": "light", "new~1-tied": "C2", "P3-tied": "C1"}),
        (WAYS, {"new~1-kind": "rcbo", "new~1-feeds": "Cooker", "W1-feeds": "x"}),
    ],
)
def test_a_table_sent_twice_counts_once(
    here: CheckedClient, stored: Stored, table: str, fields: dict[str, str]
) -> None:
    page = here.see(table)
    first = here.submit_on(page, fields)
    record = stored()
    again = here.submit_on(page, fields)
    assert (again.status, again.location) == (303, first.location)
    assert stored() == record


def test_a_table_gone_back_to_and_sent_with_more_is_taken(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see(ROOMS)
    here.submit_on(page, {"new~1-name": "Loft"})
    here.submit_on(page, {"new~1-name": "Shed"})
    assert [r.name for r in stored().rooms[-2:]] == ["Loft", "Shed"]


@pytest.mark.parametrize(
    ("table", "fields"),
    [
        (POINTS, {"P1-tied": "P1"}),
        (POINTS, {"P1-tied": "P3", "P3-tied": "P1"}),
        (WAYS, {"W1-fed": "W1"}),
        (WAYS, {"MS-fed": "W2"}),
    ],
)
def test_a_circle_is_refused_beside_the_table(
    here: CheckedClient,
    stored: Stored,
    small: Record,
    table: str,
    fields: dict[str, str],
) -> None:
    page = here.submit(table, fields)
    assert page.status == 422
    assert page.title.startswith("Error: ")
    assert page.errors[0].startswith("That would make these feed each other: ")
    assert {name: page.value(name) for name in fields} == fields
    assert stored() == small


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize(
    "key",
    [
        "new~x",
        "new~",
        "new~-1",
        "new~99999999999",
        f"new~{'9' * 5000}",
        "new~٣",
        "~",
        "",
        "<script>",
        'a b"c',
        "../x",
        "GRID",
    ],
)
def test_a_row_that_is_none_does_no_harm(
    here: CheckedClient, stored: Stored, small: Record, table: str, key: str
) -> None:
    fields = {f"{key}-mark": "", f"{key}-kind": "light", f"{key}-name": "x"}
    page = here.send(table, {**fields, "new~1-mark": "", "new~1-kind": "nothing"})
    assert page.status == 422
    assert stored() == small


def test_a_table_with_many_rows_is_taken_whole(
    here: CheckedClient, stored: Stored
) -> None:
    fields: dict[str, str] = {}
    for number in range(1, 401):
        fields |= {f"new~{number}-mark": "", f"new~{number}-name": f"Room {number}"}
        fields |= {f"new~{number}-{n}": "unknown" for n in ("storey", "kind")}
        fields[f"new~{number}-looked_at"] = "all"
    assert here.send(ROOMS, fields).status == 303
    assert len(stored().rooms) == 402


def test_a_tie_by_its_neutral_is_left_alone(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/new/ties", point="P1", tied_to="C2", role="neutral", grade="5")
    here.save(POINTS, {"P1-tied": "", "P3-tied": "C1"})
    ties = [(t.point, t.tied_to, t.role) for t in stored().ties if t.point != "P2"]
    assert ties == [("P1", "C2", "neutral"), ("P3", "C1", "feeds")]
    assert stored().find(Tie, "T-P1-C1-feeds") is None
    assert stored().find(Point, "P1") is not None


def test_a_number_that_two_ways_have_is_taken_and_asked_about(
    here: CheckedClient, stored: Stored
) -> None:
    number = device(stored(), "W1").way
    here.save(WAYS, {"new~1-way": number, "new~1-kind": "circuit_breaker"})
    page = here.see("/homes/H1/open-questions/")
    assert f"has 2 ways with the number {number}: W1 and D5." in page.main


def test_a_rating_of_0_is_refused_and_one_that_is_stored_still_opens(
    here: CheckedClient, keep: Callable[[Record], int], small: Record
) -> None:
    page = here.submit(WAYS, {"W1-rated_current_a": "0"})
    assert page.status == 422
    sentence = "Enter a number above 0, or leave it open."
    assert page.error("W1-rated_current_a") == sentence
    zero = device(small, "W1").model_copy(update={"rated_current_a": Decimal(0)})
    old = small.home.model_copy(update={"ref": "H2"})
    keep(replaced(small, "W1", zero).having(home=old))
    assert here.see("/homes/H2/boards/B1/ways").value("W1-rated_current_a") == "0"
    assert here.save("/homes/H2/devices/W1/edit", rated_current_a="32").undo


def test_a_second_circuit_of_one_name_is_made_and_said(
    here: CheckedClient, stored: Stored
) -> None:
    second = {"new~1-way": "3", "new~1-kind": "circuit_breaker"}
    after = here.save(WAYS, {**second, "new~1-feeds": "kitchen sockets"})
    said = "More than one circuit has the name “kitchen sockets” now."
    assert after.undo == f"Entered the ways of Main board (B1). {said}"
    assert len(stored().circuits) == 3
    again = {"new~1-way": "4", "new~1-kind": "circuit_breaker", "new~1-feeds": "Oven"}
    assert "More than one" not in here.save(WAYS, again).undo
