from __future__ import annotations

import pytest

from app.domain.fault import links_of
from app.domain.faults import CHECKS, faults
from app.domain.network import network
from app.domain.record import Record
from tests.builders import (
    Part,
    board,
    circuit,
    control,
    device,
    home,
    intake,
    light,
    main_switch,
    no_other_sources,
    one_way,
    point,
    rcd,
    room,
    socket,
    source,
    street,
    switch,
    switched_off,
    tie,
    way,
)

WRONG = {
    "leads_nowhere",
    "used_twice",
    "feeds_itself",
    "absent_source_feeds",
    "blank_feeds",
    "spare_feeds",
    "seen_otherwise",
}
# Wrong or open, by how many phases there are.
DEPENDS = {"two_mains_paths", "numbered_twice"}


def loop(ref: str, *, fed_from: str) -> Part:
    return board(f"B-{ref}", device(ref, kind="rcd", fed_from=fed_from), fed_from=None)


def two_ways(*parts: Part, **fields: str) -> Record:
    ways = (way("W1", phase="l1"), way("W2", phase="l2"))
    return home(street(board("B1", main_switch("MS", *ways))), *parts, **fields)


def numbered(*ways: Part, **fields: str) -> Record:
    return home(street(board("B1", main_switch("MS", *ways))), **fields)


def wired(*parts: Part) -> Record:
    return home(one_way(circuit("C1", light("P1"))), *parts)


