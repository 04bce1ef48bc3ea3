from __future__ import annotations

from app.domain.circles import MOST_CIRCLES, circles
from app.domain.network import (
    MOST_PATHS,
    Feed,
    Path,
    Role,
    circuits_of,
    downstream,
    fed_by,
    goes_off,
    network,
    paths,
    points_on,
    upstream,
)
from app.domain.record import Record
from tests.builders import (
    board,
    circuit,
    device,
    fcu,
    home,
    intake,
    light,
    main_switch,
    one_way,
    rcd,
    room,
    socket,
    source,
    street,
    tie,
    way,
)

STREET = ("GRID", "CUT", "MET", "TAIL")


def refs(record: Record, ref: str, role: Role = "line") -> list[str]:
    return [" ".join(path.refs) for path in paths(network(record), ref, role)]


def test_a_path_runs_from_the_street_to_the_last_point() -> None:
    record = home(one_way(circuit("C1", fcu("P1", socket("P2")))))
    assert paths(network(record), "P2") == (
        Path(
            refs=(*STREET, "MS", "W1", "C1", "P1", "P2"),
            ties=(*[None] * 7, "T-P1-C1-feeds", "T-P2-P1-feeds"),
            whole=True,
        ),
    )


def test_a_board_is_no_step_and_says_only_what_feeds_its_devices() -> None:
    record = home(
        street(board("B1", main_switch("MS"), way("W1", circuit("C1"), fed_from="MS")))
    )
    net = network(record)
    assert "B1" not in upstream(net, "C1")
    assert net.feeders["MS"] == (Feed("TAIL", "MS"),)
    assert net.feeders["W1"] == (Feed("MS", "W1"),)


def test_two_boards_hang_on_a_connector_block() -> None:
    record = home(
        street(
            intake(
                "BLOCK",
                board("B1", main_switch("MS1", way("W1", circuit("C1", socket("P1"))))),
                board("B2", rcd("R2", way("W2", circuit("C2", socket("P2"))))),
                kind="connector_block",
            )
        )
    )
    assert refs(record, "P1") == ["GRID CUT MET TAIL BLOCK MS1 W1 C1 P1"]
    assert refs(record, "P2") == ["GRID CUT MET TAIL BLOCK R2 W2 C2 P2"]
    assert downstream(network(record), "MS1") == {"W1", "C1", "P1"}


def test_boards_three_deep() -> None:
    stable = board("B4", rcd("R4", way("W4", circuit("C4", light("P4")))))
    workshop = board("B3", main_switch("MS3", way("W3", circuit("C3", stable))))
    barn = board("B2", main_switch("MS2", way("W2", circuit("C2", workshop))))
    record = home(
        street(board("B1", main_switch("MS1", way("W1", circuit("C1", barn)))))
    )
    assert refs(record, "P4") == [
        "GRID CUT MET TAIL MS1 W1 C1 MS2 W2 C2 MS3 W3 C3 R4 W4 C4 P4"
    ]
    assert circuits_of(network(record), "P4") == ("C4",)
    assert points_on(network(record), "C3") == ()


def test_two_ties_are_two_paths_in_the_order_of_the_record() -> None:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", socket("P1"))),
                    way("W2", circuit("C2")),
                ),
            )
        ),
        tie("P1", "C2"),
    )
    assert refs(record, "P1") == [
        "GRID CUT MET TAIL MS W1 C1 P1",
        "GRID CUT MET TAIL MS W2 C2 P1",
    ]
    assert circuits_of(network(record), "P1") == ("C1", "C2")


def test_a_borrowed_neutral_goes_its_own_way() -> None:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", light("P1", light("P2")))),
                    way("W2", circuit("C2")),
                ),
            )
        ),
        tie("P1", "C2", "neutral"),
    )
    assert refs(record, "P2") == ["GRID CUT MET TAIL MS W1 C1 P1 P2"]
    assert refs(record, "P2", "neutral") == ["GRID CUT MET TAIL MS W2 C2 P1 P2"]
    net = network(record)
    assert downstream(net, "W2") == {"C2"}
    assert downstream(net, "W2", "neutral") == {"C2", "P1", "P2"}
    assert circuits_of(net, "P2", "neutral") == ("C2",)


def test_a_conductor_that_is_only_present_feeds_nothing() -> None:
    record = home(
        one_way(circuit("C1", socket("P1"))), circuit("C2"), tie("P1", "C2", "present")
    )
    assert upstream(network(record), "P1") == {*STREET, "MS", "W1", "C1"}


def test_a_changeover_has_two_paths() -> None:
    record = home(
        street(),
        source("GEN", kind="generator"),
        intake("CO", kind="changeover", fed_from="TAIL", second_feed="GEN"),
        board("B1", main_switch("MS", way("W1", circuit("C1"))), fed_from="CO"),
    )
    assert refs(record, "C1") == ["GRID CUT MET TAIL CO MS W1 C1", "GEN CO MS W1 C1"]


