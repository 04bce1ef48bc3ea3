from __future__ import annotations

from pathlib import Path

import pytest

from app.domain.record import Device, IntakeItem, Point, Record
from app.errors import InvalidError, NotFoundError
from app.services.answers import find, the_home
from app.services.homes import add_home
from app.store.engine import make_engine, writing
from tests.builders import home, light, room


def test_a_reference_is_found_as_it_stands_or_in_other_capitals(demo: Record) -> None:
    point = demo.points[0]
    assert find(demo, (Point,), point.ref) is point
    assert find(demo, (Point,), point.ref.lower()) is point
    way = demo.devices[0]
    assert find(demo, (Device, IntakeItem), way.ref.lower()) is way


def test_capitals_count_where_they_must() -> None:
    record = home(light("p1"), light("P1"), light("x1"), light("X1"))
    assert find(record, (Point,), "p1").ref == "p1"
    record = home(light("Pp1"), light("pP1"))
    with pytest.raises(NotFoundError, match="“pp1” may be Pp1 or pP1"):
        find(record, (Point,), "pp1")


def test_another_sort_of_thing_is_named() -> None:
    with pytest.raises(NotFoundError, match="R1 is a room in H1, not a point"):
        find(home(room("R1")), (Point,), "R1")
    with pytest.raises(NotFoundError, match="no device or intake item “X” in H1"):
        find(home(), (Device, IntakeItem), "X")


def test_the_only_home_need_not_be_named(database: Path, demo: Record) -> None:
    with writing(make_engine(database)) as connection:
        with pytest.raises(NotFoundError, match="no home here yet"):
            the_home(connection, None)
        add_home(connection, demo)
        assert the_home(connection, None).record == demo
        add_home(connection, home())
        with pytest.raises(InvalidError, match="several homes: say which"):
            the_home(connection, None)
        assert the_home(connection, "demo").record == demo
