"""What can switch a point, said feed by feed where it has several."""

from __future__ import annotations

from app.domain.ask import ask_point
from app.domain.network import network
from app.domain.record import Point, Record
from app.web.protection import protection_rows
from tests.builders import (
    board,
    circuit,
    home,
    light,
    main_switch,
    point,
    source,
    street,
    tails,
    tie,
    way,
)

FIRST = "Only where it is on Circuit C1 (C1), from Circuit-breaker W1 (W1)"
SECOND = "Only where it is on Circuit C2 (C2), from Circuit-breaker W2 (W2)"


def rows(record: Record, ref: str = "P1") -> dict[str, str | None]:
    found = record.find(Point, ref)
    assert found
    said = protection_rows(ask_point(network(record), found))
    labels = [label for label, _ in said]
    first = labels.index("What can switch it")
    return dict(said[first : labels.index("Other conductors in its box")])


def one_board(role: str = "feeds") -> Record:
    """P1 is on C1, and by another tie on C2 of the same board."""
    return home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", light("P1")), poles="line"),
                    way("W2", circuit("C2"), poles="line"),
                    poles="line_and_neutral",
                ),
            )
        ),
        tie("P1", "C2", role),
    )


def test_one_feed_is_one_row() -> None:
    record = home(
        street(board("B1", main_switch("MS", way("W1", circuit("C1", light("P1")))))),
    )
    assert list(rows(record)) == ["What can switch it"]


def test_switches_of_two_feeds_stand_apart_and_none_is_said_to_do_alone() -> None:
    """An immersion heater on the board of the day and on that of the night."""
    day = board("B1", main_switch("M1", way("W1", circuit("C1"))))
    night = board("B2", main_switch("M2", way("W2", circuit("C2"))))
    record = home(
        source("GRID", tails("I1", day), tails("I2", night)),
        point("P1", kind="water_heater"),
        tie("P1", "C1"),
        tie("P1", "C2"),
    )
    found = rows(record)
    assert found["What can switch it"] == "No one switch alone"
    first, second = found[FIRST], found[SECOND]
    assert first
    assert second
    assert "M1" in first
    assert "W1" in first
    assert "M2" not in first
    assert "W2" in second
    assert "W1" not in second


def test_what_switches_every_feed_is_said_once() -> None:
    found = rows(one_board())
    assert found["What can switch it"] == "Main switch MS: line and neutral"
    assert found[FIRST] == "Circuit-breaker W1: line only"
    assert found[SECOND] == "Circuit-breaker W2: line only"


def test_neutral_from_elsewhere_has_a_row_of_its_own() -> None:
    found = rows(one_board("neutral"))
    assert found["What can switch it"] == "Main switch MS: line and neutral"
    name = "Only its neutral, on Circuit C2 (C2), from Circuit-breaker W2 (W2)"
    assert found[name] == "Circuit-breaker W2: line only"


def test_feed_without_a_switch_leaves_none_that_does_alone() -> None:
    record = home(
        street(board("B1", main_switch("MS", way("W1", circuit("C1", light("P1")))))),
        source("NEXT", kind="neighbour"),
        tie("P1", "NEXT"),
    )
    found = rows(record)
    assert found["What can switch it"] == "No one switch alone"
    assert "Nothing that is recorded" in found.values()
