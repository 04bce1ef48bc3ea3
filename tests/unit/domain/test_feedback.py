"""Sources that can feed back: what they reach, and what they keep on."""

from __future__ import annotations

import pytest

from app.domain.answers import PointAnswer
from app.domain.ask import ask_point, ask_room, ask_way
from app.domain.network import network
from app.domain.record import Device, Point, Record, Room
from app.interchange.answer_text import answer_text
from app.web.protection import protection_rows
from tests.builders import (
    Part,
    board,
    circuit,
    device,
    home,
    light,
    main_switch,
    rcbo,
    rcd,
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


def behind_one_rcd(**fields: str) -> Record:
    """A battery that joins one of two circuits behind the only RCD of both."""
    first = way("W1", circuit("C1", socket("P1")))
    second = way("W2", circuit("C2", light("P2")))
    own = rcbo("W3", circuit("C3", light("P3")))
    given = {"joins": "C2", "present": "yes", "runs_without_network": "yes", **fields}
    return home(
        street(board("B1", main_switch("MS", rcd("R1", first, second, own)))),
        source("BATT", kind="battery", **given),
    )


def of_p1(record: Record) -> PointAnswer:
    found = record.find(Point, "P1")
    assert found
    return ask_point(network(record), found)


def cover_of(record: Record, ref: str) -> tuple[str, list[str]]:
    found = record.find(Point, ref)
    assert found
    answer = ask_point(network(record), found)
    return answer.within_30_ma, [s.ref for s in answer.past_rcd]


@pytest.mark.parametrize("joins", ["C2", "W2", "R1"])
def test_a_source_behind_the_only_rcd_reaches_a_point_past_it(joins: str) -> None:
    for runs in ("yes", "unknown"):
        record = behind_one_rcd(joins=joins, runs_without_network=runs)
        assert cover_of(record, "P1") == cover_of(record, "P2") == ("some", ["BATT"])
        assert cover_of(record, "P3") == ("yes", [])


def test_one_that_stops_with_the_network_or_joins_before_the_rcd_does_not() -> None:
    for record in (
        behind_one_rcd(runs_without_network="no"),
        behind_one_rcd(present="no"),
        behind_one_rcd(joins="MS"),
        behind_one_rcd(joins="CUT"),
    ):
        assert cover_of(record, "P1") == ("yes", [])


def test_an_rcd_that_the_supply_would_pass_backwards_does_not_count() -> None:
    record = behind_one_rcd(joins="C3")
    assert cover_of(record, "P1") == cover_of(record, "P3") == ("some", ["BATT"])


def test_where_no_rcd_counts_none_is_passed_by() -> None:
    first, second = way("W1", circuit("C1", socket("P1"))), way("W2", circuit("C2"))
    battery = source("BATT", kind="battery", joins="C2")
    record = home(street(board("B1", main_switch("MS", first, second))), battery)
    assert cover_of(record, "P1") == ("no", [])


def test_it_is_said_which_source_passes_the_rcd_by() -> None:
    record = behind_one_rcd()
    answer = of_p1(record)
    said = "; Battery joins behind the RCD, and may feed on with it open"
    rows = dict(protection_rows(answer))
    assert rows["RCD of 30 mA or less"] == f"On some of its feeds only{said}"
    assert "Battery (BATT) joins behind the RCD" in answer_text(answer)


def by_changeover(**fields: str) -> Record:
    outlet = rcbo("W1", circuit("C1", socket("P1")))
    changeover = device("X1", outlet, kind="changeover", second_feed="GEN")
    return home(
        street(board("B1", main_switch("MS", changeover))),
        source("GEN", kind="generator", present="yes", **fields),
    )


def test_of_a_generator_it_is_doubted_whether_its_neutral_is_earthed() -> None:
    for runs in ("yes", "unknown"):
        record = by_changeover(runs_without_network=runs)
        answer = of_p1(record)
        assert [s.ref for s in answer.earthing_open] == ["GEN"]
        row = dict(protection_rows(answer))["RCD of 30 mA or less"]
        assert row is not None
        assert "only if the neutral there is earthed" in row
        assert "the neutral there is earthed" in answer_text(answer)
    stops = by_changeover(runs_without_network="no")
    assert of_p1(stops).earthing_open == ()


def test_a_point_behind_another_is_reached_too() -> None:
    record = joined("C1", switch("P4"), light("P5"), tie("P4", "C2"), tie("P5", "P4"))
    assert of_point(record, "P5") == ["BATT"]
