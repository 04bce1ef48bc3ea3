from __future__ import annotations

import pytest

from app.domain.labels import confirmed, labels_of
from app.domain.network import network
from app.domain.record import Board, Device, Record
from tests import builders as b


def is_confirmed(record: Record, way: str = "W1") -> bool:
    device = record.find(Device, way)
    assert device is not None
    return confirmed(network(record), device)


def two_points(first: str, second: str) -> Record:
    points = (b.socket("P1", tied=first), b.light("P2", tied=second))
    return b.home(b.one_way(b.circuit("C1", *points, name="Both")))


@pytest.mark.parametrize(
    ("first", "second", "sure"),
    [
        ("4", "4", True),
        ("5", "4", True),
        ("5", "5", True),
        ("4", "3", False),
        ("0", "5", False),
        ("1", "1", False),
    ],
)
def test_every_feeding_tie_counts(first: str, second: str, *, sure: bool) -> None:
    assert is_confirmed(two_points(first, second)) is sure


def test_a_way_without_a_circuit_or_a_point_is_not() -> None:
    assert not is_confirmed(b.home(b.one_way()))
    assert not is_confirmed(b.home(b.one_way(b.circuit("C1"))))


def test_every_circuit_of_the_way_needs_points() -> None:
    sure = b.circuit("C1", b.socket("P1", tied="4"))
    assert is_confirmed(b.home(b.one_way(sure)))
    assert not is_confirmed(b.home(b.one_way(sure, b.circuit("C2"))))


def test_the_tie_of_what_is_behind_a_point_counts_too() -> None:
    behind = b.fcu("P1", b.socket("P2", tied="3"), tied="4")
    assert not is_confirmed(b.home(b.one_way(b.circuit("C1", behind))))
    behind = b.fcu("P1", b.socket("P2", tied="4"), tied="4")
    assert is_confirmed(b.home(b.one_way(b.circuit("C1", behind))))


def test_a_neutral_tie_feeds_nothing() -> None:
    record = b.home(
        b.one_way(b.circuit("C1", b.light("P1", tied="4"))),
        b.circuit("C2"),
        b.tie("P1", "C2", "neutral", grade="1"),
    )
    assert is_confirmed(record)


def test_a_way_to_a_board_has_no_grade_to_go_by() -> None:
    sub = b.board("B2", b.main_switch("MS2"), name="Garage board", fed_from="C1")
    record = b.home(b.one_way(b.circuit("C1", b.socket("P1", tied="4"))), sub)
    assert not is_confirmed(record)


def test_the_query_mark_stands_until_then() -> None:
    for grade, text in (("3", "Both\xa0?"), ("4", "Both")):
        record = two_points(grade, grade)
        board = record.find(Board, "B1")
        assert board is not None
        (label,) = [v for v in labels_of(network(record), board) if v.ref == "W1"]
        assert label.text == text
