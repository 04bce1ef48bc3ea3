from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import Connection

from app.domain import edits
from app.domain.record import Point, Record, Room, Source
from app.errors import ConflictError, InvalidError, NotFoundError
from app.services import homes
from app.services.homes import open_home, save, undo
from app.store.changes import find_change, latest_changes
from app.store.engine import make_engine, writing


@pytest.fixture
def connection(
    database: Path, demo: Record, keep: Callable[[Record], int]
) -> Iterator[Connection]:
    """A transaction on a file that holds the demo home."""
    keep(demo)
    with writing(make_engine(database)) as opened:
        yield opened


def add(connection: Connection, ref: str, **fields: str) -> int:
    here = open_home(connection, "demo")
    point = Point.model_validate({"ref": ref, "kind": "light", **fields})
    number = save(connection, here, edits.added(here.record, point), f"Added {ref}")
    assert number is not None
    return number


def change(connection: Connection, of: str, **fields: str) -> int:
    here = open_home(connection, "demo")
    item = here.record.by_ref[of].model_copy(update=fields)
    new = edits.replaced(here.record, of, item)
    number = save(connection, here, new, f"Changed {of}")
    assert number is not None
    return number


def remove(connection: Connection, ref: str) -> int:
    here = open_home(connection, "demo")
    new = edits.removed(here.record, ref)
    number = save(connection, here, new, f"Removed {ref}")
    assert number is not None
    return number


def record(connection: Connection) -> Record:
    return open_home(connection, "demo").record


def test_a_home_that_is_not_there(connection: Connection) -> None:
    with pytest.raises(NotFoundError, match="There is no home “nowhere” here"):
        open_home(connection, "nowhere")


def test_a_change_is_logged_with_each_item_before_and_after(
    connection: Connection,
) -> None:
    old = record(connection).points[0]
    number = change(connection, old.ref, note="new")
    key = open_home(connection, "demo").key
    logged = find_change(connection, key, number)
    assert logged is not None
    assert logged.sentence == f"Changed {old.ref}"
    (entry,) = logged.entries
    assert entry.before == old
    assert entry.after == old.model_copy(update={"note": "new"})
    assert latest_changes(connection, key, 5) == (logged,)


def test_nothing_changed_is_not_logged(connection: Connection) -> None:
    here = open_home(connection, "demo")
    assert save(connection, here, here.record, "Nothing") is None
    assert latest_changes(connection, here.key, 5) == ()


def test_a_form_that_is_sent_twice_counts_once(connection: Connection) -> None:
    here = open_home(connection, "demo")
    new = edits.added(here.record, Point(ref="NEW", kind="light"))
    first = save(connection, here, new, "Added", once="form 1")
    again = open_home(connection, "demo")
    twice = edits.added(again.record, Point(ref="NEW-2", kind="light"))
    assert save(connection, again, twice, "Added", once="form 1") == first
    assert record(connection) == new
    assert save(connection, again, twice, "Added", once="form 2") != first


def test_a_record_that_cannot_be_kept_is_refused(connection: Connection) -> None:
    here = open_home(connection, "demo")
    point = Point(ref="NEW", kind="light", room="R-NOWHERE")
    with pytest.raises(InvalidError) as refusal:
        save(connection, here, edits.added(here.record, point), "Added")
    (problem,) = refusal.value.problems
    assert problem.place.endswith(".room")
    assert record(connection) == here.record
    assert latest_changes(connection, here.key, 5) == ()


@pytest.mark.parametrize("what", ["points", "rooms", "boards", "circuits"])
def test_something_removed_comes_back_with_all_that_went(
    connection: Connection, what: str
) -> None:
    before = record(connection)
    number = remove(connection, getattr(before, what)[1].ref)
    assert record(connection) != before
    here = open_home(connection, "demo")
    assert undo(connection, here, number) == before
    assert record(connection) == before
    (undoing,) = latest_changes(connection, here.key, 1)
    assert undoing.sentence.startswith("Undone: Removed")
    assert undoing.undoes == number


