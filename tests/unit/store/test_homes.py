from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from app.domain import edits
from app.domain.record import Home, Point, Record, Room
from app.store import homes
from app.store.engine import make_engine, reading, writing

NOW = datetime(2026, 3, 1, 12, tzinfo=UTC)


@pytest.fixture
def written(database: Path, demo: Record) -> Callable[[Record], Record]:
    """Write the demo home, then what differs in another; return what is read then."""

    def write(new: Record) -> Record:
        engine = make_engine(database)
        with writing(engine) as connection:
            key = homes.add(connection, demo, NOW)
        with writing(engine) as connection:
            homes.write(connection, key, demo, new)
        with reading(engine) as connection:
            return homes.load(connection, key)

    return write


def test_every_home_is_read_as_it_was_written(
    database: Path, houses: dict[str, Record]
) -> None:
    engine = make_engine(database)
    with writing(engine) as connection:
        keys = {name: homes.add(connection, houses[name], NOW) for name in houses}
    with reading(engine) as connection:
        for name, key in keys.items():
            assert homes.load(connection, key) == houses[name]


def test_something_added_is_read_in_its_place(
    demo: Record, written: Callable[[Record], Record]
) -> None:
    after = demo.points[3].ref
    new = edits.added(demo, Point(ref="NEW", kind="light"), after=after)
    assert written(new) == new
    assert [point.ref for point in new.points][4] == "NEW"


def test_something_changed_is_read(
    demo: Record, written: Callable[[Record], Record]
) -> None:
    point = demo.points[0].model_copy(update={"load_w": Decimal("0.1"), "note": "a\nb"})
    new = edits.replaced(demo, point.ref, point)
    assert written(new) == new
    assert new != demo


def test_something_removed_is_gone(
    demo: Record, written: Callable[[Record], Record]
) -> None:
    new = edits.removed(demo, demo.boards[0].ref)
    assert written(new) == new
    assert len(new.devices) < len(demo.devices)


def test_a_new_order_is_read(demo: Record, written: Callable[[Record], Record]) -> None:
    new = demo.having(points=demo.points[::-1], rooms=demo.rooms[1:] + demo.rooms[:1])
    assert written(new) == new


def test_a_new_reference_is_followed_everywhere(
    demo: Record, written: Callable[[Record], Record]
) -> None:
    way = next(d for d in demo.devices if any(d.ref in c.ways for c in demo.circuits))
    new = edits.replaced(demo, way.ref, way.model_copy(update={"ref": "RENAMED"}))
    assert written(new) == new
    assert any("RENAMED" in circuit.ways for circuit in new.circuits)


def test_a_home_of_no_items_is_read(database: Path) -> None:
    bare = Record(home=Home(ref="bare", name="Bare"))
    with writing(make_engine(database)) as connection:
        key = homes.add(connection, bare, NOW)
        assert homes.load(connection, key) == bare


def test_two_homes_may_use_the_same_references(database: Path, demo: Record) -> None:
    other = demo.having(home=Home(ref="other", name="Other"))
    engine = make_engine(database)
    with writing(engine) as connection:
        first, second = (
            homes.add(connection, demo, NOW),
            homes.add(connection, other, NOW),
        )
        homes.write(connection, second, other, Record(home=other.home))
    with reading(engine) as connection:
        assert homes.load(connection, first) == demo
        assert homes.load(connection, second) == Record(home=other.home)


def test_a_home_that_is_put_away_is_not_listed(database: Path, demo: Record) -> None:
    with writing(make_engine(database)) as connection:
        key = homes.add(connection, demo, NOW)
        homes.set_deleted(connection, key, "2026-11-01T00:00:00+00:00")
        assert homes.all_homes(connection) == ()
        assert homes.home_id(connection, "demo") is None
        assert homes.home_id(connection, "demo", deleted=True) == key
        homes.set_deleted(connection, key, None)
        assert homes.all_homes(connection) == (demo.home,)


def test_an_error_leaves_nothing_behind(database: Path, demo: Record) -> None:
    engine = make_engine(database)

    def fail() -> None:
        with writing(engine) as connection:
            homes.add(connection, demo, NOW)
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail()
    with reading(engine) as connection:
        assert homes.home_refs(connection) == set()


def test_a_reference_to_nothing_cannot_be_kept(database: Path) -> None:
    point = Point(ref="P1", kind="light", room="R1")
    home = Home(ref="a", name="A")
    engine = make_engine(database)
    with (
        pytest.raises(Exception, match="FOREIGN KEY constraint failed"),
        writing(engine) as connection,
    ):
        homes.add(connection, Record(home=home, points=(point,)), NOW)
    with reading(engine) as connection:
        assert homes.home_refs(connection) == set()


def test_what_is_named_before_it_is_written_is_kept(database: Path) -> None:
    room = Room(ref="R1", name="Hall")
    point = Point(ref="P1", kind="light", room="R1")
    record = Record(home=Home(ref="a", name="A"), rooms=(room,), points=(point,))
    with writing(make_engine(database)) as connection:
        key = homes.add(connection, record, NOW)
        assert homes.load(connection, key) == record
