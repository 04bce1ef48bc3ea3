"""Each check: a case that it finds, and one that it leaves alone."""

from __future__ import annotations

import pytest

from app.domain.labels import label_problems
from app.domain.labels.problems import WORDS
from app.domain.network import network
from app.domain.record import Board, Record
from tests import builders as b
from tests.builders import Part


def codes(record: Record) -> list[str]:
    board = record.find(Board, "B1")
    assert board is not None
    return [found.code for found in label_problems(network(record), board)]


def one(name: str = "Ring", *points: Part, **way: object) -> Record:
    rooms = (
        b.room("R1", name="Kitchen"),
        b.room("R2", name="Hall"),
        b.room("R3", name="Bedroom", storey="first"),
        b.room("R4", name="Bedroom 2", storey="first"),
    )
    fed = points or (b.socket("P1", room="R1"),)
    return b.home(*rooms, b.one_way(b.circuit("C1", *fed, name=name), way="1", **way))


def two(first: str, second: str, **more: object) -> Record:
    ways = (
        b.way("W1", b.circuit("C1", b.socket("P1"), name=first), way="1"),
        b.way(
            "W2", b.circuit("C2", b.socket("P2"), name=second), **{"way": "2", **more}
        ),
    )
    return b.home(b.street(b.board("B1", b.main_switch("MS", *ways))))


FOUND = {
    "no_main_switch": one(label_found="Main switch"),
    "not_spare": one(label_found="SPARE"),
    "other_use": one("Upper lights", b.socket("P1")),
    "other_room": one("Hall sockets", b.socket("P1", room="R1")),
    "other_storey": one("Upstairs sockets", b.socket("P1", room="R1")),
    "rating": one("Ring 40 A"),
    "no_name": one(""),
    "same_number": two("Ring", "Cooker", way="1"),
    "same_name": two("Sockets", "sockets."),
    "personal": one("Mum's room"),
}
LEFT_ALONE = {
    "no_main_switch": one("Ring main", label_found="RING MAIN"),
    "not_spare": b.home(b.one_way(way="1", label_found="SPARE")),
    "other_use": one("Lights", b.light("P1"), b.socket("P2")),
    "other_room": one("Bedroom sockets", b.socket("P1", room="R4")),
    "other_storey": one("Upstairs sockets", b.socket("P1", room="R3")),
    "rating": one("Ring 32 A"),
    "no_name": one("Ring"),
    "same_number": two("Ring", "Cooker"),
    "same_name": two("Sockets up the stairs", "Sockets down the stairs"),
    "personal": one("Master’s bedroom, guests' room"),
}


def test_every_check_has_its_cases() -> None:
    assert set(FOUND) == set(LEFT_ALONE) == set(WORDS)


@pytest.mark.parametrize("code", WORDS)
def test_it_is_found(code: str) -> None:
    assert code in codes(FOUND[code])


@pytest.mark.parametrize("code", WORDS)
def test_it_is_left_alone(code: str) -> None:
    assert code not in codes(LEFT_ALONE[code])


def test_a_main_switch_may_be_called_one() -> None:
    switch = b.main_switch("MS", label_found="MAIN SWITCH")
    assert codes(b.home(b.street(b.board("B1", switch)))) == []


def test_an_rcd_that_is_called_main_is_none() -> None:
    rcd = b.rcd("R", b.way("W1"), label_found="MAIN")
    assert codes(b.home(b.street(b.board("B1", rcd)))) == ["no_main_switch"]


@pytest.mark.parametrize(
    ("poles", "beside", "expected"),
    [
        ("line_and_neutral", (), []),
        ("line", (), ["no_main_switch"]),
        ("line_and_neutral", (b.way("W2", way="2"),), ["no_main_switch"]),
    ],
)
def test_an_rcd_that_all_of_its_board_hangs_on_may_be_called_main(
    poles: str, beside: tuple[Part, ...], expected: list[str]
) -> None:
    rcd = b.rcd("R", b.way("W1", way="1"), label_found="MAIN", poles=poles)
    record = b.home(b.street(b.board("B1", rcd, *beside)))
    assert [c for c in codes(record) if c == "no_main_switch"] == expected


@pytest.mark.parametrize("name", ["Dad’s shed", "Kids room", "Oliver's shed", "Nan"])
def test_a_person_is_pointed_out(name: str) -> None:
    assert codes(one(name, b.socket("P1", room="R1"))) == ["personal"]


@pytest.mark.parametrize("name", ["Neighbour's light", "Bathroom", "Boiler", "Landing"])
def test_what_is_no_person_is_not(name: str) -> None:
    assert "personal" not in codes(one(name, b.light("P1"), b.socket("P2")))


def test_what_misleads_comes_first() -> None:
    assert codes(one("Mum's lights", b.socket("P1"))) == ["other_use", "personal"]


def test_one_circuit_on_two_ways_says_to_switch_both() -> None:
    ways = (b.way("W1", way="1"), b.way("W2", way="2"))
    fed = b.circuit("C1", b.socket("P1"), name="Ring", ways=("W1", "W2"))
    record = b.home(b.street(b.board("B1", b.main_switch("MS", *ways))), fed)
    board = record.find(Board, "B1")
    assert board is not None
    (found,) = label_problems(network(record), board)
    assert found.ways == ("W1", "W2")
    assert "switch all of them together" in found.sentence
