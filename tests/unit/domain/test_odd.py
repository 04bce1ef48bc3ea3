from __future__ import annotations

from app.domain.network import network
from app.domain.odd import Odd, odd_among, odd_ones_out
from app.domain.record import Point, Record
from tests.builders import (
    Part,
    board,
    circuit,
    home,
    light,
    main_switch,
    point,
    room,
    socket,
    street,
    tie,
    way,
)

ROOMS = (
    room("HALL", storey="ground"),
    room("LIV", storey="ground"),
    room("KIT", storey="ground"),
    room("BED", storey="first"),
    room("LOFT", storey="loft"),
    room("SHED", kind="outbuilding"),
    room("GAR", kind="garage"),
    room("OUT", kind="outside", storey="outside"),
)


def sockets(*refs: str, room: str, kind: str = "socket") -> tuple[Part, ...]:
    return tuple(point(ref, kind=kind, room=room) for ref in refs)


def two_circuits(first: tuple[Part, ...], second: tuple[Part, ...]) -> Record:
    return home(
        *ROOMS,
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", *first, name="Downstairs")),
                    way("W2", circuit("C2", *second, name="Upstairs")),
                ),
            )
        ),
    )


def odd(record: Record) -> dict[str, str]:
    return {o.point: o.sentence for o in odd_ones_out(network(record))}


def test_a_socket_on_another_circuit_than_the_room() -> None:
    record = two_circuits(sockets("P1", "P2", room="LIV"), sockets("P3", room="LIV"))
    assert odd_ones_out(network(record)) == (
        Odd(
            point="P3",
            circuits=("C2",),
            expected="C1",
            sentence="It is on Upstairs (C2); "
            "most other sockets in its room are on Downstairs (C1).",
        ),
    )


def test_one_other_socket_makes_no_rule_nor_does_a_half() -> None:
    assert odd(two_circuits(sockets("P1", room="LIV"), sockets("P2", room="LIV"))) == {}
    first, second = sockets("P1", "P2", room="LIV"), sockets("P3", "P4", room="LIV")
    assert odd(two_circuits(first, second)) == {}


def test_a_light_is_not_compared_with_sockets_nor_a_cooker_with_anything() -> None:
    second = (light("P3", room="KIT"), point("P4", kind="cooker", room="KIT"))
    assert odd(two_circuits(sockets("P1", "P2", room="KIT"), second)) == {}


def test_points_that_nothing_feeds_or_without_a_room_are_not_compared() -> None:
    record = two_circuits(
        (*sockets("P1", "P2", room="LIV"), socket("P9")), (socket("P5"),)
    )
    loose = home(socket("P1", room="LIV"), socket("P2", room="LIV"), *ROOMS)
    assert odd(record) == odd(loose) == {}


def test_a_point_on_both_circuits_is_not_odd() -> None:
    record = home(
        *ROOMS,
        circuit("C1", *sockets("P1", "P2", room="LIV")),
        circuit("C2", *sockets("P3", room="LIV")),
        tie("P3", "C1"),
    )
    assert odd(record) == {}


def test_an_alarm_on_the_circuit_of_another_floor() -> None:
    alarm = sockets("P4", room="BED", kind="smoke_alarm")
    first = (*sockets("P1", "P2", "P3", room="HALL", kind="light"), *alarm)
    assert odd(two_circuits(first, ())) == {
        "P4": "It is on Downstairs (C1), "
        "whose other points are all on the ground floor."
    }


def test_two_other_points_make_no_floor() -> None:
    first = (*sockets("P1", "P2", room="HALL"), *sockets("P4", room="BED"))
    assert odd(two_circuits(first, ())) == {}


def test_a_circuit_over_both_floors_has_no_odd_ones() -> None:
    down, up = sockets("P1", "P2", "P3", room="HALL"), sockets("P4", "P5", room="BED")
    assert odd(two_circuits((*down, *up), ())) == {}


def test_points_whose_floor_says_nothing_are_left_out_of_the_count() -> None:
    first = (
        *sockets("P1", "P2", "P3", room="HALL"),
        *sockets("P4", room="BED"),
        *sockets("P5", room="LOFT"),
        *sockets("P6", room="OUT"),
        *sockets("P7", room="GAR"),
    )
    assert odd(two_circuits(first, ())) == {
        "P4": "It is on Downstairs (C1), mostly on the ground floor."
    }


def test_an_outbuilding_on_the_circuit_of_a_floor() -> None:
    first = (*sockets("P1", "P2", "P3", room="HALL"), *sockets("P4", room="SHED"))
    assert list(odd(two_circuits(first, ()))) == ["P4"]


def barn(*points: Part, room: str, main_room: str | None = "HALL") -> Record:
    barn_board = board("B2", way("W2", circuit("C2", *points)), room=room)
    return home(
        *ROOMS,
        street(
            board(
                "B1",
                main_switch("MS", way("W1", circuit("C1", barn_board))),
                room=main_room,
            )
        ),
    )


def test_a_point_of_the_house_fed_from_a_board_in_an_outbuilding() -> None:
    points = (*sockets("P1", room="SHED"), *sockets("P2", room="KIT"), socket("P3"))
    assert odd(barn(*points, room="SHED")) == {
        "P2": "It is on Circuit C2 (C2), from a board in an outbuilding."
    }


def test_boards_in_the_house_or_all_in_outbuildings_make_nothing_odd() -> None:
    points = sockets("P2", room="KIT")
    assert odd(barn(*points, room="LIV")) == {}
    assert odd(barn(*points, room="GAR")) == {}
    assert odd(barn(*points, room="SHED", main_room="SHED")) == {}


def test_a_circuit_without_a_known_board_makes_nothing_odd() -> None:
    record = home(
        *ROOMS,
        circuit("C1", *sockets("P1", room="KIT")),
        circuit("C2", *sockets("P2", room="KIT"), ways=("W1",)),
        way("W1", board="GONE"),
    )
    assert odd(record) == {}


def test_some_points_are_judged_as_they_are_among_all() -> None:
    first = (*sockets("P1", "P2", room="LIV"), *sockets("P3", room="HALL"))
    second = (*sockets("P4", room="LIV"), *sockets("P5", "P6", "P7", room="BED"))
    net = network(two_circuits(first, second))
    whole = odd_ones_out(net)
    apart = [o for p in net.record.of(Point) for o in odd_among(net, [p])]
    assert [o.point for o in whole] == ["P4"]
    assert list(whole) == apart