# Of each code: records that have this fault, with its subjects, and records without.
FLAGGED: dict[str, list[tuple[Record, tuple[str, ...]]]] = {
    "leads_nowhere": [
        (home(socket("P1", room="GONE")), ("P1",)),
        (home(room("R1"), board("B1", fed_from="R1")), ("B1",)),
        (home(circuit("C1", ways=("GONE",))), ("C1",)),
        (wired(control("P1", "C1")), ("K-P1-C1",)),
    ],
    "used_twice": [
        (home(socket("X"), room("X")), ("X",)),
        (home(socket("X"), light("X")), ("X",)),
    ],
    "feeds_itself": [
        (home(loop("D1", fed_from="D1")), ("D1",)),
        (
            home(
                loop("D3", fed_from="D2"),
                loop("D1", fed_from="D3"),
                loop("D2", fed_from="D1"),
            ),
            ("D1", "D2", "D3"),
        ),
    ],
    "two_mains_paths": [
        (two_ways(circuit("C1", ways=("W1", "MS"))), ("C1", "W1", "MS")),
        (two_ways(circuit("C1", ways=("MS", "TAIL"))), ("C1", "MS", "TAIL")),
        (
            home(street(intake("SF", kind="switch_fuse", second_feed="MET"))),
            ("SF", "TAIL", "MET"),
        ),
        (
            two_ways(
                circuit("C1", light("P1"), ways=("W1",)),
                circuit("C2", ways=("W2",)),
                tie("P1", "C2"),
            ),
            ("P1", "C1", "C2"),
        ),
        (wired(tie("P1", "GRID")), ("P1", "C1", "GRID")),
    ],
    "absent_source_feeds": [
        (home(source("GEN", intake("T1", kind="tails"), present="no")), ("GEN", "T1")),
    ],
    "blank_feeds": [
        (home(one_way(circuit("C1"), kind="blank")), ("W1", "C1")),
    ],
    "spare_feeds": [
        (home(one_way(circuit("C1"), in_use="spare")), ("W1", "C1")),
    ],
    "numbered_twice": [
        (numbered(way("W1", way="4"), way("W2", way="4")), ("W1", "W2")),
        (numbered(way("W1", way="4 A"), way("W2", way="4  a")), ("W1", "W2")),
        (
            numbered(
                way("W1", way="4", phase="l1"),
                way("W2", way="4", phase="l1"),
                way("W3", way="5"),
                phases="three",
            ),
            ("W1", "W2"),
        ),
        (
            numbered(
                way("W1", way="4", phase="l1"), way("W2", way="4"), phases="three"
            ),
            ("W1", "W2"),
        ),
    ],
    "seen_otherwise": [
        (wired(*switched_off("N1", "W1", live="P1")), ("P1", "N1")),
        (
            two_ways(
                circuit("C1", light("P1"), ways=("W1",)),
                *switched_off("N1", "W2", dead="P1"),
            ),
            ("P1", "N1"),
        ),
    ],
    "tied_to_nothing": [
        (home(socket("P1")), ("P1",)),
        (home(socket("P1"), tie("P1", "GONE")), ("P1",)),
        (home(socket("P1"), circuit("C1"), tie("P1", "C1", "present")), ("P1",)),
        (home(socket("P1"), circuit("C1"), tie("P1", "C1", "neutral")), ("P1",)),
    ],
    "neutral_without_line": [
        (home(socket("P1"), circuit("C1"), tie("P1", "C1", "neutral")), ("P1",)),
    ],
    "tied_twice": [
        (wired(tie("P1", "C1", ref="T2")), ("P1",)),
    ],
    "circuit_without_way": [
        (home(circuit("C1")), ("C1",)),
    ],
    "way_without_circuit": [
        (home(one_way()), ("W1",)),
        (home(one_way(in_use="in_use")), ("W1",)),
    ],
    "source_feeds_nothing": [
        (home(source("PV", kind="solar")), ("PV",)),
    ],
    "beginning_not_recorded": [
        (home(board("B1")), ("B1",)),
        (home(board("B1", way("W1"))), ("B1",)),
        (home(intake("T1", kind="tails")), ("T1",)),
        (
            home(intake("TS", intake("T1", kind="tails"), kind="time_switch")),
            ("TS",),
        ),
    ],
    "second_feed_not_recorded": [
        (home(street(intake("CO", kind="changeover"))), ("CO",)),
        (home(street(board("B1", device("CO", kind="changeover")))), ("CO",)),
    ],
    "equipment_of_absent_source": [
        (wired(point("P2", kind="battery"), *no_other_sources()), ("P2",)),
        (wired(point("P2", kind="inverter"), *no_other_sources()), ("P2",)),
        (
            wired(
                point("P2", kind="battery"),
                source("PV", kind="solar"),
                source("BATT", kind="battery", present="no"),
            ),
            ("P2",),
        ),
    ],
    "absent_source_joins": [
        (wired(source("PV", kind="solar", present="no", joins="C1")), ("PV",)),
    ],
}
NOT_FLAGGED: dict[str, list[Record]] = {
    "leads_nowhere": [
        home(
            room("R1"),
            one_way(circuit("C1", switch("P1", room="R1"), light("P2"))),
            control("P1", "P2"),
        )
    ],
    "used_twice": [wired(light("P2"))],
    "feeds_itself": [
        wired(light("P2"), tie("P1", "P2", "neutral"), tie("P2", "C1", "neutral"))
    ],
    "two_mains_paths": [
        wired(),
        two_ways(circuit("C1", ways=("W1", "W2"))),
        home(
            street(
                board(
                    "B1",
                    main_switch(
                        "MS",
                        way("W1", phase="l1"),
                        way("W2", phase="l2"),
                        way("W3", phase="l3"),
                    ),
                )
            ),
            circuit("C1", ways=("W1", "W2", "W3")),
            phases="three",
        ),
        home(street(intake("CO", kind="changeover", second_feed="MET"))),
        home(
            street(board("B1", device("CO", kind="changeover", second_feed="MET"))),
        ),
        home(
            street(board("B1", main_switch("MS", circuit("C1", light("P1"))))),
            source("BATT", circuit("C2"), kind="battery"),
            tie("P1", "C2"),
        ),
        home(
            one_way(circuit("C1", switch("P1", light("P3")), switch("P2"))),
            tie("P3", "P2"),
        ),
        wired(tie("P1", "C1", ref="T2")),
    ],
    "absent_source_feeds": [
        home(source("GEN", kind="generator", present="no")),
        home(source("GEN", intake("T1", kind="tails"), present="unknown")),
    ],
    "blank_feeds": [home(street(board("B1", device("W1", kind="blank"))))],
    "spare_feeds": [
        home(one_way(in_use="spare")),
        home(one_way(circuit("C1"), in_use="unknown")),
    ],
    "numbered_twice": [
        numbered(way("W1", way="4"), way("W2", way="5"), way("W3"), way("W4")),
        numbered(way("W1", way="4"), device("W2", kind="blank", way="4")),
        numbered(way("W1", way="4"), rcd("R1", way="4")),
        numbered(way("W1", device("TS", kind="time_switch", way="4"), way="4")),
        numbered(
            way("W1", way="4", phase="l1"),
            way("W2", way="4", phase="l2"),
            phases="three",
        ),
        home(board("B1", way("W1", way="4")), board("B2", way("W2", way="4"))),
    ],
    "seen_otherwise": [
        wired(*switched_off("N0", live="P1"), *switched_off("N1", "W1", dead="P1")),
        home(one_way(), socket("P1"), *switched_off("N1", "W1", live="P1")),
        wired(*switched_off("N1", "GONE", live="P1")),
        wired(*switched_off("N1", "W1", live="GONE")),
    ],
    "tied_to_nothing": [wired(), home(source("NEXT", light("P1"), kind="neighbour"))],
    "neutral_without_line": [wired(circuit("C2"), tie("P1", "C2", "neutral"))],
    "tied_twice": [
        wired(tie("P1", "C1", "present")),
        home(tie("GONE", "C1"), tie("GONE", "C1", ref="T2")),
    ],
    "circuit_without_way": [wired(), home(circuit("C1", ways=("GONE",)))],
    "way_without_circuit": [
        wired(),
        home(one_way(in_use="spare")),
        home(street(board("B1", rcd("R1"), device("D1", kind="blank")))),
        home(one_way(), board("B2", fed_from="W1")),
        home(one_way(), source("PV", kind="solar", joins="W1")),
    ],
    "source_feeds_nothing": [
        wired(),
        wired(source("PV", kind="solar", joins="C1")),
        home(source("PV", kind="solar", present="unknown")),
    ],
    "beginning_not_recorded": [
        wired(),
        home(street(), board("B1", main_switch("MS", fed_from="TAIL"))),
        home(intake("E1", kind="earthing_conductor")),
    ],
    "second_feed_not_recorded": [
        wired(),
        home(street(intake("CO", kind="changeover", second_feed="MET"))),
    ],
    "equipment_of_absent_source": [
        wired(*no_other_sources()),
        wired(point("P2", kind="battery"), point("P3", kind="inverter")),
        wired(point("P2", kind="battery"), source("B", kind="battery")),
        wired(
            point("P2", kind="inverter"),
            source("PV", kind="solar", present="no"),
            source("BATT", kind="battery"),
        ),
    ],
    "absent_source_joins": [
        wired(source("PV", kind="solar", present="no")),
        wired(source("PV", kind="solar", joins="C1")),
    ],
}


