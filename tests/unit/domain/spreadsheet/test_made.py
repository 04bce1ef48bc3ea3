"""A sheet into a record: everything that it says, nothing that it does not."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest

from app.domain.edits import entries_between
from app.domain.links import broken_links
from app.domain.record import (
    Board,
    Circuit,
    Device,
    Home,
    Item,
    Point,
    Record,
    Room,
    Tie,
)
from app.domain.record.choices import TIE_ROLES
from app.domain.spreadsheet import (
    TARGETS,
    Asked,
    Made,
    Sheet,
    guessed,
    heading_row,
    headings,
    likeness,
    made_of,
    made_of_list,
)
from app.domain.spreadsheet.likeness import NOTE
from app.domain.spreadsheet.made import MOST_FAULTS, making_of
from app.domain.spreadsheet.typed_list import MOST_LINES
from app.interchange.spreadsheet import workbook_from
from app.interchange.tables_csv import circuits_csv, points_csv
from tests import builders as b
from tests.sheets import WRONG, points

Rows = Sequence[Sequence[object]]
WAYS = (
    b.main_switch(
        "MS",
        b.way("W1", b.circuit("C1", name="Kitchen sockets", number="1"), way="1"),
        b.way(
            "W2", b.circuit("C2", name="Lights", number="2"), way="2", curve="unknown"
        ),
    ),
)


def home() -> Record:
    return b.home(
        b.room("R1", name="Kitchen"),
        b.room("R2", name="Hall"),
        b.street(b.board("B1", *WAYS, name="Main board")),
    )


def sheet(rows: Rows) -> Sheet:
    return Sheet(rows=tuple(tuple(str(cell) for cell in row) for row in rows))


def brought(
    kind: str, rows: Rows, record: Record | None = None, **asked: object
) -> Made:
    """Bring in rows whose columns hold what their headings say."""
    start, read = record or home(), sheet(rows)
    match = guessed(read, heading_row(read, kind), kind)
    wanted = Asked(file="x.csv", **asked)  # type: ignore[arg-type]
    made = made_of(kind, read, match, making_of(start, wanted))
    assert broken_links(made.record) == ()
    return made


def has(item: Item, *names: str) -> tuple[Any, ...]:
    return tuple(getattr(item, name) for name in names)


def said(made: Made) -> list[str]:
    return [fault.sentence for fault in made.faults]


def test_headings_are_found_below_titles_and_blank_rows() -> None:
    read = sheet([["Our house"], [], ["No.", "CIRCUIT", "Rating (A)", "Odd"], ["1"]])
    assert heading_row(read, "circuits") == 3
    assert guessed(read, 3, "circuits").columns == (
        "number", "name", "device.rated_current_a", "",
    )  # fmt: skip


def test_a_heading_left_open_takes_the_one_above_it() -> None:
    read = sheet([["", "Room", ""], ["Point", "", "Where"], ["light", "Hall", ""]])
    assert headings(read, 2) == ("Point", "Room", "Where")


@pytest.mark.parametrize("kind", TARGETS)
def test_every_target_is_guessed_by_its_own_label(kind: str) -> None:
    for target in TARGETS[kind]:
        read = sheet([[target.label, "Other"], ["x", "y"]])
        assert guessed(read, 1, kind).columns[0] == target.code


def test_rows_that_are_none_are_left_out_and_named() -> None:
    heads = ["Circuit", "Rating", "Sparkle"]
    some = [["Title"], heads, ["", "A", ""], ["One", "", "z"], []]
    more = [heads, ["Two", "", ""], ["", "", "only here"]]
    made = brought("circuits", [*some, *more])
    assert [row.row for row in made.rows] == [4, 7]
    assert made.left_out == (
        "Columns not taken: “Sparkle”.",
        "Rows above the headings: 1.",
        "Units under the headings: 3.",
        "Headings again: 6.",
        "Rows with nothing in the columns that are taken: 8.",
    )


CIRCUITS = [
    ["No", "Circuit", "Way", "Cable size", "Ring/radial", "Device"],
    ["3", "Up sockets", "Main board way 3", "2.5/1.5 mm²", "ring", "B32 RCBO 30mA"],
    ["4", "Up lights", "4", "", "?", "6 A"],
    ["2b", "More lights", "2", "1.5", "Radial", "B32"],
]


def test_circuits_name_their_ways_and_make_what_is_asked_for() -> None:
    made = brought("circuits", CIRCUITS, make_devices=True)
    assert said(made) == []
    record = made.record
    up = next(c for c in record.circuits if c.name == "Up sockets")
    way = record.find(Device, up.ways[0])
    assert way is not None
    assert has(way, "way", "kind", "curve", "fed_from") == ("3", "rcbo", "B", "MS")
    assert has(way, "rated_current_a", "residual_current_ma") == (32, 30)
    assert has(up, "line_mm2", "arrangement") == (2.5, "ring")
    lights = next(c for c in record.circuits if c.name == "Up lights")
    of_lights = record.find(Device, lights.ways[0])
    assert of_lights is not None
    assert has(of_lights, "kind", "rated_current_a") == ("unknown", 6)
    assert has(lights, "arrangement", "line_mm2") == ("unknown", None)


def test_what_a_way_lacks_is_filled_in_and_what_differs_is_a_fault() -> None:
    more = brought("circuits", CIRCUITS, make_devices=True)
    filled = more.record.find(Device, "W2")
    assert filled is not None
    assert filled.curve == "B"
    assert "gains: Type B" in more.rows[-1].beside[0]
    other = [[*CIRCUITS[0]], ["9", "x", "1", "", "", "B20"]]
    assert said(brought("circuits", other, make_devices=True)) == [
        "Row 2, column “Device”: “B20” differs from the record, where W1 has 32 A."
    ]


def test_devices_are_not_made_unless_asked_for() -> None:
    made = brought("circuits", CIRCUITS)
    how = "is no way of Main board. Add it first, or have the devices made."
    assert said(made) == [
        f"Row 2, column “Way”: “Main board way 3” {how}",
        f"Row 3, column “Way”: “4” {how}",
    ]
    there = brought("circuits", [CIRCUITS[0], CIRCUITS[3]])
    assert said(there) == []
    assert there.record.devices == home().devices
    assert "What the sheet says of devices is not taken" in there.left_out[-1]


def test_what_is_printed_on_a_device_of_unknown_kind_is_kept_in_its_note() -> None:
    rows = [["Way", "Device"], ["7", "B32 30mA"]]
    made = brought("ways", rows, board="B1")
    device = made.record.devices[-1]
    found = has(device, "kind", "rated_current_a", "curve")
    assert found == ("unknown", 32, "unknown")
    assert device.note == "Marked: IΔn 30 mA; Type B."
    assert made.rows[0].facts == (
        ("What it is", "Not known"),
        ("Rated current", "32 A"),
        ("Fed from", "Main switch MS"),
        ("Note", "Marked: IΔn 30 mA; Type B."),
    )
    named = brought("ways", rows, board="B1", kind_unsaid="rcbo").record.devices[-1]
    assert has(named, "kind", "curve", "residual_current_ma") == ("rcbo", "B", 30)


def test_what_does_not_fit_a_kind_is_a_fault() -> None:
    rows = [["Way", "Device", "Feeds"], ["7", "Main switch B32", ""], ["8", "RCD", "x"]]
    first, second = said(brought("ways", rows, board="B1"))
    assert first.endswith(
        "“Main switch B32” does not fit: a main switch has no “Type”."
    )
    assert second == "Row 3, column “Feeds”: “x” does not fit: an RCD feeds no circuit."


def test_ways_are_made_in_order_with_their_circuits() -> None:
    rows = [
        ["Way", "Device", "Label", "Fed from", "Feeds"],
        ["", "RCD 63A 30mA", "", "", ""],
        ["7", "MCB B16", "Immersion", "", "Immersion"],
        ["8", "MCB B6", "-", "board", ""],
        ["9", "MCB B6", "?", "7", ""],
    ]
    made = brought("ways", rows, board="B1")
    assert said(made) == []
    rcd, seven, eight, nine = made.record.devices[-4:]
    assert (rcd.fed_from, seven.fed_from) == ("MS", rcd.ref)
    assert (eight.fed_from, eight.label_found) == (None, "")
    assert (nine.fed_from, nine.label_found) == (seven.ref, None)
    [circuit] = made.record.circuits[2:]
    assert (circuit.name, circuit.number, circuit.ways) == (
        "Immersion",
        "7",
        (seven.ref,),
    )


def test_a_way_that_is_there_or_stands_twice_is_a_fault() -> None:
    rows = [["Way", "Label"], ["1", "a"], ["7", "b"], ["7", "c"]]
    assert said(brought("ways", rows, board="B1")) == [
        "Row 2, column “Way”: “1” is on Main board already.",
        "Row 4, column “Way”: “7” stands in row 3 too.",
    ]


def test_points_name_their_room_and_circuit() -> None:
    made = brought("points", points())
    assert said(made) == []
    record = made.record
    assert len(record.points) == 300
    first = record.points[0]
    assert has(first, "room", "kind", "fuse_a") == ("R1", "double_socket", 13)
    assert (first.residual_current_ma, first.outdoor) == (None, "no")
    assert record.points[4].note == "=cmd()"
    [tie] = record.ties_of(first.ref)
    assert (tie.tied_to, tie.grade, tie.role) == ("C1", "2", "feeds")
    assert tie.note == "From row 4 of “x.csv”."
    assert record.ties_of(record.points[2].ref) == ()


def test_twenty_faults_are_named_by_row_and_column() -> None:
    made = brought("points", points(wrong=True))
    found = [(fault.row, fault.column) for fault in made.faults]
    assert found == [(row, column) for row, column, _ in WRONG]
    assert (
        "Row 17, column “Fuse (A)”: “13x” is no number in A: it ends in “x”."
        in said(made)
    )


def test_rooms_are_made_if_asked_for_each_once() -> None:
    rows = [
        ["Room", "Floor", "Point"], ["Bathroom", "1st floor", "light"],
        ["bathroom", "first", "shower"], ["Bathroom", "ground", "light"],
        ["Hall", "", "light"],
    ]  # fmt: skip
    made = brought("points", rows, make_rooms=True)
    new = made.record.rooms[2:]
    assert [(r.name, r.storey) for r in new] == [
        ("Bathroom", "first"),
        ("Bathroom", "ground"),
    ]
    assert [p.room for p in made.record.points] == [
        new[0].ref, new[0].ref, new[1].ref, "R2",
    ]  # fmt: skip
    assert len(brought("points", rows).faults) == 3


def test_what_may_be_several_things_is_asked_about() -> None:
    twice = b.home(
        b.room("R1", name="Bedroom"), b.room("R2", name="Bedroom"),
        b.board("B1", b.way("W1", b.circuit("C1", name="Lights"), way="1")),
        b.board("B2", b.way("W9", b.circuit("C9", name="Lights"), way="1")),
    )  # fmt: skip
    rows = [["Room", "Point", "Circuit"], ["Bedroom", "light", "Lights"],
            ["R1", "light", "way 1"], ["R2", "light", "B2/1"]]  # fmt: skip
    lights, room, way = said(brought("points", rows, twice))
    assert "“Lights” may be any of several: C1, C9. Write the reference." in lights
    assert "“Bedroom” may be any of several rooms: R1, R2. Write the" in room
    assert "Row 3, column “Circuit”: “way 1” may be on any of several boards" in way
    two = brought("points", [rows[0], rows[3], ["R1", "light", "C1 & C9"]], twice)
    assert [tie.tied_to for tie in two.record.ties] == ["C9", "C1", "C9"]


def test_columns_that_say_two_things_are_a_fault() -> None:
    rows = [["Circuit", "Cable size", "Live"], ["x", "2.5/1.5", "4"]]
    assert said(brought("circuits", rows)) == [
        "Row 2, column “Cable size”: “2.5/1.5” and the column “Live” differ."
    ]


def test_a_reference_of_ones_own_is_kept_if_it_is_free() -> None:
    rows = [["Reference", "Circuit"], ["KIT", "a"], ["kit", "b"], ["C1", "c"]]
    made = brought("circuits", rows)
    assert [f.row for f in made.faults] == [3, 4]
    assert made.rows[0].ref == "KIT"


def test_an_empty_sheet_is_no_silent_success() -> None:
    assert said(brought("points", [["Room", "Point"]])) == [
        "The sheet: Below row 1 no row holds points to take."
    ]
    assert "No column is matched" in said(brought("points", [["Zig"], ["x"]]))[0]


def test_a_sheet_of_faults_is_not_looked_at_to_its_end() -> None:
    made = brought("points", [["Room", "Fuse"], *[["Hall", "x"]] * 400])
    assert len(made.faults) == MOST_FAULTS
    assert "were not looked at yet" in " ".join(made.left_out)


LIST = """Main switch 100A
RCD 63A 30mA
21 Sockets up B32