def test_an_undoing_can_be_undone(connection: Connection) -> None:
    before = record(connection)
    number = add(connection, "NEW")
    after = record(connection)
    undo(connection, open_home(connection, "demo"), number)
    assert record(connection) == before
    key = open_home(connection, "demo").key
    undoing = latest_changes(connection, key, 1)[0]
    assert undoing.undoes == number
    undo(connection, open_home(connection, "demo"), undoing.key)
    assert record(connection) == after


def test_a_new_reference_is_undone(connection: Connection) -> None:
    before = record(connection)
    number = change(connection, before.circuits[0].ref, ref="C-NEW")
    assert "C-NEW" in record(connection).by_ref
    undo(connection, open_home(connection, "demo"), number)
    assert record(connection) == before


def refusal_of_undo(connection: Connection, number: int) -> str:
    here = open_home(connection, "demo")
    with pytest.raises(ConflictError) as refusal:
        undo(connection, here, number)
    assert record(connection) == here.record
    return str(refusal.value)


def test_what_is_undone_is_not_undone_again(connection: Connection) -> None:
    number = add(connection, "NEW")
    undo(connection, open_home(connection, "demo"), number)
    assert refusal_of_undo(connection, number) == "This has been undone already."


def test_what_was_changed_since_is_not_undone(connection: Connection) -> None:
    number = add(connection, "NEW")
    change(connection, "NEW", note="since")
    assert "has been changed again since" in refusal_of_undo(connection, number)


def test_what_something_hangs_on_since_is_not_undone(connection: Connection) -> None:
    here = open_home(connection, "demo")
    room = Room(ref="R-NEW", name="New")
    number = save(connection, here, edits.added(here.record, room), "Added R-NEW")
    assert number is not None
    add(connection, "NEW", room="R-NEW")
    assert "something else needs what it did" in refusal_of_undo(connection, number)


def test_there_must_be_a_change_to_undo(connection: Connection) -> None:
    with pytest.raises(NotFoundError, match="no such change"):
        undo(connection, open_home(connection, "demo"), 999)


def test_a_change_of_another_home_is_not_undone(
    connection: Connection, houses: dict[str, Record]
) -> None:
    number = add(connection, "NEW")
    homes.add_home(connection, houses["h01"])
    with pytest.raises(NotFoundError, match="no such change"):
        undo(connection, open_home(connection, "h01"), number)


def test_a_taken_reference_is_refused(connection: Connection, demo: Record) -> None:
    with pytest.raises(InvalidError, match="There is a home “demo” already") as refusal:
        homes.add_home(connection, demo)
    assert [problem.place for problem in refusal.value.problems] == ["home.ref"]
    assert homes.free_home_ref(connection, "demo") == "demo-2"
    assert homes.free_home_ref(connection, "other") == "other"


def test_a_home_does_not_take_the_reference_of_another(
    connection: Connection, houses: dict[str, Record]
) -> None:
    homes.add_home(connection, houses["h01"])
    here = open_home(connection, "demo")
    home = here.record.home.model_copy(update={"ref": "h01"})
    with pytest.raises(InvalidError, match="There is a home “h01” already"):
        save(connection, here, here.record.having(home=home), "Renamed")
    assert record(connection) == here.record


def test_a_deleted_home_is_brought_back(connection: Connection, demo: Record) -> None:
    now = datetime(2026, 11, 2, tzinfo=UTC)
    homes.put_away(connection, open_home(connection, "demo"), now)
    with pytest.raises(NotFoundError):
        open_home(connection, "demo")
    with pytest.raises(InvalidError, match="already, or there was"):
        homes.add_home(connection, demo)
    homes.bring_back(connection, "demo")
    assert record(connection) == demo
    with pytest.raises(NotFoundError, match="no deleted home"):
        homes.bring_back(connection, "demo")


def test_a_mark_changes_with_what_it_is_of() -> None:
    one = Source(ref="S1", kind="network")
    other = one.model_copy(update={"note": "x"})
    assert homes.digest(one) == homes.digest((one,))
    assert homes.digest(one) != homes.digest(other)
