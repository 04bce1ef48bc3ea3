from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.chain import (
    Chain,
    Step,
    board_of,
    chains,
    is_overcurrent,
    is_rcd,
    isolates,
    may_be_rcd,
)
from app.domain.network import network
from app.domain.record import Circuit, Record
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
    point,
    rcbo,
    rcd,
    room,
    socket,
    source,
    street,
    tie,
    way,
)


def only(record: Record, ref: str) -> Chain:
    (chain,) = chains(network(record), ref)
    return chain


def step(record: Record, ref: str, of: str = "P1") -> Step:
    return next(s for s in only(record, of).steps if s.ref == ref)


def test_a_chain_says_of_each_step_what_it_is_whose_and_what_it_does() -> None:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS", way("W1", circuit("C1", socket("P1", room="R1")), way="1")
                ),
                room="R2",
            )
        ),
        room("R1", name="Hall"),
        room("R2", name="Cupboard"),
    )
    assert only(record, "P1") == Chain(
        role="line",
        references=("GRID", "CUT", "MET", "TAIL", "MS", "W1", "C1", "P1"),
        begins_at_source=True,
        lowest_grade="3",
        steps=(
            Step(
                ref="GRID",
                sort="source",
                kind="network",
                title="The network in the street",
                owner="network",
            ),
            Step(
                ref="CUT",
                sort="intake",
                kind="cutout",
                title="Cut-out",
                owner="network",
                rated_current_a=Decimal(100),
                protects=("overload", "short_circuit"),
            ),
            Step(
                ref="MET",
                sort="intake",
                kind="meter",
                title="Meter",
                owner="meter_operator",
            ),
            Step(
                ref="TAIL", sort="intake", kind="tails", title="Tails", owner="consumer"
            ),
            Step(
                ref="MS",
                sort="device",
                kind="main_switch",
                title="Main switch MS",
                owner="consumer",
                room="Cupboard",
                board="B1",
                rated_current_a=Decimal(100),
                opens="line_and_neutral",
                opens_basis="usual",
                isolates=True,
            ),
            Step(
                ref="W1",
                sort="device",
                kind="circuit_breaker",
                title="Way 1",
                owner="consumer",
                room="Cupboard",
                board="B1",
                rated_current_a=Decimal(32),
                curve="B",
                protects=("overload", "short_circuit"),
                opens="line",
                opens_basis="usual",
                isolates=True,
            ),
            Step(ref="C1", sort="circuit", title="Circuit C1", owner="consumer"),
            Step(
                ref="P1",
                sort="point",
                kind="socket",
                title="Socket-outlet, size not noted",
                owner="consumer",
                room="Hall",
                tie="T-P1-C1-feeds",
                grade="3",
            ),
        ),
    )


def test_the_lowest_grade_of_the_ties_is_the_grade_of_the_chain() -> None:
    record = home(one_way(circuit("C1", fcu("P1", light("P2", tied="5"), tied="1"))))
    assert only(record, "P2").lowest_grade == "1"
    assert only(record, "C1").lowest_grade is None


def test_off_peak_shows_on_every_chain_behind_it() -> None:
    record = home(
        street(
            intake(
                "CON",
                board("B2", main_switch("MS", way("W1", circuit("C1")))),
                kind="contactor",
                when="off_peak",
            )
        )
    )
    assert only(record, "C1").when == ("off_peak",)
    assert only(record, "TAIL").when == ()


def test_each_time_is_named_once() -> None:
    record = home(
        source(
            "PV",
            board(
                "B1", device("D1", circuit("C1"), kind="contactor", when="controlled")
            ),
            kind="solar",
            when="daylight",
        )
    )
    assert only(record, "C1").when == ("daylight", "controlled")


def test_all_the_time_is_not_said_of_what_switches_itself() -> None:
    for kind in ("contactor", "time_switch"):
        record = home(one_way(circuit("C1"), kind=kind))
        assert step(record, "W1", "C1").when == "unknown"
        assert only(record, "C1").when == ("unknown",)
        said = home(one_way(circuit("C1"), kind=kind, when="controlled"))
        assert only(said, "C1").when == ("controlled",)
    for kind in ("contactor", "time_switch"):
        record = home(source("GRID", intake("IT", kind=kind)))
        assert step(record, "IT", "IT").when == "unknown"


def test_a_contactor_opens_poles_and_isolates_nothing() -> None:
    record = home(one_way(circuit("C1"), kind="contactor", poles="line_and_neutral"))
    found = step(record, "W1", "C1")
    assert (found.opens, found.isolates) == ("line_and_neutral", False)


@pytest.mark.parametrize("kind", ["dc_isolator", "fused_connection_unit"])
def test_what_may_have_no_switch_for_the_mains_isolates_nothing(kind: str) -> None:
    record = home(one_way(circuit("C1", point("P2", light("P1"), kind=kind))))
    found = step(record, "P2")
    assert (found.opens, found.opens_basis, found.isolates) == ("none", "none", False)


