"""What can trip with all that hangs on it; what to tell; the entry that it makes."""

from __future__ import annotations

import networkx as nx
import pytest

from app.domain.network import network
from app.domain.record import Device, Record, Trip
from app.domain.tripped import (
    Chosen,
    Hanging,
    can_trip,
    candidates,
    earlier,
    entry,
    hanging,
    how_often,
    moved,
    story,
    trail,
)
from app.domain.tripped.screens import Screen
from app.domain.tripped.story import ALL_BREAK_BOTH
from tests import builders as b
from tests.unit.domain.test_houses import NAMES, record_of

NEUTRAL = ("moved", "rcd", "rcd-on", "ways-off", "neutral", "tell")
FOUND = ("moved", "rcd", "rcd-on", "plug-in", "found", "tell")
FAULT = ("moved", "rcd", "rcd-on", "ways-off", "way-by-way", "fault", "tell")
AT = "2026-03-01T14:05:00Z"


def of(record: Record, ref: str) -> Hanging:
    net = network(record)
    item = moved(net, ref)
    assert item is not None
    return hanging(net, item)


def walked(codes: tuple[str, ...]) -> tuple[Screen, ...]:
    found = trail(codes)
    assert found is not None
    return found


def behind_rcd(**fields: str) -> Record:
    ways = (
        b.way("W1", b.circuit("C1", b.socket("P1"), name="Ring"), way="1", **fields),
        b.way("W2", b.circuit("C2", b.light("P2")), way="2", **fields),
    )
    return b.home(b.street(b.board("B1", b.rcd("R1", *ways), name="Main board")))


def feeds(record: Record) -> nx.DiGraph[str]:
    """The devices and circuits of a record as another library's graph."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    boards = {board.ref: board.fed_from for board in record.boards}
    for d in record.devices:
        graph.add_node(d.ref)
        above = (d.fed_from or boards.get(d.board), d.second_feed)
        graph.add_edges_from((feeder, d.ref) for feeder in above if feeder)
    for c in record.circuits:
        graph.add_edges_from((way, c.ref) for way in c.ways)
    for t in record.ties:
        if t.role == "feeds":
            graph.add_edge(t.tied_to, t.point)
    return graph


@pytest.mark.parametrize("name", NAMES)
def test_the_ways_to_switch_off_part_every_point_of_a_house(name: str) -> None:
    """With the ways listed off, nothing of the device's points is reached from it."""
    record, net = record_of(name), network(record_of(name))
    graph = feeds(record)
    seen = 0
    for device in record.devices:
        one = hanging(net, device)
        if not one.ways:
            continue
        seen += 1
        ways = {way.ref for way in one.ways}
        left: nx.DiGraph[str] = nx.DiGraph()
        left.add_node(device.ref)
        left.add_edges_from(
            (one_end, other)
            for one_end, other in graph.edges
            if not ways & {one_end, other}
        )
        still = nx.descendants(left, device.ref) & {p.ref for p in record.points}
        own = {p for c in record.circuits_of(device.ref) for p in net.points_at[c.ref]}
        assert still <= own
        assert ways <= nx.descendants(graph, device.ref)
        behind = [nx.descendants(graph, ref) for ref in sorted(ways)]
        assert all(ways.isdisjoint(refs) for refs in behind)
    assert seen


def test_what_may_have_moved_is_offered_by_what_it_looks_like() -> None:
    parts = (
        b.main_switch("MS"),
        b.rcd("R1"),
        b.way("W1"),
        b.rcbo("W2"),
        b.device("W3", kind="afdd"),
        b.device("W4", kind="fuse_rewirable"),
        b.device("W5", kind="unknown"),
        b.device("W6", kind="blank"),
    )
    fuse = b.intake("SF", kind="switch_fuse")
    record = b.home(b.street(fuse, b.board("B1", *parts)))
    offered = {
        answer: [item.ref for item in candidates(record, answer)]
        for answer in ("rcd", "breaker", "fuse")
    }
    assert offered == {
        "rcd": ["R1", "W2", "W3", "W5"],
        "breaker": ["W1", "W5"],
        "fuse": ["W4", "SF", "R1", "W1", "W2", "W3", "W5"],
    }
    assert [item.ref for item in can_trip(record)] == [
        "SF", "R1", "W1", "W2", "W3", "W4",
    ]  # fmt: skip


def test_the_cut_out_is_never_offered() -> None:
    record = b.home(b.street())
    for answer in ("rcd", "breaker", "fuse"):
        assert candidates(record, answer) == ()
    assert can_trip(record) == ()


def test_a_neutral_that_returns_past_the_rcd_is_named() -> None:
    inside = b.rcd("R1", b.way("W1", b.circuit("C1", b.light("P1", name="Landing"))))
    outside = b.way("W2", b.circuit("C2", b.light("P2")))
    tie = b.tie("P1", "C2", "neutral")
    record = b.home(b.street(b.board("B1", b.main_switch("MS", inside, outside))), tie)
    assert [s.ref for s in of(record, "R1").borrowed] == ["P1"]
    assert of(record, "MS").borrowed == ()
    said = story(network(record), walked(NEUTRAL), Chosen(device="R1"))
    assert any("goes another way than the line: Landing." in line for line in said)


