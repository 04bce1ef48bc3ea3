from __future__ import annotations

import pytest

from app.domain.edits import Entry, added, entries_between, removed, replaced
from app.domain.record import Point, Record, Room
from app.domain.walk import beside, stopped_in
from tests import builders as b


@pytest.fixture
def house() -> Record:
    """Three rooms, none looked at, with a light in the hall."""
    return b.home(
        b.room("HALL", looked_at="not_yet"),
        b.room("KITCHEN", looked_at="not_yet"),
        b.room("LOFT", looked_at="not_yet"),
        b.light("P1", room="HALL"),
    )


def room(record: Record, ref: str) -> Room:
    found = record.find(Room, ref)
    assert found is not None
    return found


def stop(record: Record, *changes: tuple[Entry, ...]) -> str | None:
    found = stopped_in(record, changes)
    return found.ref if found else None


def looked(record: Record, ref: str, how: str) -> Record:
    new = room(record, ref).model_copy(update={"looked_at": how})
    return replaced(record, ref, new)


def test_the_rooms_beside_one_are_those_of_the_walk(house: Record) -> None:
    hall, kitchen, loft = house.rooms
    assert beside(house, hall) == (None, kitchen)
    assert beside(house, kitchen) == (hall, loft)
    assert beside(house, loft) == (kitchen, None)


def test_a_walk_begins_in_the_first_room_not_looked_at(house: Record) -> None:
    assert stop(b.home()) is None
    assert stop(house) == "HALL"
    assert stop(looked(house, "HALL", "all")) == "KITCHEN"
    done = house
    for ref in ("HALL", "KITCHEN", "LOFT"):
        done = looked(done, ref, "no_access")
    assert stop(done) == "HALL"


def test_it_goes_on_in_the_room_of_the_point_added_last(house: Record) -> None:
    first = added(house, Point(ref="P2", room="LOFT", kind="light"))
    then = added(first, Point(ref="P3", room="KITCHEN", kind="light"))
    one, other = entries_between(house, first), entries_between(first, then)
    assert stop(then, other, one) == "KITCHEN"
    assert stop(looked(then, "KITCHEN", "all"), other, one) == "KITCHEN"


def test_a_point_taken_out_was_worked_on_in_its_room(house: Record) -> None:
    after = removed(house, "P1")
    assert stop(after, entries_between(house, after)) == "HALL"


def test_a_room_marked_as_done_with_leads_on(house: Record) -> None:
    after = looked(house, "KITCHEN", "all")
    assert stop(after, entries_between(house, after)) == "LOFT"
    after = looked(house, "LOFT", "no_access")
    assert stop(after, entries_between(house, after)) == "HALL"


def test_a_room_marked_in_part_is_gone_on_with(house: Record) -> None:
    after = looked(house, "KITCHEN", "part")
    assert stop(after, entries_between(house, after)) == "KITCHEN"


def test_what_is_no_work_in_a_room_does_not_count(house: Record) -> None:
    kitchen = added(house, Point(ref="P2", room="KITCHEN", kind="light"))
    loose = added(kitchen, Point(ref="P3", kind="light"))
    named = loose.having(home=loose.home.model_copy(update={"name": "Ours"}))
    changes = (
        entries_between(loose, named),
        entries_between(kitchen, loose),
        entries_between(house, kitchen),
    )
    assert stop(named, *changes) == "KITCHEN"


def test_a_room_that_is_gone_is_not_gone_on_in(house: Record) -> None:
    kitchen = added(house, Point(ref="P2", room="KITCHEN", kind="light"))
    gone = removed(kitchen, "KITCHEN")
    changes = (entries_between(kitchen, gone), entries_between(house, kitchen))
    assert stop(gone, *changes) == "HALL"