def subjects(record: Record, code: str) -> list[tuple[str, ...]]:
    return [fault.subjects for fault in faults(record) if fault.code == code]


def test_every_check_has_a_case_with_its_fault_and_one_without() -> None:
    assert list(FLAGGED) == list(NOT_FLAGGED) == list(CHECKS)


@pytest.mark.parametrize(
    ("code", "record", "about"),
    [(code, *case) for code, cases in FLAGGED.items() for case in cases],
)
def test_fault_is_found(code: str, record: Record, about: tuple[str, ...]) -> None:
    assert subjects(record, code) == [about]


@pytest.mark.parametrize(
    ("code", "record"),
    [(code, record) for code, records in NOT_FLAGGED.items() for record in records],
)
def test_fault_is_not_found(code: str, record: Record) -> None:
    assert subjects(record, code) == []


@pytest.mark.parametrize("code", CHECKS)
def test_a_check_yields_its_own_code_and_says_whether_it_can_be_true(code: str) -> None:
    for record, _ in FLAGGED[code]:
        for fault in CHECKS[code](network(record)):
            assert fault.code == code
            assert fault.wrong == (code in WRONG) or code in DEPENDS
            assert fault.sentence.endswith(".")
            assert fault.remedy.endswith(".")


@pytest.mark.parametrize(
    ("phases", "wrong"), [("single", True), ("three", False), ("unknown", False)]
)
def test_two_ways_of_unknown_phase_are_wrong_only_in_a_single_phase_home(
    phases: str, wrong: bool
) -> None:
    ways = main_switch("MS", way("W1"), way("W2"))
    record = home(
        street(board("B1", ways)), circuit("C1", ways=("W1", "W2")), phases=phases
    )
    (fault,) = CHECKS["two_mains_paths"](network(record))
    assert (fault.code, fault.wrong) == ("two_mains_paths", wrong)
    assert ("three-phase" in fault.remedy) != wrong
    assert "neither guards it against overload" in fault.remedy
    assert fault.remedy.endswith("An electrician should look.")