def test_the_neutral_branch_says_what_the_ways_break() -> None:
    def said(**fields: str) -> str:
        net = network(behind_rcd(**fields))
        return story(net, walked(NEUTRAL), Chosen(device="R1"))[-1]

    assert "Ring: breaks line only." in said(poles="line")
    assert "Ring: what it breaks is not recorded." in said()
    assert said(poles="line_and_neutral").endswith(ALL_BREAK_BOTH)


def test_what_to_tell_names_what_moved_what_was_tried_and_what_it_came_from() -> None:
    net = network(behind_rcd())
    said = story(net, walked(FAULT), Chosen(device="R1", way="W1"))
    assert said[0] == "A home. Its earthing is not recorded."
    assert "63 A, 30 mA, Main board" in said[1].replace("\xa0", " ")
    assert said[1].endswith("By the record 2 points on 2 ways hang on it.")
    assert "Switch it on, once: it trips again." in said
    assert said[-1] == "The way that trips it: Way 1 (W1)."
    found = story(net, walked(FOUND), Chosen(device="R1", point="P1"))
    assert found[-1].startswith("What trips it: Socket-outlet")


def test_without_a_record_the_answers_alone_are_told() -> None:
    net = network(b.home())
    said = story(net, walked(NEUTRAL), Chosen())
    assert said[1] == "Water, burning, damage or a shock: no, none of these."
    assert said[-1] == "Switch off every way below it: it still trips."


def test_what_is_missed_comes_in_the_order_in_which_it_matters() -> None:
    points = (
        b.socket("P1", care=("freezer",), name="Freezer"),
        b.socket("P2", care=("medical", "work"), name="Bedside"),
    )
    record = b.home(b.one_way(b.circuit("C1", *points)))
    assert of(record, "W1").missed == (
        "Medical equipment: Bedside",
        "Freezer: Freezer",
        "Work machine or computer: Bedside",
    )


@pytest.mark.parametrize(
    ("codes", "chosen", "wanted"),
    [
        (FOUND, Chosen(device="R1", point="P1"), ("rcd", "R1", ("P1",), "found")),
        (FAULT, Chosen(device="R1", way="W1"), ("rcd", "R1", ("C1",), "left_off")),
        (NEUTRAL, Chosen(device="R1"), ("rcd", "R1", (), "left_off")),
        (NEUTRAL, Chosen(device="GONE"), ("rcd", None, (), "left_off")),
        (("leave", "tell"), Chosen(), ("unknown", None, (), "left_off")),
        (("moved", "nothing", "network"), Chosen(), ("nothing", None, (), "unknown")),
        (
            ("moved", "breaker", "breaker-on", "plug-in", "holds", "tell"),
            Chosen(device="W2"),
            ("breaker", "W2", (), "stays_on"),
        ),
        (
            ("moved", "main", "neutral-main", "tell"),
            Chosen(),
            ("main_switch", None, (), "left_off"),
        ),
    ],
)
def test_a_walk_makes_an_entry(
    codes: tuple[str, ...], chosen: Chosen, wanted: tuple[object, ...]
) -> None:
    trip = entry(behind_rcd(), walked(codes), chosen, "J1", AT)
    assert (trip.moved, trip.device, trip.found, trip.outcome) == wanted
    assert (trip.ref, trip.happened_at, trip.trail) == ("J1", AT, " ".join(codes))


def test_entries_of_a_device_come_the_newest_first() -> None:
    days = {"J1": "2026-03-04", "J2": "2026-05-01", "J3": None, "J4": "2026-04-01"}
    trips = tuple(
        Trip(
            ref=ref,
            device="R1" if ref != "J4" else "W1",
            happened_at=f"{day}T10:00:00Z" if day else None,
        )
        for ref, day in days.items()
    )
    record = behind_rcd().having(trips=trips)
    assert [trip.ref for trip in earlier(record, "R1")] == ["J2", "J1", "J3"]
    assert earlier(record, None) == ()
    assert how_often(earlier(record, "R1"), "4 March 2026") == (
        "3 times, since 4 March 2026"
    )
    assert how_often(earlier(record, "W1"), "1 April 2026") == "once, on 1 April 2026"
    assert how_often(trips[:2], "") == "twice"


def test_every_device_of_every_house_can_be_told(houses: dict[str, Record]) -> None:
    for record in houses.values():
        net = network(record)
        for device in record.of(Device):
            one = hanging(net, device)
            counts = len(one.suspects)
            said = story(net, walked(NEUTRAL), Chosen(device=device.ref))[1]
            assert f"By the record {counts} point" in said
