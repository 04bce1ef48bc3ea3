"""Sources that can feed back: what they reach, and what they keep on."""

from __future__ import annotations

from app.domain.ask import ask_point, ask_room, ask_way
from app.domain.network import network
from app.domain.record import Device, Point, Record, Room
from tests.builders import (
    Part,
    board,
    circuit,
    home,
    light,
    main_switch,
    rcbo,
    room,
    socket,
    source,
    street,
    switch,
    tie,
    way,
)


def joined(joins: str | None, *parts: Part, **fields: str) -> Record:
    """Two ways on one board and a board of next door's, with a battery somewhere."""
    first = way("W1", circuit("C1", socket("P1", room="R1")))
    second = rcbo("W2", circuit("C2", light("P2")))
    other = board("B2", way("W3", circuit("C3", light("P3", room="R2"))))
    return home(
        room("R1"),
        room("R2"),
        street(board("B1", main_switch("MS", first, second))),
        source("NEXT", other, kind="neighbour"),
        source("BATT", kind="battery", joins=joins, **fields),
        *parts,
    )


def of_point(record: Record, ref: str) -> list[str]:
    found = record.find(Point, ref)
    assert found
    return [s.ref for s in ask_point(network(record), found).can_feed_back]


def of_way(record: Record, ref: str) -> list[str]:
    found = record.find(Device, ref)
    assert found
    return [s.ref for s in ask_way(network(record), found).can_feed_back]


def of_room(record: Record, ref: str) -> list[str]:
    found = record.find(Room, ref)
    assert found
    return [s.ref for s in ask_room(network(record), found).can_feed_back]


def kept_on(record: Record, opened: str) -> dict[str, bool]:
    found = record.find(Device, opened)
    assert found
    answer = ask_way(network(record), found)
    return {point.ref: point.other_feed for point in answer.points}


def test_it_reaches_the_circuit_it_joins_and_the_others_of_the_board() -> None:
    record = joined("C2")
    assert of_point(record, "P2") == of_point(record, "P1") == ["BATT"]
    assert of_way(record, "W2") == of_way(record, "W1") == of_way(record, "MS")
    assert of_way(record, "MS") == ["BATT"]
    assert of_room(record, "R1") == ["BATT"]


def test_it_does_not_reach_what_shares_no_feed_with_it() -> None:
    record = joined("C2")
    assert of_point(record, "P3") == of_way(record, "W3") == of_room(record, "R2") == []


def test_one_that_is_not_answered_counts_and_one_that_is_not_there_does_not() -> None:
    assert of_point(joined("C2", present="unknown"), "P1") == ["BATT"]
    assert of_point(joined("C2", present="no"), "P1") == []


def test_one_that_joins_nowhere_reaches_nothing_and_that_is_said() -> None:
    for joins in (None, "GONE", "P1"):
        record = joined(joins)
        assert of_point(record, "P1") == []
        found = record.find(Point, "P1")
        assert found
        assert "Where Battery (BATT) joins the installation is not recorded." in (
            ask_point(network(record), found).unknowns
        )


def test_it_reaches_a_point_by_a_borrowed_neutral() -> None:
    record = joined("C2", tie("P3", "C1", "neutral"))
    assert of_point(record, "P3") == of_room(record, "R2") == ["BATT"]


def test_what_is_behind_an_open_switch_keeps_it_as_another_feed() -> None:
    assert kept_on(joined("C2"), "MS") == {"P1": True, "P2": True}
    assert kept_on(joined("C2"), "W2") == {"P2": True}
    assert kept_on(joined("W2"), "W2") == {"P2": True}
    assert kept_on(joined("C2"), "W1") == {"P1": False}
    assert kept_on(joined("C2", present="no"), "MS") == {"P1": False, "P2": False}
    assert kept_on(joined(None), "MS") == {"P1": False, "P2": False}


def test_one_that_stops_with_the_network_is_no_other_feed_but_can_feed_back() -> None:
    stops = joined("C2", runs_without_network="no")
    assert kept_on(stops, "MS") == {"P1": False, "P2": False}
    assert of_point(stops, "P1") == ["BATT"]
    open_question = joined("C2", runs_without_network="unknown")
    assert kept_on(open_question, "MS") == {"P1": True, "P2": True}


def test_a_point_behind_another_is_reached_too() -> None:
    record = joined("C1", switch("P4"), light("P5"), tie("P4", "C2"), tie("P5", "P4"))
    assert of_point(record, "P5") == ["BATT"]
