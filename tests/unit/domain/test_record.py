from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest
from pydantic import ValidationError

from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Device,
    Home,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
    specs,
)
from tests.builders import (
    board,
    circuit,
    control,
    home,
    one_way,
    rcd,
    room,
    socket,
    tie,
    way,
)


def whole() -> Record:
    return home(
        room("R1"),
        one_way(circuit("C1", socket("P1", room="R1"), socket("P2"))),
        board("B2", rcd("R2"), way("W2")),
        tie("P2", "C1", "present", seen_on=date(2024, 5, 1)),
        control("P1", "P2"),
    )


def refs(items: tuple[Item, ...]) -> list[str]:
    return [item.ref for item in items]


def test_a_record_finds_its_items() -> None:
    record = whole()
    assert record.find(Point, "P1") is record.points[0]
    assert record.find(Circuit, "P1") is None
    assert record.find(Point, "GONE") is None
    assert record.find(Point, None) is None
    assert list(record.by_ref) == [item.ref for item in record.items()]


def test_a_record_groups_its_items_in_their_order() -> None:
    record = whole()
    assert refs(record.devices_of("B2")) == ["R2", "W2"]
    assert refs(record.points_of("R1")) == ["P1"]
    assert refs(record.points_of(None)) == ["P2"]
    assert refs(record.ties_of("P2")) == ["T-P2-C1-feeds", "T-P2-C1-present"]
    assert refs(record.controllers_of("P2")) == ["K-P1-P2"]
    assert refs(record.circuits_of("W1")) == ["C1"]
    assert record.circuits_of("W2") == ()
    assert (record.devices_of("GONE"), record.points_of("GONE")) == ((), ())
    assert (record.ties_of("GONE"), record.controllers_of("GONE")) == ((), ())


def test_a_record_with_another_list_forgets_what_was_worked_out() -> None:
    record = whole()
    assert refs(record.ties_of("P1")) == ["T-P1-C1-feeds"]
    without = record.having(ties=())
    assert without.ties_of("P1") == ()
    assert without.find(Tie, "T-P1-C1-feeds") is None
    assert without.points == record.points
    assert record.having() == record


def test_a_record_is_the_same_after_json() -> None:
    assert Record.model_validate_json(whole().model_dump_json()) == whole()


def test_a_number_is_held_and_written_in_one_way() -> None:
    device = Device(ref="W1", board="B1", kind="rcbo", rated_current_a=Decimal("2.50"))
    assert str(device.rated_current_a) == "2.5"
    assert device.model_dump(mode="json")["rated_current_a"] == 2.5
    large = device.model_copy(update={"rated_current_a": Decimal("1E+2")})
    assert large.model_dump(mode="json")["rated_current_a"] == 100


@pytest.mark.parametrize(
    ("item", "title"),
    [
        (Room(ref="R1", name="Hall"), "Hall"),
        (Source(ref="S1", kind="solar"), "Solar panels"),
        (Source(ref="S1", kind="solar", name="The roof"), "The roof"),
        (IntakeItem(ref="I1", kind="meter"), "Meter"),
        (IntakeItem(ref="I1", kind="meter", name="Old meter"), "Old meter"),
        (Board(ref="B1", name="Garage board"), "Garage board"),
        (Device(ref="W1", board="B1", kind="rcbo"), "RCBO W1"),
        (Device(ref="W1", board="B1", kind="rcbo", way="3"), "Way 3"),
        (
            Device(ref="W1", board="B1", kind="rcbo", way="3", label_found="LIGHTS"),
            "Way 3, “LIGHTS”",
        ),
        (Circuit(ref="C1"), "Circuit C1"),
        (Circuit(ref="C1", number="4"), "Circuit 4"),
        (Circuit(ref="C1", number="4", name="Shower"), "Shower"),
        (Point(ref="P1", kind="light"), "Light"),
        (
            Point(ref="P1", kind="light", place="over the table"),
            "Light, over the table",
        ),
        (Point(ref="P1", kind="light", name="Lamp"), "Lamp"),
        (Tie(ref="T1", point="P1", tied_to="C1"), "Tie T1"),
    ],
)
def test_title(item: Item, title: str) -> None:
    assert item.title == title


