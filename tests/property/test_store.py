"""The file against the record: what is written is read, what is done can be undone."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import Connection

from app.domain import edits
from app.domain.record import Item, Point, Record
from app.errors import InvalidError
from app.services.homes import OpenHome, open_home, save, undo
from app.store import changes, homes
from app.store.engine import make_engine
from tests.property.whole_records import whole_records

NOW = datetime(2026, 3, 1, 12, tzinfo=UTC)
STEPS = st.lists(
    st.tuples(
        st.sampled_from(("add", "change", "remove", "move", "rename", "home")),
        st.integers(0, 99),
        st.integers(-3, 3),
    ),
    max_size=8,
)


@given(record=whole_records())
def test_a_home_is_read_as_it_was_written(empty_database: Path, record: Record) -> None:
    with _that_is_rolled_back(empty_database) as connection:
        key = homes.add(connection, record, NOW)
        assert homes.load(connection, key) == record


@given(first=whole_records(), second=whole_records())
def test_the_difference_of_two_records_is_written_whole(
    empty_database: Path, first: Record, second: Record
) -> None:
    other = _without_refs_of_another_sort(first, second)
    with _that_is_rolled_back(empty_database) as connection:
        key = homes.add(connection, first, NOW)
        homes.write(connection, key, first, other)
        assert homes.load(connection, key) == other


@given(record=whole_records(), steps=STEPS)
def test_every_change_is_logged_and_undone_exactly(
    empty_database: Path, record: Record, steps: list[tuple[str, int, int]]
) -> None:
    with _that_is_rolled_back(empty_database) as connection:
        homes.add(connection, record, NOW)
        states, numbers = [record], []
        for step in steps:
            here = open_home(connection, "home")
            number = _saved(connection, here, _edited(here.record, *step))
            if number is not None:
                numbers.append(number)
                states.append(open_home(connection, "home").record)
        key = open_home(connection, "home").key
        log = changes.latest_changes(connection, key, 100)
        assert [change.key for change in reversed(log)] == numbers
        for before, after in pairwise(states):
            assert edits.entries_between(before, after)
        for number, state in zip(reversed(numbers), states[-2::-1], strict=True):
            undo(connection, open_home(connection, "home"), number)
            assert open_home(connection, "home").record == state


def _saved(connection: Connection, here: OpenHome, new: Record) -> int | None:
    try:
        number = save(connection, here, new, "An edit")
    except InvalidError:
        assert open_home(connection, "home").record == here.record
        return None
    assert open_home(connection, "home").record == new
    return number


def _edited(record: Record, what: str, which: int, steps: int) -> Record:
    items: list[Item] = list(record.items())
    if what == "home":
        home = record.home.model_copy(update={"notes": f"{which}"})
        return edits.replaced(record, "home", home)
    if what == "add" or not items:
        point = Point(ref=edits.new_ref(record, Point), kind="unknown")
        return edits.added(record, point)
    item = items[which % len(items)]
    if what == "remove":
        return edits.removed(record, item.ref)
    if what == "move":
        return edits.moved(record, item.ref, steps)
    update = {"note": f"note {which}"}
    if what == "rename":
        update = {"ref": f"N{which}"}
        if update["ref"] in record.by_ref:
            return record
    return edits.replaced(record, item.ref, item.model_copy(update=update))


def _without_refs_of_another_sort(first: Record, second: Record) -> Record:
    """Keep the second, unless the first has one of its references for another sort."""
    for item in second.items():
        other = first.by_ref.get(item.ref)
        if other is not None and other.sort != item.sort:
            return first
    return second


@contextmanager
def _that_is_rolled_back(database: Path) -> Iterator[Connection]:
    engine = make_engine(database).execution_options(sqlite_begin="IMMEDIATE")
    with engine.connect() as connection:
        yield connection
        connection.rollback()
