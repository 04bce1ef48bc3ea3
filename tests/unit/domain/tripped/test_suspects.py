"""Suspects are exactly what hangs on what moved, outdoors and wet first."""

from __future__ import annotations

import networkx as nx
import pytest

from app.domain.network import network
from app.domain.record import Record
from app.domain.tripped import GROUNDS, circuits_below, suspects
from tests.builders import (
    board,
    circuit,
    fcu,
    home,
    light,
    one_way,
    point,
    rcd,
    room,
    socket,
    way,
)
from tests.unit.domain.test_houses import NAMES, record_of

ORDER = list(GROUNDS)


def hanging_on(record: Record, start: str) -> set[str]:
    """What a device feeds, told from the record by another library."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_node(start)
    boards = {b.ref: b.fed_from for b in record.boards}
    for item in record.intake:
        _feed(graph, item.ref, item.fed_from, item.second_feed)
    for d in record.devices:
        _feed(graph, d.ref, d.fed_from or boards.get(d.board), d.second_feed)
    for c in record.circuits:
        _feed(graph, c.ref, *c.ways)
    for t in record.ties:
        if t.role == "feeds":
            _feed(graph, t.point, t.tied_to)
    return nx.descendants(graph, start) & {p.ref for p in record.points}


def _feed(graph: nx.DiGraph[str], fed: str, *feeders: str | None) -> None:
    graph.add_edges_from((feeder, fed) for feeder in feeders if feeder)


@pytest.mark.parametrize("name", NAMES)
def test_suspects_are_what_hangs_on_each_device_of_a_house(name: str) -> None:
    record = record_of(name)
    net = network(record)
    for each in record.devices:
        found = suspects(net, each.ref)
        assert {s.ref for s in found} == hanging_on(record, each.ref)
        places = [ORDER.index(s.ground) for s in found]
        assert places == sorted(places)


def test_outdoors_and_wet_come_first() -> None:
    record = home(
        room("R1"),
        room("R2", kind="kitchen"),
        room("R3", kind="outside"),
        one_way(
            circuit(
                "C1",
                light("P1", room="R1"),
                socket("P2", room="R1"),
                socket("P3", room="R2"),
                point("P4", kind="outdoor_socket", room="R3"),
                point("P5", kind="water_heater", room="R1"),
                socket("P6", room="R1", care=("freezer",)),
            )
        ),
    )
    found = suspects(network(record), "W1")
    assert [(s.ref, s.ground) for s in found] == [
        ("P4", "outdoors"),
        ("P3", "wet"),
        ("P5", "heats"),
        ("P6", "motor"),
        ("P2", "sockets"),
        ("P1", "lights"),
    ]
    assert [s.ref for s in found if s.unplugs] == ["P4", "P3", "P6", "P2"]


def test_a_light_of_a_kitchen_is_not_among_what_is_wet() -> None:
    inside = (light("P1", room="R1"), socket("P2", room="R1"), light("P3", room="R2"))
    record = home(
        room("R1", kind="kitchen"),
        room("R2", kind="bathroom"),
        one_way(circuit("C1", *inside)),
    )
    found = suspects(network(record), "W1")
    assert [(s.ref, s.ground) for s in found] == [
        ("P2", "wet"),
        ("P3", "wet"),
        ("P1", "lights"),
    ]


def test_what_water_runs_through_comes_before_what_stands_in_the_same_room() -> None:
    washing = socket("P2", room="R1", care=("washing",))
    kitchen = room("R1", kind="kitchen")
    record = home(kitchen, one_way(circuit("C1", socket("P1", room="R1"), washing)))
    assert [s.ref for s in suspects(network(record), "W1")] == ["P2", "P1"]


def test_a_fused_connection_unit_is_not_unplugged() -> None:
    unit = fcu("P1", socket("P2"))
    found = suspects(network(home(one_way(circuit("C1", unit)))), "W1")
    assert {s.ref: s.unplugs for s in found} == {"P1": False, "P2": True}


def test_ways_below_an_rcd_are_listed_to_be_switched_off() -> None:
    record = home(
        board(
            "B1",
            rcd("D1", way("D2", circuit("C1")), way("D3", circuit("C2"))),
            way("D4", circuit("C3")),
        )
    )
    assert [d.ref for d in circuits_below(network(record), "D1")] == ["D2", "D3"]