@pytest.mark.parametrize(
    "text", ["a\x00b", "a\x7fb", "two\nlines", "a\tb", "half \ud800", "x" * 121]
)
def test_a_short_text_holds_one_printable_line(text: str) -> None:
    with pytest.raises(ValidationError):
        Room(ref="R1", name=text)


def test_a_note_may_have_lines_but_no_control_characters() -> None:
    assert Room(ref="R1", name="Hall", note="one\n\ttwo").note == "one\n\ttwo"
    with pytest.raises(ValidationError):
        Room(ref="R1", name="Hall", note="bell\x07")


@pytest.mark.parametrize("ref", ["", "-a", "a b", "x" * 33, "a/b", "é"])
def test_a_reference_is_short_and_plain(ref: str) -> None:
    with pytest.raises(ValidationError):
        Room(ref=ref, name="Hall")


def test_an_unknown_field_or_code_is_refused() -> None:
    with pytest.raises(ValidationError):
        Room.model_validate({"ref": "R1", "name": "Hall", "colour": "blue"})
    with pytest.raises(ValidationError):
        Room(ref="R1", name="Hall", kind="ballroom")


def test_a_record_cannot_be_changed_in_place() -> None:
    with pytest.raises(ValidationError):
        whole().home.name = "Other"  # type: ignore[misc]


def test_each_sort_has_a_name_of_its_own_and_a_list_in_the_record() -> None:
    classes = (*SORTS.values(), Home)
    for name in ("sort", "plural", "noun", "prefix"):
        assert len({getattr(cls, name) for cls in classes}) == len(classes)
    assert [cls.plural for cls in SORTS.values()] == list(Record.model_fields)[1:]


def test_every_reference_names_a_sort_that_there_is() -> None:
    named = {sort for cls in SORTS.values() for s in specs(cls) for sort in s.sorts}
    assert named <= set(SORTS)


def test_what_is_not_said_is_not_known() -> None:
    """A choice that nobody made reads as unknown, never as no."""
    for cls in (*SORTS.values(), Home):
        for spec in specs(cls):
            if spec.type == "choice" and not spec.required:
                assert spec.default in spec.choices
                assert spec.default != "no"


def test_the_declaration_of_a_field_is_read_back() -> None:
    found = {spec.name: spec for spec in specs(Device)}
    current, kind, feed = found["rated_current_a"], found["kind"], found["fed_from"]
    assert (current.type, current.unit, current.low, current.high) == (
        "decimal",
        "A",
        0,
        1000,
    )
    assert (current.optional, current.required, current.default) == (True, False, None)
    assert (kind.type, kind.required, kind.optional) == ("choice", True, False)
    assert (feed.type, feed.sorts[0]) == ("ref", "device")
    assert {spec.name: spec.type for spec in specs(Tie)} == {
        "ref": "text",
        "point": "ref",
        "tied_to": "ref",
        "role": "choice",
        "grade": "choice",
        "seen_on": "date",
        "seen_by": "text",
        "note": "long",
    }
    points = {spec.name: spec.type for spec in specs(Point)}
    assert (points["care"], points["count"]) == ("choices", "int")
    assert {spec.name: spec.type for spec in specs(Circuit)}["ways"] == "refs"


@pytest.mark.parametrize("turning", ["\u202e", "\u202b", "\u2067"])
def test_what_turns_the_writing_round_does_not_come_into_a_record(turning: str) -> None:
    room = Room(ref="R1", name=f"Kitchen {turning}rtl", note=f"a{turning}\nمرحبا")
    assert (room.name, room.note) == ("Kitchen rtl", "a\nمرحبا")
