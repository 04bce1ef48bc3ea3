"""The sheet for the board: all that hangs on each way, and nothing else."""

from __future__ import annotations

import pytest

from app.domain.network import network
from app.domain.record import Record
from app.domain.tripped import SCREENS, if_it_trips
from app.domain.tripped.sheet import Row
from tests import builders as b
from tests.unit.domain.test_houses import NAMES, record_of
from tests.unit.domain.tripped.test_suspects import hanging_on


def rows(record: Record) -> dict[str, Row]:
    sheet = if_it_trips(network(record))
    return {row.name: row for board in sheet.boards for row in board.rows}


@pytest.mark.parametrize("name", NAMES)
def test_each_way_of_a_house_shows_as_many_points_as_hang_on_it(name: str) -> None:
    """Against another library: a way without a board behind it shows all it feeds."""
    record = record_of(name)
    sheet = if_it_trips(network(record))
    counts = {
        (way.board, way.way): len(hanging_on(record, way.ref))
        for way in record.devices
        if way.way
    }
    names = {board.name: board.ref for board in record.boards}
    compared = 0
    for board in sheet.boards:
        for row in board.rows:
            number = row.name.removeprefix("Way ").partition(",")[0]
            wanted = counts.get((names.get(board.name, ""), number))
            if wanted is not None and not row.boards:
                assert sum(things.count for things in row.things) == wanted, row.name
                compared += 1
    assert compared > len(counts) / 2


def test_what_is_outdoors_or_wet_comes_first_and_is_marked() -> None:
    points = (
        b.light("P1", room="R1"),
        b.socket("P2", room="R1"),
        b.socket("P3", room="R2"),
        b.point("P4", kind="outdoor_socket", room="R3"),
    )
    record = b.home(
        b.room("R1", name="Hall", kind="hall"),
        b.room("R2", name="Kitchen", kind="kitchen"),
        b.room("R3", name="Garden", kind="outside"),
        b.one_way(b.circuit("C1", *points, name="All"), way="1"),
    )
    (row,) = rows(record).values()
    assert [(t.text.partition(":")[0], t.first, t.count) for t in row.things] == [
        ("Garden", True, 1),
        ("Kitchen", True, 1),
        ("Hall", False, 1),
        ("lights and switches", False, 1),
    ]
    assert row.name == "Way 1, All, B32"


def test_ways_of_an_rcd_are_set_in_below_it_and_a_board_is_named() -> None:
    sub = b.board("B2", b.way("W9", b.circuit("C9", b.socket("P9"))), name="Garage")
    inner = b.way("W1", b.circuit("C1", sub), way="1")
    record = b.home(
        b.street(
            b.board(
                "B1",
                b.main_switch("MS", b.rcd("R1", inner), b.way("W2", way="2")),
                name="Main",
            )
        )
    )
    found = rows(record)
    head = next(row for name, row in found.items() if name.startswith("RCD R1"))
    assert (head.head, head.under, head.things) == (True, False, ())
    way = next(row for name, row in found.items() if name.startswith("Way 1"))
    assert (way.under, way.boards, way.things) == (True, ("Garage",), ())
    other = next(row for name, row in found.items() if name.startswith("Way 2"))
    assert (other.under, other.boards) == (False, ())


def test_alike_things_without_a_name_are_counted() -> None:
    points = [b.point(f"P{n}", kind="double_socket", room="R1") for n in range(3)]
    named = b.socket("P9", room="R1", name="Router socket")
    record = b.home(
        b.room("R1", name="Study", kind="office"),
        b.one_way(b.circuit("C1", *points, named), way="1"),
    )
    (row,) = rows(record).values()
    (things,) = row.things
    assert things.text == "Study: 3 × Double socket-outlet, Router socket"
    assert things.count == 4


def test_without_a_record_it_is_general_guidance() -> None:
    sheet = if_it_trips(network(b.home()))
    assert sheet.boards == ()
    assert sheet.missed == ()
    assert "every way off" in " ".join(head for head, _ in sheet.rules)
    assert sheet.stop == SCREENS["stop"].says


def test_what_is_recorded_as_wrong_stands_before_anything_is_touched() -> None:
    ways = b.main_switch("MS", b.way("W1", b.socket("P1")))
    wet = b.street(b.board("B1", ways, condition="wet"))
    (said,) = set(if_it_trips(network(b.home(wet))).stop) - set(SCREENS["stop"].says)
    assert "(B1)" in said
    assert "wet" in said