22 Cooker RCBO B32
23 Spare
24 - B16"""


def test_a_typed_list_makes_ways_with_their_labels_and_circuits() -> None:
    made = made_of_list(LIST, home(), Asked(board="B1", kind_unsaid="circuit_breaker"))
    assert said(made) == []
    devices = made.record.devices[3:]
    assert [d.kind for d in devices] == [
        "main_switch", "rcd", "circuit_breaker", "rcbo", "circuit_breaker",
        "circuit_breaker",
    ]  # fmt: skip
    assert [d.label_found for d in devices] == [
        None, None, "Sockets up", "Cooker", "Spare", "",
    ]  # fmt: skip
    assert {d.in_use for d in devices} == {"unknown"}
    new = made.record.circuits[2:]
    assert [(c.name, c.use) for c in new] == [
        ("Sockets up", "sockets"),
        ("Cooker", "cooker"),
    ]
    assert {c.note for c in new} == {"Name and use are taken from the label."}
    assert made.record.ties == home().ties


def test_a_list_is_refused_by_its_lines() -> None:
    made = made_of_list("1 x\n7 y\n7 z B9999", home(), Asked(board="B1"))
    assert said(made) == [
        "Line 1: “1” is on Main board already.",
        "Line 3: “B9999” is not within 0 to 1000.",
        "Line 3: “7” stands in line 2 too.",
    ]
    assert "one way a line" in said(made_of_list(" \n", home(), Asked(board="B1")))[0]
    long = made_of_list("x\n" * (MOST_LINES + 1), home(), Asked(board="B1"))
    assert "201 lines; 200 is the most" in said(long)[0]


def test_another_home_gives_its_layout_and_no_knowledge(demo: Record) -> None:
    alike = likeness(demo, Home(ref="new", name="Next door"))
    assert broken_links(alike) == ()
    assert [r.name for r in alike.rooms] == [r.name for r in demo.rooms]
    assert [d.kind for d in alike.devices] == [d.kind for d in demo.devices]
    assert [p.place for p in alike.points] == [p.place for p in demo.points]
    assert alike.ties
    assert {tie.grade for tie in alike.ties} == {"0"}
    assert {
        getattr(item, "note", "")
        for cls in (Board, Device, Circuit, Point, Tie)
        for item in alike.of(cls)
    } == {NOTE}
    assert {r.looked_at for r in alike.rooms} == {"not_yet"}
    assert (alike.rounds, alike.readings, alike.asides, alike.intake) == ((),) * 4
    assert [s.kind for s in alike.sources] == ["network"]
    text = alike.model_dump_json()
    known = [p.name for p in demo.points if p.name] + [demo.home.name, demo.home.mpan]
    places = {r.name for r in demo.rooms} | {c.name for c in demo.circuits}
    boards = {x.name for x in demo.boards}
    for word in set(filter(None, known)) - places - boards:
        assert f'"{word}"' not in text
    assert {d.rated_current_a for d in alike.devices} == {None}
    assert {d.label_found for d in alike.devices} == {None}


def test_a_home_that_is_empty_has_a_likeness_too() -> None:
    other = Record(home=Home(ref="a", name="A"))
    alike = likeness(other, Home(ref="b", name="B"))
    assert len(entries_between(other, alike)) == 2
    assert alike.of(Room) == ()


def without(record: Record, *plurals: str) -> Record:
    """Return a home without what is brought in, and without what would name it."""
    gone = {*plurals, "controls", "rounds", "readings", "reminders", "attachments"}
    gone |= {"spots", "asides", "works", "papers", "results", "occasions", "trips"}
    open_ones = {"fed_from": None, "second_feed": None}
    boards = (b.model_copy(update={"fed_from": None}) for b in record.boards)
    devices = (d.model_copy(update=open_ones) for d in record.devices)
    lists: dict[str, tuple[Item, ...]] = dict.fromkeys(gone, ())
    return record.having(**lists, boards=tuple(boards), devices=tuple(devices))


def again(kind: str, written: bytes, record: Record) -> Record:
    """Return the home with a table of ours brought in, its columns as guessed."""
    (read,) = workbook_from(written, "x.csv").sheets
    match = guessed(read, heading_row(read, kind), kind)
    made = made_of(kind, read, match, making_of(record, Asked()))
    assert said(made) == []
    assert made.left_out == ()
    return made.record


@pytest.mark.parametrize("name", ["demo", "h01", "h02", "h05", "h06", "h07", "h10"])
def test_a_table_of_ours_comes_in_as_it_went_out(
    demo: Record, houses: dict[str, Record], name: str
) -> None:
    record = {"demo": demo, **houses}[name]
    came = again("points", points_csv(record), without(record, "points", "ties"))
    assert came.points == record.points
    tied = [{(t.point, t.tied_to, t.role) for t in r.ties} for r in (record, came)]
    assert tied[0] == tied[1]
    assert len(came.ties) == len(record.ties)
    bare = without(record, "points", "ties", "circuits")
    assert again("circuits", circuits_csv(record), bare).circuits == record.circuits


def test_a_tie_says_what_it_is_if_it_does_not_feed() -> None:
    rows = [
        ["ref", "Point", "tied_to"],
        ["P8", "light", f"Kitchen sockets; C2 (neutral); P9 ({TIE_ROLES['present']})"],
        ["P9", "switch", "C2 (present)"],
        ["P10", "light", "C1 (magic)"],
    ]  # fmt: skip
    made = brought("points", rows)
    assert [(f.row, f.column) for f in made.faults] == [(4, "tied_to")]
    record = brought("points", rows[:3]).record
    assert [(t.point, t.tied_to, t.role) for t in record.ties] == [
        ("P8", "C1", "feeds"), ("P8", "C2", "neutral"), ("P8", "P9", "present"),
        ("P9", "C2", "present"),
    ]  # fmt: skip


SOCKETS = [["Room", "Point", "Where"], ["Kitchen", "socket", "by the sink"],
           ["Kitchen", "socket", ""], ["Kitchen", "socket", ""]]  # fmt: skip


def test_what_is_there_already_is_named_and_left_out_if_that_is_asked_for() -> None:
    first = brought("points", SOCKETS)
    assert first.there == ()
    again = brought("points", SOCKETS, first.record)
    assert [(t.row, t.ref) for t in again.there] == [(2, "P1"), (3, "P2"), (4, "P3")]
    assert len(again.record.points) == 6
    others = brought("points", SOCKETS, first.record, only_new=True)
    assert others.record == first.record
    assert others.faults == ()
    assert others.left_out == ("Here already, so left out: 2 to 4.",)


def test_three_alike_are_three_and_a_fourth_is_new() -> None:
    start = brought("points", SOCKETS).record
    more = [*SOCKETS, ["Kitchen", "socket", ""], ["Hall", "socket", ""]]
    made = brought("points", more, start, only_new=True)
    assert [row.row for row in made.rows] == [5, 6]


def test_circuits_are_there_by_name_number_and_way() -> None:
    rows = [["No", "Circuit", "Way"], ["1", "kitchen  Sockets", "1"],
            ["2", "Kitchen sockets", "2"], ["1", "Kitchen sockets", "2"]]  # fmt: skip
    made = brought("circuits", rows)
    assert [(t.row, t.ref) for t in made.there] == [(2, "C1")]
    assert len(brought("circuits", rows, only_new=True).record.circuits) == 4


def test_a_circuit_is_there_whatever_its_device_has_become() -> None:
    rows = [["Circuit", "Way", "Device"], ["Shed", "7", "B32"]]
    first = brought("circuits", rows, make_devices=True).record
    again = brought("circuits", rows, first, make_devices=True)
    assert [t.what for t in again.there] == ["Shed"]
    others = brought("circuits", rows, first, make_devices=True, only_new=True)
    assert (others.record, others.faults) == (first, ())


def test_a_row_that_is_left_out_makes_no_way_and_fills_none_in() -> None:
    rows = [["Reference", "Way", "Device", "Circuit"], ["C1", "7", "B32", "Moved"],
            ["C2", "2", "C32", "Lights"]]  # fmt: skip
    made = brought("circuits", rows, only_new=True, make_devices=True)
    assert [t.ref for t in made.there] == ["C1", "C2"]
    assert made.record == home()


def test_a_reference_that_is_there_is_left_out_or_refused() -> None:
    rows = [["Reference", "Circuit"], ["c1", "Sockets, renamed"], ["C7", "New"]]
    made = brought("circuits", rows)
    assert [(f.row, f.column) for f in made.faults] == [(2, "Reference")]
    assert [t.ref for t in made.there] == ["C1"]
    others = brought("circuits", rows, only_new=True)
    assert [row.ref for row in others.rows] == ["C7"]
    # What has the reference is something else: that is no way to be there.
    other = [["Reference", "Circuit"], ["W1", "x"]]
    assert brought("circuits", other, only_new=True).faults


def test_ways_that_are_there_are_left_out() -> None:
    rows = [["Way", "Device"], ["1", "B32"], ["3", "B6"]]
    assert brought("ways", rows).faults
    made = brought("ways", rows, only_new=True)
    assert [row.what for row in made.rows] == ["Way 3"]