def test_two_ways_of_one_phase_are_wrong_in_any_home() -> None:
    ways = main_switch("MS", way("W1", phase="l1"), way("W2", phase="l1"))
    record = home(
        street(board("B1", ways)), circuit("C1", ways=("W1", "W2")), phases="three"
    )
    (fault,) = CHECKS["two_mains_paths"](network(record))
    assert fault.wrong


@pytest.mark.parametrize("phase", ["l2", "unknown"])
def test_ring_on_two_ways_is_wrong_whatever_their_phases(phase: str) -> None:
    """Its ends are joined: there is no phase each for them."""
    ways = main_switch("MS", way("W1", phase="l1"), way("W2", phase=phase))
    ring = circuit("C1", ways=("W1", "W2"), arrangement="ring")
    record = home(street(board("B1", ways)), ring, phases="three")
    (fault,) = CHECKS["two_mains_paths"](network(record))
    assert fault.wrong
    assert "say on which phase" not in fault.remedy


@pytest.mark.parametrize(
    ("phases", "wrong"), [("single", True), ("three", False), ("unknown", False)]
)
def test_two_ways_of_one_number_may_be_on_a_phase_each(
    phases: str, wrong: bool
) -> None:
    record = numbered(way("W1", way="4"), way("W2", way="4"), phases=phases)
    (fault,) = CHECKS["numbered_twice"](network(record))
    assert fault.sentence == "A board (B1) has 2 ways with the number 4: W1 and W2."
    assert fault.wrong == wrong
    assert ("three-phase" in fault.remedy) != wrong


def test_a_point_with_two_feeds_may_be_right() -> None:
    record = wired(tie("P1", "GRID"))
    (fault,) = CHECKS["two_mains_paths"](network(record))
    assert not fault.wrong
    assert (
        fault.sentence == "Light (P1) is fed by C1 and GRID: it takes both to be off."
    )


def test_a_circle_is_told_in_the_order_of_feeding() -> None:
    record, _ = FLAGGED["feeds_itself"][1]
    (fault,) = CHECKS["feeds_itself"](network(record))
    assert fault.sentence == "These feed each other in a circle: D1, D2, D3, D1."


def test_the_wrong_ones_come_first() -> None:
    record = home(socket("P1"), point("P2", kind="light", room="GONE"))
    assert [fault.code for fault in faults(record)] == [
        "leads_nowhere",
        "tied_to_nothing",
        "tied_to_nothing",
    ]


def test_a_sentence_names_the_field_that_leads_nowhere() -> None:
    record = home(light("P1", room="GONE"), board("B1", room="P1", fed_from="P1"))
    assert [fault.sentence for fault in faults(record) if fault.wrong] == [
        "A board (B1) names P1 as “where it is”, which cannot be that.",
        "Light (P1) names GONE as “room”, which is not in the record.",
    ]


def test_links_are_each_reference_with_its_field() -> None:
    record = home(circuit("C1", ways=("W1", "W2")))
    assert list(links_of(record.circuits[0])) == [
        ("ways", "W1", ("device", "intake")),
        ("ways", "W2", ("device", "intake")),
    ]


def test_a_whole_record_has_no_fault() -> None:
    assert faults(wired()) == ()