def test_only_a_fused_connection_unit_guards_onward_by_its_rcd() -> None:
    for kind, sure in (("fused_connection_unit", True), ("double_socket", False)):
        inner = point("P2", light("P1"), kind=kind, residual_current_ma=30)
        found = step(home(one_way(circuit("C1", inner))), "P2")
        assert (is_rcd(found), may_be_rcd(found)) == (sure, not sure)


def test_a_circle_is_said() -> None:
    record = home(board("B1", way("W1", fed_from="W1"), fed_from=None))
    chain = only(record, "W1")
    assert (chain.begins_at_source, chain.runs_in_circle) == (False, True)


def test_an_rcd_is_what_guards_against_earth_leakage() -> None:
    record = home(
        street(
            board(
                "B1",
                rcd("R1", rcbo("RB", circuit("C1", socket("P1"))), rcd_type="AC"),
            )
        )
    )
    assert [s.ref for s in only(record, "P1").steps if is_rcd(s)] == ["R1", "RB"]
    assert step(record, "R1").rcd_type == "AC"
    assert step(record, "R1").time_delayed == "unknown"


def test_a_breaker_with_a_residual_current_is_an_rcd_but_not_with_0() -> None:
    record = home(one_way(circuit("C1", socket("P1")), residual_current_ma=100))
    assert step(record, "W1").protects == ("overload", "short_circuit", "earth_leakage")
    record = home(one_way(circuit("C1", socket("P1")), residual_current_ma=0))
    assert step(record, "W1").protects == ("overload", "short_circuit")
    assert step(record, "W1").rcd_type is None


def test_a_point_guards_what_is_behind_it() -> None:
    record = home(
        one_way(
            circuit("C1", fcu("P2", socket("P1"), fuse_a=3, residual_current_ma=10))
        )
    )
    assert step(record, "P2") == Step(
        ref="P2",
        sort="point",
        kind="fused_connection_unit",
        title="Fused connection unit",
        owner="consumer",
        tie="T-P2-C1-feeds",
        grade="3",
        residual_current_ma=Decimal(10),
        rcd_type="unknown",
        fuse_a=Decimal(3),
        protects=("overload", "short_circuit", "earth_leakage"),
    )


def test_any_point_with_a_fuse_guards_by_it() -> None:
    record = home(
        one_way(circuit("C1", point("P2", socket("P1"), kind="shaver_unit", fuse_a=1)))
    )
    assert is_overcurrent(step(record, "P2"))
    assert not is_overcurrent(step(record, "P1"))


def test_recorded_poles_go_before_the_usual_ones() -> None:
    record = home(one_way(circuit("C1", socket("P1")), poles="line_and_neutral"))
    assert step(record, "W1").opens == "line_and_neutral"
    assert step(record, "W1").opens_basis == "recorded"


def test_nothing_opens_where_its_kind_opens_nothing() -> None:
    record = home(source("GRID", intake("MET", kind="meter", poles="line")))
    assert step(record, "MET", "MET").opens == "none"
    assert not isolates(step(record, "MET", "MET"))


def test_a_kind_that_is_not_known_may_be_an_rcd() -> None:
    record = home(
        one_way(circuit("C1", socket("P1")), kind="unknown"),
        board(
            "B2",
            device("AF", kind="afdd"),
            device("AR", kind="afdd", residual_current_ma=30),
        ),
        point("P2", kind="unknown"),
    )
    assert may_be_rcd(step(record, "W1"))
    assert not may_be_rcd(step(record, "MS"))
    assert may_be_rcd(step(record, "AF", "AF"))
    assert not may_be_rcd(step(record, "AR", "AR"))
    assert not may_be_rcd(step(record, "P2", "P2"))


def test_a_circuit_and_its_points_belong_to_whoever_owns_the_way() -> None:
    record = home(
        board("B1", way("W1", circuit("C1", socket("P1"))), owner="landlord"),
        source("NEXT", socket("P2"), kind="neighbour", owner="shared"),
        way("W2", board="GONE"),
    )
    assert step(record, "P1").owner == "landlord"
    assert step(record, "P2", "P2").owner == "shared"
    assert step(record, "W2", "W2").owner == "unknown"


def test_a_circuit_stands_on_the_boards_of_its_ways() -> None:
    record = home(
        board("B1", way("W1"), way("W2")),
        board("B2", way("W3")),
        circuit("C1", ways=("W1", "W2", "W3", "GONE")),
    )
    found = record.find(Circuit, "C1")
    assert found
    assert board_of(record, found) == ("B1", "B2")


def test_the_neutral_has_a_chain_of_its_own() -> None:
    record = home(
        one_way(circuit("C1", light("P1"))),
        circuit("C2", ways=("W1",)),
        tie("P1", "C2", "neutral", grade="2"),
    )
    (neutral,) = chains(network(record), "P1", "neutral")
    assert neutral.role == "neutral"
    assert neutral.references[-2:] == ("C2", "P1")
    assert neutral.lowest_grade == "2"