def test_a_device_keeps_its_second_feed() -> None:
    record = home(
        street(
            board(
                "B1", device("CO", circuit("C1"), kind="changeover", second_feed="GEN")
            )
        ),
        source("GEN", kind="generator"),
    )
    assert refs(record, "C1") == ["GRID CUT MET TAIL CO C1", "GEN CO C1"]


def test_references_that_lead_nowhere_are_left_out() -> None:
    record = home(
        room("R1"),
        board("B1", way("W1", circuit("C1", socket("P1"))), fed_from="GONE"),
        circuit("C2", ways=("P1",)),
        tie("P1", "R1"),
        tie("GONE", "C1"),
        tie("W1", "C1"),
    )
    assert paths(network(record), "P1") == (
        Path(refs=("W1", "C1", "P1"), ties=(None, None, "T-P1-C1-feeds"), whole=False),
    )
    assert upstream(network(record), "C2") == frozenset()


def test_a_thing_that_nothing_feeds_is_its_own_path() -> None:
    net = network(home(socket("P1")))
    assert paths(net, "P1") == (Path(refs=("P1",), ties=(None,), whole=False),)
    assert paths(net, "GONE") == (Path(refs=("GONE",), ties=(None,), whole=False),)


def test_a_path_is_cut_where_it_would_run_in_a_circle() -> None:
    record = home(
        board("B1", device("D1", kind="other", fed_from="D2"), fed_from=None),
        board("B2", device("D2", kind="other", fed_from="D1"), fed_from=None),
    )
    net = network(record)
    assert paths(net, "D1") == (
        Path(refs=("D2", "D1"), ties=(None, None), whole=False, circle=True),
    )
    assert upstream(net, "D1") == {"D2"}
    assert circles(net) == (("D1", "D2"),)


def test_a_neutral_through_its_neighbour_is_no_circle() -> None:
    record = home(
        one_way(circuit("C1", light("P1", light("P2")))),
        circuit("C2"),
        tie("P1", "P2", "neutral"),
        tie("P2", "C2", "neutral"),
    )
    assert circles(network(record)) == ()


def test_two_neutrals_that_return_to_each_other_are_a_circle() -> None:
    record = home(
        one_way(circuit("C1", light("P1"), light("P2"))),
        tie("P1", "P2", "neutral"),
        tie("P2", "P1", "neutral"),
    )
    assert circles(network(record)) == (("P1", "P2"),)


def test_circles_and_paths_are_not_counted_for_ever() -> None:
    loops = [
        board(f"B{i}", device(f"D{i}", kind="other", fed_from=f"D{i}"), fed_from=None)
        for i in range(MOST_CIRCLES + 5)
    ]
    assert len(circles(network(home(*loops)))) == MOST_CIRCLES
    many = [circuit(f"C{i}") for i in range(MOST_PATHS + 5)]
    ties = [tie("P1", f"C{i}") for i in range(MOST_PATHS + 5)]
    net = network(home(socket("P1"), *many, *ties))
    assert len(paths(net, "P1")) == MOST_PATHS


def test_what_goes_off_has_no_other_feed_left() -> None:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", socket("P1", light("P2")), socket("P3"))),
                    way("W2", circuit("C2")),
                ),
            )
        ),
        tie("P1", "C2"),
    )
    net = network(record)
    assert goes_off(net, "W1") == {"C1", "P3"}
    assert goes_off(net, "MS") == {"W1", "W2", "C1", "C2", "P1", "P2", "P3"}


def test_a_feed_whose_beginning_is_not_recorded_keeps_a_thing_on() -> None:
    record = home(one_way(circuit("C1", socket("P1"))), circuit("C2"), tie("P1", "C2"))
    assert goes_off(network(record), "W1") == {"C1"}


def test_a_tie_said_twice_is_one_feed_by_the_first_of_them() -> None:
    record = home(
        one_way(circuit("C1", socket("P1"))),
        tie("P1", "C1", ref="T2"),
        tie("P1", "C1", ref="T3"),
    )
    net = network(record)
    assert [path.ties[-1] for path in paths(net, "P1")] == ["T-P1-C1-feeds"]
    assert list(fed_by(net, "C1")) == ["P1"]


def test_all_circuits_at_once_are_those_of_each_point() -> None:
    record = home(
        one_way(circuit("C1", fcu("P1", light("P2")))),
        circuit("C2"),
        tie("P2", "C2"),
        socket("P3"),
    )
    net = network(record)
    assert net.circuits_at == {"P1": ("C1",), "P2": ("C1", "C2")}
