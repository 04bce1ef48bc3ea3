from __future__ import annotations

from datetime import date
from typing import Any

from app.domain.labels.chart import Chart, chart_of, rooms_in_words
from app.domain.labels.notices import notices_of
from app.domain.network import network
from app.domain.record import Board, Record
from tests import builders as b


def chart(record: Record, ref: str = "B1") -> Chart:
    board = record.find(Board, ref)
    assert board is not None
    return chart_of(network(record), board)


def lights_and_sockets(**tie: Any) -> Record:
    return b.home(
        b.room("R1", name="Kitchen"),
        b.room("R2", name="Hall"),
        b.street(
            b.board(
                "B1",
                b.main_switch(
                    "MS",
                    b.rcd("R", b.way("W1", b.circuit("C1", name="Ring"), way="1",
                                     label_found="SKTS")),
                    b.way("W2", b.circuit("C2", name="Lights"), way="2"),
                    b.device("X", kind="blank"),
                    poles="line_and_neutral",
                    label_found="ON OFF",
                ),
                name="Main board",
                room="R2",
                fed_from="TAIL",
            )
        ),
        b.socket("P1", room="R1"),
        b.socket("P2", room="R1"),
        b.light("P3", room="R2"),
        b.tie("P1", "C1", seen_on=date(2026, 2, 1), seen_by="me", **tie),
        b.tie("P2", "C1", seen_on=date(2025, 2, 1), seen_by="me", **tie),
        b.tie("P3", "C1"),
        b.tie("P3", "C2", "neutral"),
    )  # fmt: skip


def test_the_head_says_where_it_stands_what_feeds_it_and_its_switch() -> None:
    head = chart(lights_and_sockets())
    assert (head.board, head.place) == ("Main board", "Hall")
    assert head.main_switch == "Main switch marked “ON OFF”, breaks line and neutral"


def test_what_is_not_recorded_of_the_board_is_named() -> None:
    head = chart(b.home(b.board("B1")))
    assert (head.place, head.fed_from) == ("Place not recorded", "not recorded")
    assert (head.main_switch, head.rows) == ("not recorded", ())


def test_a_row_holds_what_a_chart_should() -> None:
    rows = {row.label.ref: row for row in chart(lights_and_sockets()).rows}
    assert list(rows) == ["MS", "R", "W1", "W2"]
    ring = rows["W1"]
    assert (ring.kind, ring.printed, ring.rcd) == ("Circuit-breaker", "B32", "RCD")
    assert (ring.feeds, rooms_in_words(ring)) == (
        "Ring\xa0?",
        "Kitchen\xa0(2), Hall\xa0(1)",
    )
    assert any("neutral on Lights" in said for said in ring.exceptions)
    assert ring.old == "“SKTS”"
    assert rows["W2"].rcd == "none recorded"
    assert rooms_in_words(rows["W2"]) == "none recorded"
    assert rows["MS"].feeds == "2 devices here"


def test_how_it_is_known_is_the_weakest_and_the_oldest_of_it() -> None:
    (ring,) = [
        r for r in chart(lights_and_sockets(grade="1")).rows if r.label.number == "1"
    ]
    assert (ring.how, ring.when) == ("label says so", "1 February 2025, me")
    (ring,) = [
        r for r in chart(lights_and_sockets(grade="4")).rows if r.label.number == "1"
    ]
    assert ring.when == "day not recorded, not recorded by whom"
    (ring,) = [
        r for r in chart(lights_and_sockets(grade="0")).rows if r.label.number == "1"
    ]
    assert (ring.how, ring.when) == ("not known", "")


def test_the_old_label_stands_until_the_new_name_is_confirmed() -> None:
    for grade, old in (("3", "“SKTS”"), ("4", "–")):
        fed = b.circuit("C1", b.socket("P1", tied=grade), name="Ring")
        record = b.home(b.one_way(fed, label_found="SKTS"))
        (row,) = [r for r in chart(record).rows if r.label.ref == "W1"]
        assert row.old == old


def test_what_was_not_read_says_so() -> None:
    record = b.home(b.one_way(rated_current_a=None, curve="unknown"))
    (row,) = [r for r in chart(record).rows if r.label.ref == "W1"]
    assert (row.printed, row.how, row.old) == ("not read", "not known", "not recorded")


def test_notices_name_what_the_record_knows_and_what_it_does_not() -> None:
    record = b.home(
        b.street(b.board("B1", b.main_switch("MS", b.rcd("R")), name="Main board")),
        b.source("PV", kind="solar"),
        b.source("GEN", kind="generator", present="unknown"),
    )
    board = record.find(Board, "B1")
    assert board is not None
    found = {notice.code: notice for notice in notices_of(network(record), board)}
    assert found["rcd"].called_for == "RCDs recorded on this board: 1."
    assert (
        "Recorded: the network in the street, solar panels." in found["supplies"].lines
    )
    assert any("Not known whether" in line for line in found["supplies"].lines)
    assert "Main board: Main switch." in found["switches"].lines
    assert found["earth"].title == "Safety Electrical Connection – Do Not Remove"


def test_a_switch_behind_another_board_is_not_named_as_a_head() -> None:
    sub = b.board("B2", b.main_switch("MS2"), name="Garage board", fed_from="C1")
    record = b.home(b.one_way(b.circuit("C1")), sub)
    board = record.find(Board, "B1")
    assert board is not None
    (switches,) = [
        v for v in notices_of(network(record), board) if v.code == "switches"
    ]
    assert not any("Garage" in line for line in switches.lines)


def test_an_rcbo_of_another_board_stands_before_its_ways_too() -> None:
    sub = b.board("B2", b.way("W2"), name="Garage board", fed_from="C1")
    head = b.board("B1", b.rcbo("W1", b.circuit("C1")), name="House board")
    (row,) = chart(b.home(b.street(head), sub), "B2").rows
    assert row.rcd == "RCBO on House board"


def test_what_may_be_an_rcd_leaves_it_not_known() -> None:
    record = b.home(b.street(b.board("B1", b.device("X", b.way("W1"), kind="unknown"))))
    assert [row.rcd for row in chart(record).rows] == ["–", "not known"]
